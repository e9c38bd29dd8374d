#include <algorithm>
#include <cmath>

#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/trade/figure.h"
#include "sim/trade/rope.h"

namespace stowpath {

namespace {

constexpr double kLineFactor = 5.0;  // breaking over working load: the least that rope makers name for general use

struct HoistItems {
  const HardwareInputs& inputs;
  const Hoist& hoist;
  const HoistLoads& loads;
  double dynamic = 1.0;
  std::vector<HardwareItem>& items;

  HardwareItem& add(HardwareItem item) {
    item.dynamic = dynamic;
    items.push_back(std::move(item));
    return items.back();
  }

  HardwareItem& add_rated(const std::string& name, const WorstLoad& load,
                          std::initializer_list<std::string_view> names) {
    return add(rated_item(inputs.scene, name, dynamic * load.force, load.where, names));
  }
};

// A rating for the line, if given, is a working load; a breaking strength is divided.
void add_line(HoistItems& to, const std::string& name, const WorstLoad& load, double share, const std::string& how) {
  HardwareItem& item = to.add_rated(name, load, {"line", "rope"});
  if (item.resistance || !to.hoist.line.strength) return;
  item.resistance = *to.hoist.line.strength * share / kLineFactor;
  item.basis = "breaking strength of the scene file" + how + ", over 5";
  item.status = kRopeDesignFactorSource.status;
  item.note = "5 is the least design factor for general use; up to 12 is named where people can be hurt";
}

void add_lines(HoistItems& to) {
  add_line(to, "hoist line", to.loads.line, 1.0, "");
  const std::string& named = to.hoist.line.knot;
  const Knot* knot = find_knot(named);
  if (knot == nullptr) {
    constexpr double kUnknownKnot = 0.5;  // about the worst share that any knot table prints
    add_line(to, "knot at the dead end (" + named + ")", to.loads.dead_end, kUnknownKnot,
             ", half lost in a knot unknown to us");
    return;
  }
  const std::string left = format_decimal(AtLeast{100.0 * knot->range.lo}, 0);
  add_line(to, "knot at the dead end (" + named + ")", to.loads.dead_end, knot->range.lo,
           ", of which the knot leaves " + left + " % at worst");
}

double ceiling_force(const HoistLoads& loads) { return std::hypot(norm(loads.ceiling), loads.ceiling_along); }

void add_blocks(HoistItems& to) {
  const bool moving_block = to.hoist.line.parts >= 2;
  if (moving_block) {
    to.add_rated("block at the ceiling point", {ceiling_force(to.loads), to.loads.ceiling_where}, {"block", "sheave"});
    to.add_rated("block at the pick", to.loads.pick, {"block", "sheave"});
  } else {
    to.add_rated("sheave at the ceiling point", {ceiling_force(to.loads), to.loads.ceiling_where}, {"block", "sheave"});
  }
  for (std::size_t i = 0; i < to.loads.leads.size(); ++i)
    to.add_rated("lead sheave " + std::to_string(i + 1), to.loads.leads[i],
                 {"lead block", "lead sheave", "block", "sheave"});
}

// Withdrawal and shear together, by the angle of the load to the wood's face: NDS 12.4.1, from memory.
double combined_resistance(double pull, double shear, double along_screw, double across_screw) {
  const double size = std::hypot(along_screw, across_screw);
  if (!(size > 0.0)) return pull;
  const double sine = along_screw / size, cosine = across_screw / size;
  return pull * shear / (pull * cosine * cosine + shear * sine * sine);
}

void add_screwed_eye(HoistItems& to, HardwareItem item) {
  const Screws& eye = *to.hoist.eye;
  const Species& wood = wood_of(eye, to.inputs.climber);
  const double down = std::max(0.0, -to.loads.ceiling.y);
  const double side = std::hypot(to.loads.ceiling.x, to.loads.ceiling_along);
  item.name = "eye at the ceiling point, its thread in the wood";
  item.resistance =
      eye.count * combined_resistance(screw_pull(eye, wood.gravity), screw_shear(eye, wood.gravity, 0.0), down, side);
  item.basis = "NDS withdrawal of " + say_screws(to.inputs.scene, eye, wood) + ", with the side pull by NDS 12.4.1";
  item.status = side > 0.0 ? SourceStatus::memory : SourceStatus::verified;
  item.note =
      "a screw eye has no rating of its own: it is reckoned as a lag's thread; a through-bolt with a rating is "
      "the better choice";
  to.add(std::move(item));
}

void add_ceiling_point(HoistItems& to) {
  HardwareItem eye = rated_item(to.inputs.scene, "ceiling point", to.dynamic * ceiling_force(to.loads),
                                to.loads.ceiling_where, {"ceiling point", "eye"});
  if (to.hoist.eye) {
    HardwareItem screwed = eye;
    screwed.note.clear();
    add_screwed_eye(to, std::move(screwed));
    if (!eye.resistance) return;
  }
  to.add(std::move(eye));
}

void add_framing(HoistItems& to) {
  const int members = std::max(1, to.hoist.eye_members);
  HardwareItem item;
  item.name = members == 1 ? "framing member over the ceiling point" : "each framing member over the ceiling point";
  item.load = to.dynamic * ceiling_force(to.loads) / members;
  item.where = to.loads.ceiling_where;
  item.note = "a licensed engineer must accept this load on joists, trusses or roof members; we do not judge it";
  if (members > 1) item.note += "; shared alike by " + std::to_string(members);
  to.add(std::move(item));
}

void add_pick(HoistItems& to) {
  to.add_rated("carabiner or shackle at the pick", to.loads.pick, {"carabiner", "shackle"});
  if (to.hoist.spreader) to.add_rated("spreader", to.loads.pick, {"spreader"});
  const bool two = to.hoist.spread > 0.0;
  const WorstLoad each{to.loads.pick.force / (two ? 2.0 : 1.0), to.loads.pick.where};
  HardwareItem& item = to.add_rated(two ? "each pick" : "pick", each, {"pick"});
  if (two && !to.hoist.spreader)
    item.note +=
        item.note.empty() ? "slings that slant pull harder than this" : "; slings that slant pull harder than this";
}

void add_hand_end(HoistItems& to) {
  if (to.hoist.cleat) to.add_rated("cleat and its screws", to.loads.hand, {"cleat"});
  if (to.hoist.pulled_by == PulledBy::hand) return;
  to.add_rated("winch", to.loads.hand, {"winch"});
  to.add_rated("winch's screws", to.loads.hand, {"winch screws", "winch's screws"});
}

}  // namespace

void add_hoist_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items) {
  HoistItems to{inputs, *inputs.scene.hoist, *inputs.hoist, inputs.scene.dynamic_factor, items};
  add_lines(to);
  add_blocks(to);
  add_ceiling_point(to);
  add_framing(to);
  add_pick(to);
  add_hand_end(to);
  if (inputs.scene.fold_line) to.add_rated("fold line", to.loads.fold_line, {"fold line"});
}

}  // namespace stowpath
