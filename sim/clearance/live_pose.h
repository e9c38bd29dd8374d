#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sim/clearance/cast.h"
#include "sim/geometry/distance.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// Two parts at one pose, hooks seated as the model takes them: play and floor's unevenness are left out.
struct PoseMeeting {
  std::array<std::string, 2> parts;  ///< of the stair, then of the room or of a section nearer the rail
  std::array<PartKind, 2> kinds{};
  double clearance = 0.0;  ///< signed, of the prisms [m]
  double side_view = 0.0;  ///< signed, of their outlines: less than `clearance` where they pass along the rail [m]
  double needed = 0.0;     ///< the margin [m]
  Separation witness;      ///< of the outlines, seen from the room [m]
};

/// What is near at a pose.
struct PoseNews {
  std::optional<PoseMeeting> closest;  ///< meant contacts and zones left out; none where nothing is within a metre
  std::vector<PoseMeeting> met;        ///< closer than their margin, zones entered and meant contacts pressed; worst first
};

/// How far a motion goes before two parts touch.
struct FreeWay {
  double u = 1.0;                       ///< proven free of touching up to here, in [0, 1]
  std::optional<PoseMeeting> held_by;  ///< at that u; none where the whole way is free
};

/// Single poses and short ways of a model, for a picture that follows the hand. The model must outlive it.
class PoseWatch {
 public:
  explicit PoseWatch(const Model& model);

  /// @param like  which parts and zones are there, as in this move
  PoseNews at(const Configuration& pose, const Move& like) const;

  /// Along a segment without stretches of stations. Zones hold nothing up, and neither do parts that touch at its
  /// start.
  /// @throws std::invalid_argument for a segment over stations
  FreeWay free_way(const Segment& way, const Move& like) const;

 private:
  struct View {
    NeedTable room, sections;
  };
  void allow(const ContactState& state, const View& needs, bool room, const TargetCast& targets, MoverCast& movers) const;
  template <typename Look>
  void each_stage(const Segment& segment, const Move& like, const View& needs, Look look) const;

  const Model& model_;
  std::array<TargetCast, 8> rooms_;  // by ZoneState, the line off and then on
  View wanted_, touching_;
};

}  // namespace stowpath
