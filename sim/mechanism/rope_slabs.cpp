#include "sim/mechanism/rope_slabs.h"

#include <algorithm>
#include <cmath>

namespace stowpath {

namespace {

constexpr double kSlab = 0.040;  // [m]

RoomPoint between(const RoomPoint& a, const RoomPoint& b, double u) {
  return {lerp(a.at, b.at, u), a.station + u * (b.station - a.station)};
}

double length_of(const RoomRope& rope) {
  return std::hypot(norm(rope.b.at - rope.a.at), rope.b.station - rope.a.station);
}

}  // namespace

std::vector<RoomPart> rope_slabs(const RoomRope& rope, double from, double to) {
  const double whole = length_of(rope), u_from = from / whole, u_to = 1.0 - to / whole;
  std::vector<RoomPart> parts;
  if (!(u_from < u_to)) return parts;
  // A slab is exact where the rope runs only out and up, or only along the rail: the shorter of the two counts.
  const double stations = rope.b.station - rope.a.station;
  const double skew = (u_to - u_from) * std::min(norm(rope.b.at - rope.a.at), std::abs(stations));
  const int slabs = std::max(1, static_cast<int>(std::ceil(skew / kSlab)));
  for (int k = 0; k < slabs; ++k) {
    const double share = (u_to - u_from) / slabs;
    const RoomPoint a = between(rope.a, rope.b, u_from + k * share);
    const RoomPoint b = between(rope.a, rope.b, u_from + (k + 1) * share);
    RoomPart part{PartKind::lead_line,
                  rope.name,
                  make_capsule(a.at, b.at, rope.radius),
                  {{std::min(a.station, b.station) - rope.radius, std::max(a.station, b.station) + rope.radius}}};
    part.aslant = skew > 0.0;
    part.when = rope.when;
    part.id = rope.id;
    parts.push_back(std::move(part));
  }
  return parts;
}

}  // namespace stowpath
