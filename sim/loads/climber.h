#pragma once

#include <string>
#include <vector>

#include "sim/loads/standing_state.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"
#include "sim/trade/lumber.h"

namespace stowpath {

/// The standing stair with one person at one place.
struct ClimberPlace {
  std::string name;           ///< "tread 3", counted from below, or "1.250 m along" on a stair without treads
  double along = 0.0;         ///< on the straight chain, from the pivot [m]
  double height = 0.0;        ///< above the room's zero [m]
  double hooks = 0.0;         ///< pipe on all hooks, upward [N]
  double floor = 0.0;         ///< floor on all casters, upward [N]
  double worst_hook = 0.0;    ///< on one hook, whichever feet are in the air and wherever the foot stands [N]
  double worst_caster = 0.0;  ///< on one caster, likewise [N]
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
  double axle_along = 0.0;            ///< of the casters, from the pivot: the side rails' span [m]
  std::vector<ClimberPlace> places;   ///< lowest first
  double side_rail_modulus = 0.0;     ///< of both together [m3]
  double side_rail_area = 0.0;        ///< of both together [m2]
  std::optional<TreadLoad> tread;     ///< under the person in its middle
  std::vector<StandingState> states;  ///< every case, standpoint and way of sharing

  double bending_stress(const ClimberPlace& place) const;  ///< in a side rail, locked joints passing it on [Pa]
  double shear_stress(const ClimberPlace& place) const;    ///< 1.5 V / A [Pa]
};

WoodStrength wood_strength(const Scene& scene);

/// A person on every tread of the standing stair in turn, in the middle and with both casters on the floor; and the
/// states of all load cases.
///
/// The stair is a straight beam between the pivot and the casters' axle, its joints locked. The stair's own mass is
/// spread over each section.
ClimberReport climb(const Scene& scene, const Model& model);

/// A tread of the scene under a force in its middle and, for shear, at its end. @throws std::bad_optional_access without
/// treads.
TreadLoad tread_load(const Scene& scene, const Species& species, double force);

}  // namespace stowpath
