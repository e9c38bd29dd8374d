#include "sim/mechanism/supports.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/geometry/distance.h"
#include "sim/mechanism/fastening.h"
#include "sim/mechanism/prism_touch.h"

namespace stowpath {

namespace {

constexpr double kFar = 1e4;  // [m]

// A rectangle of the face: along its edge, and along the rail.
struct Patch {
  Interval edge, stations;
};

// A mounting face in a frame of its own: x along the edge, y towards the building.
struct FaceFrame {
  Vec2 origin, along, outward;
  double length = 0.0;

  explicit FaceFrame(const MountingFace& face) : origin(face.b), length(norm(face.b - face.a)) {
    along = (1.0 / length) * (face.a - face.b);
    outward = {-along.y, along.x};
  }
  Vec2 seen(Vec2 p) const { return {dot(p - origin, along), dot(p - origin, outward)}; }
  RoundedPolygon seen(const RoundedPolygon& outline) const {
    RoundedPolygon out = outline;
    for (Vec2& corner : out.core) corner = seen(corner);
    return out;
  }
};

// Where along the edge an outline of the face's frame begins within kOnFace of it.
IntervalSet faced(const RoundedPolygon& outline, double length) {
  const Interval near = reach_x(common_corners(outline, make_box({0.0, -kOnFace}, {length, kOnFace})));
  if (near.empty()) return {};
  const Interval buried = reach_x(common_corners(outline, make_box({0.0, -kOnFace - 1e-6}, {length, -kOnFace})));
  return buried.length() > 0.0 ? subtract(near, {buried}) : IntervalSet{near};
}

Interval shrunk(Interval stretch) {
  const double by = std::min(kOnFace, 0.49 * stretch.length());
  return {stretch.lo + by, stretch.hi - by};
}

double covered(const std::vector<Patch>& patches, Interval edge, Interval stations) {
  std::vector<double> cuts{edge.lo, edge.hi};
  for (const Patch& patch : patches)
    for (const double cut : {patch.edge.lo, patch.edge.hi})
      if (edge.contains(cut)) cuts.push_back(cut);
  std::sort(cuts.begin(), cuts.end());
  double area = 0.0;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const double middle = 0.5 * (cuts[i] + cuts[i + 1]);
    IntervalSet held;
    for (const Patch& patch : patches)
      if (const Interval both = meet(patch.stations, stations); patch.edge.contains(middle) && both.length() > 0.0)
        held.push_back(both);
    area += (cuts[i + 1] - cuts[i]) * total_length(unite(std::move(held)));
  }
  return area;
}

std::vector<Patch> patches_of(const RoomPart& part, const FaceFrame& frame, Interval stations) {
  std::vector<Patch> patches;
  for (const Interval stretch : part.stations) {
    if (gap(stretch, stations) > 0.0) continue;
    for (const Interval edge : faced(frame.seen(part.outline), frame.length)) patches.push_back({edge, stretch});
  }
  return patches;
}

// To the nearest stretch of a part. What is further off along the rail alone than `most` is not looked at in the side
// view: the answer is then some number from `most` on.
double part_distance(const RoundedPolygon& outline, Interval stations, const RoomPart& part, double most) {
  double beside = kFar;
  for (const Interval stretch : part.stations) beside = std::min(beside, gap(stations, stretch));
  if (beside >= most) return beside;
  return std::hypot(std::max(0.0, distance(outline, {}, part.outline, {})), beside);
}

}  // namespace

std::vector<const RoomPart*> building_of(const Model& model) {
  std::vector<const RoomPart*> building;
  for (const RoomPart& part : model.room) {
    const PartKind kind = part.kind;
    if (kind == PartKind::floor || kind == PartKind::wall || kind == PartKind::ceiling || kind == PartKind::loft ||
        kind == PartKind::obstacle)
      building.push_back(&part);
  }
  return building;
}

FaceSupport face_support(const MountingFace& face, const std::vector<const RoomPart*>& building) {
  const FaceFrame frame(face);
  const Interval edge = shrunk({0.0, frame.length}), stations = shrunk(face.stations);
  const double area = edge.length() * stations.length();
  const RoundedPolygon line = make_capsule(face.a, face.b, 0.0);
  FaceSupport support{0.0, kFar, {}};
  std::vector<Patch> all;
  double most = 0.0;
  for (const RoomPart* part : building) {
    const double away = part_distance(line, face.stations, *part, std::max(support.distance, 2.0 * kOnFace));
    const std::vector<Patch> patches = away > kOnFace ? std::vector<Patch>{} : patches_of(*part, frame, face.stations);
    const double held = covered(patches, edge, stations);
    if (held > most || (most == 0.0 && away < support.distance)) support.nearest = part->name;
    most = std::max(most, held);
    support.distance = std::min(support.distance, away);
    all.insert(all.end(), patches.begin(), patches.end());
  }
  support.share = area > 0.0 ? covered(all, edge, stations) / area : 0.0;
  return support;
}

NearThing nearest_thing(Vec2 at, double station, const std::vector<const RoomPart*>& building) {
  const RoundedPolygon point = make_disc(at, 0.0);
  NearThing near{{}, kFar};
  for (const RoomPart* part : building)
    if (const double away = part_distance(point, {station, station}, *part, near.distance); away < near.distance)
      near = {part->name, away};
  return near;
}

IntervalSet stations_without(Vec2 at, Interval stretch, double reach, const std::vector<const RoomPart*>& building) {
  const RoundedPolygon point = make_disc(at, 0.0);
  IntervalSet within;
  for (const RoomPart* part : building) {
    const double away = std::max(0.0, distance(point, {}, part->outline, {}));
    if (away > reach) continue;
    const double beside = std::sqrt(reach * reach - away * away);
    for (const Interval stations : part->stations) within.push_back({stations.lo - beside, stations.hi + beside});
  }
  return subtract(stretch, unite(std::move(within)));
}

}  // namespace stowpath
