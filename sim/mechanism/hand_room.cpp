#include "sim/mechanism/hand_room.h"

#include "sim/mechanism/line_route.h"

namespace stowpath {

namespace {

constexpr double kHalfWidth = 0.3;  // [m]
constexpr double kHeight = 2.0;     // [m]

}  // namespace

std::optional<ZonePart> hand_room(const Scene& scene) {
  if (!scene.hoist || !scene.hoist->ceiling_point || scene.hoist->pulled_by == PulledBy::powered_winch)
    return std::nullopt;
  const RoomPoint hand = hand_place(scene);
  const double floor = scene.floor.level;
  ZonePart zone{scene.hoist->pulled_by == PulledBy::hand ? "where the hand pulls" : "where the crank is turned",
                {ZoneState::moving, ZoneState::parked},
                make_box({hand.at.x - kHalfWidth, floor}, {hand.at.x + kHalfWidth, floor + kHeight}),
                {hand.station - kHalfWidth, hand.station + kHalfWidth}};
  zone.of_hand = true;
  return zone;
}

}  // namespace stowpath
