#include <algorithm>
#include <cmath>

#include "sim/loads/connection.h"
#include "sim/loads/dowel.h"
#include "sim/loads/framing.h"
#include "sim/loads/hardware_items.h"
#include "sim/loads/hoist_loads.h"
#include "sim/trade/figure.h"
#include "sim/trade/fittings.h"
#include "sim/trade/length.h"
#include "sim/trade/rope.h"

namespace stowpath {

namespace {

// Breaking over working load of a line: the least that rope makers name for general use.
constexpr double kLineFactor = 5.0;

struct HoistItems {
  const HardwareInputs& inputs;
  const HoistState& state;
  std::vector<HardwareItem>& items;

  const Scene& scene() const { return inputs.scene; }
  const Hoist& hoist() const { return *inputs.scene.hoist; }
  double dynamic() const { return state.moving() ? inputs.scene.dynamic_factor : 1.0; }
  bool over_people() const { return state.doing == HoistDoing::parked; }
  /// The design factor of a breaking strength that comes without one.
  double usual() const { return over_people() ? kOverPeople : kUsualFactor; }

  HardwareItem& add(HardwareItem item) {
    item.dynamic = dynamic();
    items.push_back(std::move(item));
    return items.back();
  }

  HardwareItem& add_rated(const std::string& name, double load, std::initializer_list<std::string_view> names) {
    return add(rated_item(inputs.scene, name, dynamic() * load, state.where, names, usual()));
  }
};

double size_of(const Vec3& force) { return std::hypot(norm(force.side), force.along_rail); }

/// What is left of a line, and why: its knots take the worst share that tables print for them, or half where they are
/// not known to us.
struct LeftOfLine {
  double share = 1.0;
  std::string words;  ///< ", of which the knot leaves 50 % at worst"
};

LeftOfLine left_by_knot(const std::string& named) {
  constexpr double kUnknownKnot = 0.5;  // about the worst share that any knot table prints
  const Knot* knot = find_knot(named);
  if (knot == nullptr) return {kUnknownKnot, ", half lost in a knot unknown to us"};
  return {knot->range.lo,
          ", of which the knot leaves " + format_decimal(AtLeast{100.0 * knot->range.lo}, 0) + " % at worst"};
}

/// A rope of a stated breaking strength, less what its knot takes, over a design factor.
void hold_by_strength(HardwareItem& item, double strength, const LeftOfLine& left, double factor) {
  item.resistance = strength * left.share / factor;
  item.reserve = factor;
  item.basis = "breaking strength of the scene file" + left.words + ", over " + format_decimal(Nominal{factor}, 0);
  item.status = factor == kLineFactor ? kRopeDesignFactorSource.status : SourceStatus::memory;
  item.note = factor == kLineFactor ? "5 is the least design factor for general use"
                                    : "10 to 12 is named where people may be below";
}

// A rating counts as the makers mean it, for a line without a knot; else the breaking strength is divided.
void add_line(HoistItems& to, const std::string& name, double load, const LeftOfLine& left) {
  HardwareItem& item = to.add_rated(name, load, {"line", "rope"});
  if (item.resistance) {
    *item.resistance *= left.share;
    item.basis += left.words;
  } else if (to.hoist().line.strength) {
    hold_by_strength(item, *to.hoist().line.strength, left, kLineFactor);
  }
}

void add_lines(HoistItems& to) {
  add_line(to, "hoist line", to.state.line, {});
  const std::string& knot = to.hoist().line.knot;
  add_line(to, "knot at the dead end (" + knot + ")", to.state.dead_end, left_by_knot(knot));
}

/// What breaks the line, as far as the scene says it. [N]
std::optional<double> breaking_line(const Scene& scene) {
  if (scene.hoist->line.strength) return scene.hoist->line.strength;
  const Rating* rating = rating_of(scene, {"line", "rope"});
  if (rating == nullptr) return std::nullopt;
  if (rating->breaking) return rating->force;
  return rating->factor ? std::optional(*rating->factor * rating->force) : std::nullopt;
}

HardwareItem& add_over_people(HoistItems& to, const std::string& name, double load, std::optional<double> strength,
                              const LeftOfLine& left, const std::string& key) {
  HardwareItem item;
  item.name = name + ", parked over people";
  item.load = load;
  item.where = to.state.where;
  item.note = "no breaking strength given: " + key;
  if (strength) hold_by_strength(item, *strength, left, kOverPeople);
  return to.add(std::move(item));
}

/// Whoever is below stands under a line that nobody watches, for days.
void add_parked_lines(HoistItems& to) {
  if (!to.over_people()) return;
  add_over_people(to, "hoist line", std::max(to.state.line, to.state.dead_end), breaking_line(to.scene()),
                  left_by_knot(to.hoist().line.knot), "hoist.line.strength");
  if (to.scene().fold_line && to.state.fold_line > 0.0)
    add_over_people(to, "fold line", to.state.fold_line, to.scene().fold_line->strength, left_by_knot(""),
                    "fold line.strength");
}

void add_blocks(HoistItems& to) {
  if (to.hoist().line.parts >= 2) {
    to.add_rated("block at the ceiling point", size_of(to.state.ceiling), {"block", "sheave"});
    to.add_rated("block at the pick", size_of(to.state.pick), {"block", "sheave"});
  } else {
    to.add_rated("sheave at the ceiling point", size_of(to.state.ceiling), {"block", "sheave"});
  }
  for (std::size_t i = 0; i < to.state.leads.size(); ++i)
    to.add_rated("lead sheave " + std::to_string(i + 1), size_of(to.state.leads[i]),
                 {"lead block", "lead sheave", "block", "sheave"});
}

/// What a pull at an angle leaves of an eye's rating: S-EYE-angle, S-EYE-plain.
/// @param key  under which the scene says what kind of eye it is
void lean_on(HardwareItem& item, EyeKind kind, double angle, const std::string& key) {
  if (!item.resistance || kind == EyeKind::swivel) return;
  const std::string aslant = "pulled " + format_degrees(AtMost{angle}, 0) + " off its axis";
  const std::optional<double> share = eyebolt_share(kind == EyeKind::shoulder, angle);
  if (!share) {
    item.resistance.reset();
    item.status.reset();
    item.basis.clear();
    also(item,
         aslant + ", where no table leaves " +
             (kind == EyeKind::plain ? "a plain eye anything: say " + key + ", shoulder eye or swivel, if it is one"
                                     : "an eye anything"));
  } else if (*share < 1.0) {
    *item.resistance *= *share;
    also(item, aslant + ": " + format_decimal(AtLeast{100.0 * *share}, 0) + " % of its rating left (" +
                   std::string(shoulder_eyebolt_shares().front().source.title) + ")");
  }
}

/// Along the ceiling point's shank, and across it. [N]
struct OnEye {
  double along = 0.0, across = 0.0;
  double angle() const { return std::atan2(across, along); }
};

OnEye on_ceiling_eye(const HoistItems& to) {
  const Vec3& force = to.state.ceiling;
  switch (to.hoist().eye_axis) {
    case EyeAxis::plumb:
      return {std::max(0.0, -force.side.y), std::hypot(force.side.x, force.along_rail)};
    case EyeAxis::out:
      return {std::abs(force.side.x), std::hypot(force.side.y, force.along_rail)};
    case EyeAxis::along_rail:
      break;
  }
  return {std::abs(force.along_rail), norm(force.side)};
}

void add_screwed_eye(HoistItems& to, const Screws& eye) {
  const Species& wood = wood_of(eye, to.inputs.climber);
  const OnEye load = on_ceiling_eye(to);
  HardwareItem item;
  item.name = "eye at the ceiling point, its thread in the wood";
  item.load = to.dynamic() * size_of(to.state.ceiling);
  item.where = to.state.where;
  item.resistance = eye.count * pulled_and_sheared(screw_pull(eye, wood.gravity), screw_shear(eye, wood.gravity, 0.0),
                                                   load.along, load.across);
  item.reserve = load.across > 0.0 ? kDowelReserve : screw_reserve(eye);
  item.basis = "NDS withdrawal of " + say_screws(to.scene(), eye, wood) + ", with the side pull by NDS 12.4.1";
  item.status = load.across > 0.0 ? SourceStatus::memory : SourceStatus::verified;
  item.note =
      "a screw eye has no rating of its own: it is computed as a lag's thread; a through-bolt with a rating is "
      "the better choice";
  to.add(std::move(item));
}

void add_ceiling_point(HoistItems& to) {
  HardwareItem eye = rated_item(to.scene(), "ceiling point", to.dynamic() * size_of(to.state.ceiling), to.state.where,
                                {"ceiling point", "eye"}, to.usual());
  const bool rated = eye.resistance.has_value();
  lean_on(eye, to.hoist().eye_kind, on_ceiling_eye(to).angle(), "hoist.ceiling point.kind");
  if (to.hoist().eye) {
    add_screwed_eye(to, *to.hoist().eye);
    if (!rated) return;
  }
  to.add(std::move(eye));
}

void add_framing(HoistItems& to) {
  const int members = std::max(1, to.hoist().eye_members);
  HardwareItem item;
  item.name = members == 1 ? "framing member over the ceiling point" : "each framing member over the ceiling point";
  item.load = to.dynamic() * size_of(to.state.ceiling) / members;
  item.where = to.state.where;
  item.judged = false;
  item.note = std::string(kFramingCaution);
  if (members > 1) also(item, "shared alike by " + std::to_string(members));
  to.add(std::move(item));
}

void add_pick(HoistItems& to) {
  const double all = size_of(to.state.pick);
  to.add_rated("carabiner or shackle at the pick", all, {"carabiner", "shackle"});
  if (to.hoist().spreader) to.add_rated("spreader", all, {"spreader"});
  const bool two = to.hoist().spread > 0.0;
  HardwareItem& item = to.add_rated(two ? "each pick" : "pick", two ? 0.5 * all : all, {"pick"});
  lean_on(item, to.hoist().pick_kind, to.state.pick_angle, "hoist.pick.kind");
  if (two && !to.hoist().spreader) also(item, "slings that slant pull harder than this");
}

void add_hand_end(HoistItems& to) {
  if (to.hoist().cleat) to.add_rated("cleat and its screws", to.state.hand, {"cleat"});
  if (to.hoist().pulled_by == PulledBy::hand) return;
  to.add_rated("winch", to.state.hand, {"winch"});
  to.add_rated("winch's screws", to.state.hand, {"winch screws", "winch's screws"});
}

// Its knots are not said: half of it is taken as lost in them.
void add_fold_line(HoistItems& to) {
  if (!to.scene().fold_line) return;
  HardwareItem& item = to.add_rated("fold line", to.state.fold_line, {"fold line"});
  if (!item.resistance && to.scene().fold_line->strength)
    hold_by_strength(item, *to.scene().fold_line->strength, left_by_knot(""), kLineFactor);
}

/// The first that can be done about a snag, for whoever reads why a piece does not bear it.
void say_cure(HoistItems& to, std::size_t from) {
  if (to.state.doing != HoistDoing::snagged) return;
  for (std::size_t i = from; i < to.items.size(); ++i) {
    HardwareItem& item = to.items[i];
    if (item.name != "fold line" && item.ratio() && item.reserve * *item.ratio() < 1.0)
      also(item, std::string(kSnagCure));
  }
}

HardwareItem unsaid(const HoistLoads& loads, const std::string& name, const std::string& where) {
  HardwareItem item;
  item.name = name;
  for (const HoistState& state : loads.states) item.load = std::max(item.load, state.hand);
  item.where = where;
  return item;
}

}  // namespace

void add_hoist_items(const HardwareInputs& inputs, const HoistState& state, std::vector<HardwareItem>& items) {
  HoistItems to{inputs, state, items};
  const std::size_t from = items.size();
  add_lines(to);
  add_parked_lines(to);
  add_blocks(to);
  add_ceiling_point(to);
  add_framing(to);
  add_pick(to);
  add_hand_end(to);
  add_fold_line(to);
  say_cure(to, from);
}

void add_unsaid_of_hoist(const HoistLoads& loads, std::vector<HardwareItem>& items) {
  if (!loads.drive.known) {
    HardwareItem item = unsaid(loads, "whatever the drive pulls, should the stair catch", "caught anywhere");
    item.note = "what the drive stalls at is not said: hoist.pulled by.powered winch.stall, or hoist.overload";
    items.push_back(std::move(item));
  }
  if (loads.left_out.all() > 0) {
    HardwareItem item = unsaid(loads, "the hoist where no force is known", "poses left out");
    item.note = left_out_note(loads);
    items.push_back(std::move(item));
  }
}

}  // namespace stowpath
