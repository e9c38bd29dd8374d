#include "tests/support/sample_dry_fit.h"

#include <cmath>
#include <numbers>

namespace stowpath::testing {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
const Interval kRails[] = {{-0.28, -0.242}, {0.242, 0.28}};

Configuration pose(double station, double lean, double fold) {
  Configuration at;
  at.station = station;
  at.lean = lean * kDegree;
  at.folds[0] = fold * kDegree;
  return at;
}

Segment straight(const Configuration& from, const Configuration& to) {
  Segment segment;
  segment.from = from;
  segment.to = to;
  return segment;
}

Move move(int index, MoveKind kind, const Configuration& from, const Configuration& to, ZoneState state) {
  Move out;
  out.index = index;
  out.kind = kind;
  out.state = state;
  out.segments = {straight(from, to)};
  out.pinned = {index < 3};
  return out;
}

StairPart stair_part(PartKind kind, const char* name, int section, RoundedPolygon outline,
                     std::vector<Interval> stations) {
  StairPart part;
  part.kind = kind;
  part.name = name;
  part.section = section;
  part.outline = std::move(outline);
  part.stations = std::move(stations);
  return part;
}

RoomPart room_part(PartKind kind, const char* name, RoundedPolygon outline, std::vector<Interval> stations) {
  RoomPart part;
  part.kind = kind;
  part.name = name;
  part.outline = std::move(outline);
  part.stations = std::move(stations);
  return part;
}

std::vector<StairPart> sample_stair() {
  const std::vector<Interval> rails(kRails, kRails + 2);
  std::vector<StairPart> parts;
  parts.push_back(stair_part(PartKind::side_rail, "side rail", 0, make_box({-0.06, -0.07}, {1.79, 0.07}), rails));
  parts.push_back(stair_part(PartKind::side_rail, "side rail", 1, make_box({0.0, -0.07}, {1.44, 0.07}), rails));
  for (int i = 0; i < 11; ++i) {
    const double along = 0.15 + 0.28 * i;
    const int section = along < 1.79 ? 0 : 1;
    const Vec2 middle{section == 0 ? along : along - 1.79, 0.0};
    const RoundedPolygon flat = make_box({-0.019, -0.07}, {0.019, 0.07});
    parts.push_back(stair_part(PartKind::tread, "tread", section, placed(flat, make_pose(middle, -27.0 * kDegree)),
                               {{-0.242, 0.242}}));
  }
  const std::vector<Interval> hooks{{-0.267, -0.255}, {0.255, 0.267}};
  for (int i = 0; i < 8; ++i) {
    const double a = (200.0 - 25.0 * i) * kDegree, b = a - 25.0 * kDegree;
    parts.push_back(stair_part(
        PartKind::hook, "hook curl", 0,
        make_capsule({0.026 * std::cos(a), 0.026 * std::sin(a)}, {0.026 * std::cos(b), 0.026 * std::sin(b)}, 0.006),
        hooks));
  }
  parts.push_back(stair_part(PartKind::hinge, "hinge", 0, make_box({1.76, -0.09}, {1.82, -0.07}), rails));
  parts.push_back(
      stair_part(PartKind::caster, "caster", 1, make_disc({1.44, 0.0}, 0.0375), {{-0.326, -0.294}, {0.294, 0.326}}));
  return parts;
}

std::vector<RoomPart> sample_room() {
  std::vector<Interval> brackets;
  for (int i = 0; i < 8; ++i) brackets.push_back({0.294 + 0.86 * i, 0.306 + 0.86 * i});
  std::vector<RoomPart> parts;
  parts.push_back(room_part(PartKind::floor, "floor", make_box({-0.5, -0.5}, {5.1, 0.0}), {{-0.5, 8.1}}));
  parts.push_back(room_part(PartKind::loft, "loft", make_box({0.0, 2.71}, {0.9, 2.95}), {{0.3, 7.3}}));
  parts.push_back(room_part(PartKind::pipe, "rail pipe", make_disc({0.975, 2.9}, 0.0167), {{0.2, 7.3}}));
  parts.push_back(
      room_part(PartKind::bracket, "bracket arm", make_capsule({0.9, 2.845}, {0.975, 2.845}, 0.006), brackets));
  parts.push_back(room_part(PartKind::bracket, "bracket saddle", make_box({0.955, 2.845}, {0.995, 2.883}), brackets));
  parts.push_back(room_part(PartKind::obstacle, "strip light", make_box({2.35, 2.98}, {2.47, 3.08}), {{0.9, 5.4}}));
  parts.push_back(room_part(PartKind::obstacle, "truing bench", make_box({0.0, 0.0}, {0.62, 0.9}), {{0.3, 2.3}}));
  return parts;
}

std::vector<Move> sample_moves() {
  const Configuration start = pose(1.0, 27.7, 0.0), home = pose(4.0, 27.7, 0.0), dragged = pose(4.0, 40.0, 25.0);
  const Configuration hung = pose(4.0, 70.0, 55.0), folded = pose(4.0, 70.0, 176.0), parked = pose(4.0, 88.0, 176.0);
  return {move(0, MoveKind::stand, start, start, ZoneState::standing),
          move(1, MoveKind::roll, start, home, ZoneState::moving),
          move(4, MoveKind::drag, home, dragged, ZoneState::moving),
          move(5, MoveKind::hang, dragged, hung, ZoneState::moving),
          move(6, MoveKind::fold, hung, folded, ZoneState::moving),
          move(7, MoveKind::lift, folded, parked, ZoneState::moving),
          move(7, MoveKind::park, parked, parked, ZoneState::parked)};
}

MoveResult result(int index, MoveKind kind, Verdict verdict, double clearance, const char* a, const char* b) {
  MoveResult out;
  out.index = index;
  out.kind = kind;
  out.verdict = verdict;
  out.at_least = clearance - 5e-5;
  out.at_most = clearance;
  out.closest = {a, b};
  out.closest_at = pose(4.0, 70.0, 55.0);
  return out;
}

Finding margin_finding() {
  Finding f;
  f.id = "F2";
  f.kind = FindingKind::margin;
  f.parts = {"side rail", "loft"};
  f.part_kinds = {PartKind::side_rail, PartKind::loft};
  f.moves = {7};
  f.move_kinds = {MoveKind::lift};
  f.stations = {{4.0, 4.0}};
  f.from = pose(4.0, 81.3, 176.0);
  f.to = f.worst = pose(4.0, 88.0, 176.0);
  f.clearance = 0.0041;
  f.needed = 0.012;
  f.witness = {0.0041, {0.9041, 2.93}, {0.9, 2.93}};
  f.outlines = {{{0.9, 2.71}, {0.9, 2.95}, {0.0, 2.95}, {0.0, 2.71}}};
  return f;
}

Finding zone_finding() {
  Finding f;
  f.id = "F3";
  f.kind = FindingKind::zone;
  f.parts = {"tread", "photo wall"};
  f.part_kinds = {PartKind::tread, PartKind::zone};
  f.moves = {7};
  f.move_kinds = {MoveKind::park};
  f.stations = {{4.0, 4.0}};
  f.from = f.to = f.worst = pose(4.0, 88.0, 176.0);
  f.clearance = -0.212;
  f.witness = {-0.212, {1.6, 2.288}, {1.6, 2.5}};
  f.outlines = {{{1.5, 2.2}, {1.7, 2.2}, {1.7, 2.7}, {1.5, 2.7}}, {{0.0, 0.0}, {3.4, 0.0}, {3.4, 2.5}, {0.0, 2.5}}};
  return f;
}

}  // namespace

Scene dry_fit_scene() {
  Scene scene;
  scene.file = "sample.yaml";
  scene.name = "Wheel loft over the truing benches";
  scene.room = {7.6, 4.6, 4.1};
  scene.loft.edge = 0.9;
  scene.loft.deck = 2.95;
  scene.loft.thickness = 0.24;
  scene.loft.stations = {0.3, 7.3};
  scene.rail.at = {0.975, 2.9};
  scene.rail.stations = {0.2, 7.3};
  scene.rail.joints = {{3.75, 0.042, 0.06}};
  for (int i = 0; i < 8; ++i) scene.rail.brackets.stations.push_back(0.3 + 0.86 * i);
  scene.stair.width = 0.56;
  scene.stair.sections = {1.79, 1.44};
  scene.stair.hooks.stations = {-0.261, 0.261};
  return scene;
}

Model dry_fit_model() {
  Model model;
  model.name = "Wheel loft over the truing benches";
  model.linkage.pivot = {0.975, 2.8967};
  model.linkage.sections = 2;
  model.linkage.length = {1.79, 1.44, 0.0};
  model.linkage.hinge_across = {-0.082, 0.0};
  model.linkage.fold_sign = {-1.0, -1.0};
  model.working_lean = 27.7 * kDegree;
  model.working_leans = {27.5 * kDegree, 27.9 * kDegree};
  model.hook_play = 0.0017;
  model.hook_slack = 0.0033;
  model.seat_range = 30.0 * kDegree;
  model.floor_uneven = 0.005;
  model.span = {0.52, 6.98};
  model.loft_span = {0.3, 7.3};
  model.home = 4.0;
  model.stair = sample_stair();
  model.room = sample_room();
  model.zones = {{"photo wall", {ZoneState::parked}, make_box({0.0, 0.0}, {3.4, 2.5}), {2.5, 5.2}}};
  model.moves = sample_moves();
  RopeRun line;
  line.name = "hoist line";
  line.a = {0, {1.7, 0.0}, {-0.26, 0.26}};
  line.b = {-1, {2.55, 4.08}, {4.0, 4.0}};
  line.radius = 0.004;
  model.ropes = {line};
  return model;
}

Finding hook_finding(int things, int things_in_all) {
  Finding f;
  f.id = "F1";
  f.parts = {"hook curl", "bracket arm"};
  f.part_kinds = {PartKind::hook, PartKind::bracket};
  f.moves = {1};
  f.move_kinds = {MoveKind::roll};
  f.stations = {{0.52, 0.6}, {0.86, 1.46}, {1.72, 2.32}};
  f.from = f.to = f.worst = pose(1.16, 27.7, 0.0);
  f.clearance = -0.009;
  f.needed = 0.003;
  f.play = 0.0017;
  f.things = things;
  f.things_in_all = things_in_all;
  f.witness = {-0.009, {0.958, 2.86}, {0.958, 2.851}};
  f.outlines = {{{0.95, 2.84}, {0.966, 2.84}, {0.966, 2.89}, {0.95, 2.89}},
                {{0.9, 2.839}, {0.975, 2.839}, {0.975, 2.851}, {0.9, 2.851}}};
  return f;
}

DryFit sample_dry_fit() {
  DryFit fit;
  fit.verdict = Verdict::interference;
  fit.moves = {result(0, MoveKind::stand, Verdict::clear, 0.0143, "tread", "loft"),
               result(1, MoveKind::roll, Verdict::interference, -0.009, "hook curl", "bracket arm"),
               result(4, MoveKind::drag, Verdict::clear, 0.0143, "tread", "loft"),
               result(5, MoveKind::hang, Verdict::clear, 0.0202, "side rail", "loft"),
               result(6, MoveKind::fold, Verdict::undecided, 0.0029, "side rail", "side rail"),
               result(7, MoveKind::lift, Verdict::interference, 0.0041, "side rail", "loft"),
               result(7, MoveKind::park, Verdict::interference, -0.212, "tread", "photo wall")};
  Finding undecided = margin_finding();
  undecided.id = "F4";
  undecided.kind = FindingKind::undecided;
  undecided.parts = {"side rail", "side rail of section 2"};
  undecided.part_kinds = {PartKind::side_rail, PartKind::side_rail};
  undecided.moves = {6};
  undecided.move_kinds = {MoveKind::fold};
  undecided.from = pose(4.0, 70.0, 171.0);
  undecided.to = undecided.worst = pose(4.0, 70.0, 176.0);
  undecided.clearance = 0.0029;
  undecided.needed = 0.003;
  undecided.witness = {0.0029, {2.2, 2.5}, {2.2, 2.503}};
  undecided.note = "0.0029 m lies within what play and rounding leave open";
  Finding build;
  build.id = "F5";
  build.kind = FindingKind::build;
  build.parts = {"tread", ""};
  build.note = "a tread would cross the joint at 1.790 m along";
  fit.findings = {hook_finding(8, 8), margin_finding(), zone_finding(), undecided, build};
  fit.reach.span = {0.3, 7.3};
  fit.reach.rail_span = {0.52, 6.98};
  fit.reach.standing = {{0.6, 0.86}, {1.46, 1.72}, {2.32, 6.98}};
  fit.work = {12345, 40321, 0.0041};
  return fit;
}

DryFit clear_dry_fit() {
  DryFit fit = sample_dry_fit();
  fit.verdict = Verdict::clear;
  fit.findings.clear();
  for (MoveResult& move : fit.moves) {
    move.verdict = Verdict::clear;
    move.at_most = 0.02;
    move.at_least = 0.0199;
  }
  fit.reach.standing = {{0.52, 6.98}};
  return fit;
}

}  // namespace stowpath::testing
