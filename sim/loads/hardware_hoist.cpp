#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/connection.h"
#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/trade/figure.h"
#include "sim/trade/fittings.h"
#include "sim/trade/length.h"
#include "sim/trade/rope.h"

namespace stowpath {

namespace {

// Breaking over working load of a line: the least that rope makers name for general use, and what they name where it
// stays over people.
constexpr double kLineFactor = 5.0, kOverPeople = 10.0;

struct HoistItems {
  const HardwareInputs& inputs;
  const HoistState& state;
  std::vector<HardwareItem>& items;

  const Scene& scene() const { return inputs.scene; }
  const Hoist& hoist() const { return *inputs.scene.hoist; }
  double dynamic() const { return state.moving() ? inputs.scene.dynamic_factor : 1.0; }

  HardwareItem& add(HardwareItem item) {
    item.dynamic = dynamic();
    items.push_back(std::move(item));
    return items.back();
  }

  HardwareItem& add_rated(const std::string& name, double load, std::initializer_list<std::string_view> names) {
    return add(rated_item(inputs.scene, name, dynamic() * load, state.where, names));
  }
};

double size_of(const Vec3& force) { return std::hypot(norm(force.side), force.along_rail); }

void also(HardwareItem& item, const std::string& note) { item.note += (item.note.empty() ? "" : "; ") + note; }

// A rating for the line, if given, is a working load; a breaking strength is divided.
void add_line(HoistItems& to, const std::string& name, double load, double share, const std::string& how) {
  HardwareItem& item = to.add_rated(name, load, {"line", "rope"});
  if (item.resistance || !to.hoist().line.strength) return;
  item.resistance = *to.hoist().line.strength * share / kLineFactor;
  item.reserve = kLineFactor;
  item.basis = "breaking strength of the scene file" + how + ", over 5";
  item.status = kRopeDesignFactorSource.status;
  item.note = "5 is the least design factor for general use";
}

/// What a knot leaves of the line; half, about the worst that any table prints, where it is unknown to us.
double knot_share(const std::string& named) {
  const Knot* knot = find_knot(named);
  return knot == nullptr ? 0.5 : knot->range.lo;
}

void add_lines(HoistItems& to) {
  add_line(to, "hoist line", to.state.line, 1.0, "");
  const std::string& named = to.hoist().line.knot;
  const std::string left = format_decimal(AtLeast{100.0 * knot_share(named)}, 0);
  add_line(to, "knot at the dead end (" + named + ")", to.state.dead_end, knot_share(named),
           find_knot(named) == nullptr ? ", half lost in a knot unknown to us"
                                       : ", of which the knot leaves " + left + " % at worst");
}

/// Whoever is below stands under a line that is not looked at again.
void add_parked_line(HoistItems& to) {
  if (to.state.doing != HoistDoing::parked) return;
  const double share = knot_share(to.hoist().line.knot);
  HardwareItem item;
  item.name = "hoist line with its knot, parked over people";
  item.load = std::max(to.state.line, to.state.dead_end);
  item.where = to.state.where;
  item.note = "no breaking strength given: hoist.line.strength";
  if (to.hoist().line.strength) {
    item.resistance = *to.hoist().line.strength * share / kOverPeople;
    item.reserve = kOverPeople;
    item.basis = "breaking strength of the scene file, of which the knot leaves " +
                 format_decimal(AtLeast{100.0 * share}, 0) + " % at worst, over 10";
    item.status = SourceStatus::memory;
    item.note = "10 to 12 is named where people can be hurt: they are, under a stair that hangs for days";
  }
  to.add(std::move(item));
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

std::string degrees_text(double angle) { return format_degrees(AtMost{angle}, 0); }

/// What a pull at an angle leaves of an eye's rating.
void lean_on(HardwareItem& item, EyeKind kind, double angle) {
  if (!item.resistance || kind == EyeKind::swivel) return;
  const std::optional<double> share = eyebolt_share(kind == EyeKind::shoulder, angle);
  if (share) {
    *item.resistance *= *share;
    if (*share < 1.0)
      also(item, "pulled " + degrees_text(angle) + " off its axis: " + format_decimal(AtLeast{100.0 * *share}, 0) +
                     " % of its rating left");
    return;
  }
  item.resistance.reset();
  item.basis.clear();
  also(item, "pulled " + degrees_text(angle) +
                 " off its axis, where no table leaves a plain eye anything: a shoulder eye or a swivel (kind)");
}

double off_plumb(const Vec3& force) {
  return std::atan2(std::hypot(force.side.x, force.along_rail), std::max(0.0, -force.side.y));
}

void add_screwed_eye(HoistItems& to, const Screws& eye) {
  const Species& wood = wood_of(eye, to.inputs.climber);
  const Vec3& force = to.state.ceiling;
  const double down = std::max(0.0, -force.side.y), side = std::hypot(force.side.x, force.along_rail);
  HardwareItem item;
  item.name = "eye at the ceiling point, its thread in the wood";
  item.load = to.dynamic() * size_of(force);
  item.where = to.state.where;
  item.resistance =
      eye.count * pulled_and_sheared(screw_pull(eye, wood.gravity), screw_shear(eye, wood.gravity, 0.0), down, side);
  item.basis = "NDS withdrawal of " + say_screws(to.scene(), eye, wood) + ", with the side pull by NDS 12.4.1";
  item.status = side > 0.0 ? SourceStatus::memory : SourceStatus::verified;
  item.reserve = screw_reserve(eye);
  item.note =
      "a screw eye has no rating of its own: it is reckoned as a lag's thread; a through-bolt with a rating is "
      "the better choice";
  to.add(std::move(item));
}

void add_ceiling_point(HoistItems& to) {
  HardwareItem eye = rated_item(to.scene(), "ceiling point", to.dynamic() * size_of(to.state.ceiling), to.state.where,
                                {"ceiling point", "eye"});
  lean_on(eye, to.hoist().eye_kind, off_plumb(to.state.ceiling));
  if (to.hoist().eye) {
    add_screwed_eye(to, *to.hoist().eye);
    if (!rating_of(to.scene(), {"ceiling point", "eye"})) return;
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
  item.note = "a licensed engineer must accept this load on joists, trusses or roof members; we do not judge it";
  if (members > 1) item.note += "; shared alike by " + std::to_string(members);
  to.add(std::move(item));
}

/// Two picks share a bar's load alike; slings from one point to two slant, and pull the harder for it.
double pull_on_each_pick(const HoistItems& to) {
  const Hoist& hoist = to.hoist();
  const double all = size_of(to.state.pick);
  return hoist.spread > 0.0 ? 0.5 * all : all;
}

void add_pick(HoistItems& to) {
  to.add_rated("carabiner or shackle at the pick", size_of(to.state.pick), {"carabiner", "shackle"});
  if (to.hoist().spreader) to.add_rated("spreader", size_of(to.state.pick), {"spreader"});
  const bool two = to.hoist().spread > 0.0;
  HardwareItem& item = to.add_rated(two ? "each pick" : "pick", pull_on_each_pick(to), {"pick"});
  lean_on(item, to.hoist().pick_kind, to.state.pick_angle);
  if (two && !to.hoist().spreader) also(item, "slings that slant pull harder than this");
}

void add_hand_end(HoistItems& to) {
  if (to.hoist().cleat) to.add_rated("cleat and its screws", to.state.hand, {"cleat"});
  if (to.hoist().pulled_by == PulledBy::hand) return;
  to.add_rated("winch", to.state.hand, {"winch"});
  to.add_rated("winch's screws", to.state.hand, {"winch screws", "winch's screws"});
}

void add_fold_line(HoistItems& to) {
  if (to.scene().fold_line && to.state.doing != HoistDoing::snagged)
    to.add_rated("fold line", to.state.fold_line, {"fold line"});
}

}  // namespace

std::vector<HardwareItem> hoist_items(const HardwareInputs& inputs, const HoistState& state) {
  std::vector<HardwareItem> items;
  HoistItems to{inputs, state, items};
  add_lines(to);
  add_parked_line(to);
  add_blocks(to);
  add_ceiling_point(to);
  add_framing(to);
  add_pick(to);
  add_hand_end(to);
  add_fold_line(to);
  return items;
}

HardwareItem unsaid_drive(const HoistLoads& loads) {
  HardwareItem item;
  item.name = "whatever the drive pulls, should the stair catch";
  for (const HoistState& state : loads.states) item.load = std::max(item.load, state.hand);
  item.where = "caught anywhere";
  item.note = "the motor's torque or a clutch is not given: hoist.pulled by.powered winch.torque, or hoist.overload";
  return item;
}

}  // namespace stowpath
