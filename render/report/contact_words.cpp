#include "render/report/contact_words.h"

#include <cmath>

#include "render/report/words.h"

namespace stowpath {
namespace {

std::string when_text(const ContactRule& rule) {
  switch (rule.when) {
    case ContactTime::always:
      return "always";
    case ContactTime::line_on:
      return "while the line is hooked on";
    case ContactTime::pinned:
      return "while hinge " + std::to_string(rule.hinge + 1) + " is pinned";
    case ContactTime::closed:
      return "while hinge " + std::to_string(rule.hinge + 1) + " is folded by less than 20°";
    case ContactTime::foot_down:
      return "while the foot is on the floor, and until it is clear of it";
  }
  return "";
}

std::string where_text(const ContactRule& rule, DisplayUnits units) {
  if (std::isinf(rule.radius)) return "anywhere";
  const std::string body = rule.body < 0 ? "" : " of section " + std::to_string(rule.body + 1);
  const std::string place = rule.body < 0 ? "out " + place_text(Nominal{rule.centre.x}, units) + ", up " + place_text(Nominal{rule.centre.y}, units)
                                          : "along " + place_text(Nominal{rule.centre.x}, units) + ", across " +
                                                place_text(Nominal{rule.centre.y}, units) + body;
  return "within " + format_small_length(AtMost{rule.radius}, units) + " of " + place;
}

std::string depth_text(const MeantContact& contact, const ContactRule& rule, DisplayUnits units) {
  const std::string allowed =
      std::isinf(rule.depth) ? "to any depth" : "at most " + format_small_length(AtMost{rule.depth}, units) + " deep";
  constexpr double kTouching = 1e-5;  // [m]
  const std::string drawn = std::abs(contact.deepest) < kTouching ? std::string("touching as drawn")
                            : contact.deepest > 0.0 ? format_small_length(AtMost{contact.deepest}, units) + " as drawn" : "apart as drawn";
  return allowed + ", " + drawn;
}

const ContactRule& rule_of(const Model& model, const MeantContact& contact) {
  return model.contacts.at(static_cast<std::size_t>(contact.rule));
}

}  // namespace

std::string contact_text(const Model& model, const MeantContact& contact, DisplayUnits units) {
  const ContactRule& rule = rule_of(model, contact);
  return contact.parts[0] + " and " + contact.parts[1] + ": " + rule.why + "; " + where_text(rule, units) + ", " +
         when_text(rule) + "; " + depth_text(contact, rule, units);
}

std::string contact_count_text(const Model& model) {
  return "Everything keeps its margin to everything that moves against it, but for " +
         std::to_string(count_meant_contacts(model)) +
         " pairs of parts that are built to touch, at their place and time and to a stated depth; --contacts lists them.";
}

Json contacts_json(const Model& model, DisplayUnits units) {
  Json out = Json::array();
  for (const MeantContact& contact : meant_contacts(model)) {
    const ContactRule& rule = rule_of(model, contact);
    out.push_back({{"parts", contact.parts},
                   {"why", rule.why},
                   {"when", when_text(rule)},
                   {"moves", contact.moves},
                   {"section", rule.body < 0 ? Json(nullptr) : Json(rule.body + 1)},
                   {"centre_m", {json_number(rule.centre.x), json_number(rule.centre.y)}},
                   {"radius_m", json_number(rule.radius)},
                   {"depth_at_most_m", json_number(rule.depth)},
                   {"depth_as_drawn_m", json_number(contact.deepest)},
                   {"text", contact_text(model, contact, units)}});
  }
  return out;
}

}  // namespace stowpath
