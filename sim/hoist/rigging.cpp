#include "sim/hoist/rigging.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/mechanism/line_route.h"
#include "sim/mechanism/standing.h"
#include "sim/trade/block.h"

namespace stowpath {

namespace {

constexpr double kKnotDiameters = 30.0;  // rope in a knot and its own tail; common practice, no source
constexpr double kAdditivePerSheave = 0.1;

RopePoint room_point(const RoomPoint& point, const std::string& name) {
  return {-1, point.at, point.station, false, true, name};
}

RopePoint ceiling_point(const Scene& scene) {
  RopePoint point = room_point(*scene.hoist->ceiling_point, "ceiling point");
  if (!scene.hoist->rolls) return point;
  point.rolls = true;
  point.station -= home_station(scene).value_or(point.station);
  return point;
}

// With a spreader the block hangs `drop` short of the picks, in line with the pull.
RopePoint pick_point(const Scene& scene) {
  const SectionPoint& pick = scene.hoist->pick;
  return {pick.section - 1, {pick.along, pick.across}, 0.0, false, true, "pick"};
}

RopePoint hand_point(const Scene& scene) {
  RopePoint hand = room_point(hand_place(scene), scene.hoist->pulled_by == PulledBy::hand ? "hand" : "drum");
  hand.sheave = false;
  if (!scene.hoist->rolls) return hand;
  hand.rolls = true;
  hand.station -= home_station(scene).value_or(hand.station);
  return hand;
}

std::vector<RopePoint> line_points(const Scene& scene) {
  const RopePoint ceiling = ceiling_point(scene), pick = pick_point(scene);
  std::vector<RopePoint> points;
  for (int segment = scene.hoist->line.parts; segment >= 0; --segment)
    points.push_back(segment % 2 == 0 ? ceiling : pick);
  points.front().sheave = false;
  int number = 0;
  for (const RoomPoint& lead : scene.hoist->line.leads)
    points.push_back(room_point(lead, "lead " + std::to_string(++number)));
  points.push_back(hand_point(scene));
  return points;
}

RopePoint section_point(const SectionPoint& point, double station, const std::string& name) {
  return {point.section - 1, {point.along, point.across}, station, false, true, name};
}

// Segments before the fall from the blocks, which the leads follow.
std::vector<double> additive_shares(const Rigging& rigging, bool raising) {
  const int sheaves = sheave_count(rigging);
  std::vector<double> shares;
  int passed = 0;
  const auto growth = [&](int n) {
    return raising ? 1.0 + kAdditivePerSheave * n : 1.0 / (1.0 + kAdditivePerSheave * n);
  };
  for (std::size_t i = 0; i + 1 < rigging.points.size(); ++i) {
    if (rigging.points[i].sheave) ++passed;
    const bool part = static_cast<int>(i) < rigging.parts;
    shares.push_back(growth(part ? 0 : passed) / growth(sheaves));
  }
  return shares;
}

std::vector<double> geometric_shares(const Rigging& rigging, double K) {
  std::vector<double> shares(rigging.points.size() - 1, 1.0);
  for (std::size_t i = shares.size() - 1; i-- > 0;)
    shares[i] = rigging.points[i + 1].sheave ? shares[i + 1] / K : shares[i + 1];
  return shares;
}

}  // namespace

double sheave_factor(SheaveKind kind) { return handbook_sheave(kind != SheaveKind::plain).K; }

int sheave_count(const Rigging& rigging) {
  return static_cast<int>(
      std::count_if(rigging.points.begin(), rigging.points.end(), [](const RopePoint& point) { return point.sheave; }));
}

Rigging hoist_rigging(const Scene& scene) {
  if (!scene.hoist || !scene.hoist->ceiling_point)
    throw std::invalid_argument("a hoist line needs a hoist with a ceiling point");
  const HoistLine& line = scene.hoist->line;
  Rigging rigging;
  rigging.points = line_points(scene);
  rigging.parts = line.parts;
  rigging.sheaves = line.sheaves;
  rigging.K = sheave_factor(line.sheaves);
  rigging.model = line.friction;
  rigging.diameter = line.diameter;
  rigging.link = scene.hoist->spreader ? scene.hoist->spreader->drop : 0.0;
  rigging.tail = line.tail;
  rigging.knot = kKnotDiameters * line.diameter;
  rigging.hand_given = line.hand.has_value();
  return rigging;
}

std::optional<Rigging> fold_rigging(const Scene& scene) {
  if (!scene.fold_line || scene.fold_line->through.empty()) return std::nullopt;
  const FoldLine& line = *scene.fold_line;
  Rigging rigging;
  rigging.points.push_back(section_point(line.from, line.station, "fold line's end"));
  for (const SectionPoint& pulley : line.through)
    rigging.points.push_back(section_point(pulley, line.station, "fold line's pulley"));
  rigging.points.front().sheave = false;
  rigging.points.back().sheave = false;
  rigging.points.back().name = "fold line's hand";
  rigging.parts = static_cast<int>(line.through.size());
  rigging.K = sheave_factor(SheaveKind::plain);
  rigging.diameter = line.diameter;
  rigging.tail = 0.0;
  rigging.knot = kKnotDiameters * line.diameter;
  return rigging;
}

std::vector<double> tension_shares(const Rigging& rigging, Haul haul) {
  if (haul == Haul::holding || rigging.model == SheaveFriction::ideal)
    return std::vector<double>(rigging.points.size() - 1, 1.0);
  const bool raising = haul == Haul::raising;
  if (rigging.model == SheaveFriction::additive) return additive_shares(rigging, raising);
  return geometric_shares(rigging, raising ? rigging.K : 1.0 / rigging.K);
}

}  // namespace stowpath
