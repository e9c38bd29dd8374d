#pragma once

#include <string>
#include <vector>

#include "sim/loads/beam.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"
#include "sim/trade/lumber.h"

namespace stowpath {

/// One joint of the standing stair. All forces are those of one side: two side rails share alike.
struct JointLoad {
  int hinge = 0;             ///< from 0
  double moment = 0.0;       ///< on one side, about the hinge's axis; positive where it sags [N m]
  double arm = 0.0;          ///< hinge's axis to lock pin; 0 without a lock [m]
  double pin = 0.0;          ///< on the lock pin, if the hinge takes the couple's other force [N]
  double scab = 0.0;         ///< bending moment that the scab passes on [N m]
  double hinge_force = 0.0;  ///< on one hinge: the couple's other force and the joint's own shear [N]
  /// On one hinge without a lock, or where the pin is slack: the ends butt on one face, the hinge pulls on the other
  /// [N]
  double hinge_unlocked = 0.0;
};

/// The standing stair with one person at one place.
struct ClimberPlace {
  std::string name;           ///< "tread 3", counted from below, or "1.250 m along" on a stair without treads
  double along = 0.0;         ///< on the straight chain, from the pivot [m]
  double height = 0.0;        ///< above the room's zero [m]
  double hooks = 0.0;         ///< pipe on all hooks, upward [N]
  double floor = 0.0;         ///< floor on all casters, upward [N]
  double worst_hook = 0.0;    ///< on one hook while only one caster touches the floor [N]
  double worst_caster = 0.0;  ///< on that caster [N]
  BeamPeaks peaks;            ///< of both side rails together, along the chain, across it
  std::vector<JointLoad> joints;
};

/// A tread as a simple beam between the side rails, the person in its middle.
struct TreadLoad {
  double span = 0.0;        ///< [m]
  double moment = 0.0;      ///< [N m]
  double stress = 0.0;      ///< bending [Pa]
  double shear = 0.0;       ///< shear stress with the person at its end [Pa]
  double deflection = 0.0;  ///< [m]
};

/// What the side rails' wood may carry: NDS reference values for No. 2 with the size factor, normal duration, dry.
struct WoodStrength {
  const Species* species = nullptr;
  bool assumed = false;  ///< the scene names none: SPF is taken
  double bending = 0.0;  ///< of a side rail on edge [Pa]
  double shear = 0.0;    ///< [Pa]
};

struct ClimberReport {
  double mass = 0.0;  ///< of the person [kg]
  WoodStrength wood;
  std::vector<ClimberPlace> places;  ///< lowest first
  double side_rail_modulus = 0.0;    ///< of both together [m3]
  double side_rail_area = 0.0;       ///< of both together [m2]
  std::optional<TreadLoad> tread;

  double bending_stress(const ClimberPlace& place) const;  ///< in a side rail, locked joints passing it on [Pa]
  double shear_stress(const ClimberPlace& place) const;    ///< 1.5 V / A [Pa]
};

WoodStrength wood_strength(const Scene& scene);

/// A person on every tread of the standing stair in turn.
///
/// The stair is a straight beam between the pivot and the casters' axle, its joints locked. The floor pushes straight
/// up: friction there only adds a thrust along the stair, which bends nothing. The stair's own mass is spread over each
/// section. With one caster in the air the other carries all, and the hooks share so that the stair does not tip.
/// Side rails share alike; along the rail the person stands in the middle.
ClimberReport climb(const Scene& scene, const Model& model);

}  // namespace stowpath
