#pragma once

#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// How far the loaded pipe gives way under the hooks.
struct PipeSag {
  double most = 0.0;        ///< down, under any hook, at any station of the span [m]
  double least = 0.0;       ///< negative where a hook's pipe bends up while the other hook presses beside it [m]
  double station = 0.0;     ///< of the stair's middle, where it sags most [m]
  double difference = 0.0;  ///< greatest between the outermost two hooks: the stair tilts sideways by it [m]
};

/// With a person on the tread that loads the hooks most, at 2001 stations of the stair's span; the hooks share alike,
/// or one carries what it does while only one caster touches the floor.
/// @throws std::invalid_argument where the rail has fewer than two brackets.
PipeSag pipe_sag(const Scene& scene, const Model& model);

/// The model for a dry fit with the pipe bent: its pivot may be anywhere from `pipe_sag`'s most below to its
/// least above where the straight pipe puts it.
///
/// The nominal pivot goes to the middle of that range, and the play that every part is inflated by grows to cover half
/// the range either way, so that what is clear there is clear for every sag in between. A pivot that shifts carries the
/// whole stair along with it where nothing touches the floor; standing, the lean changes besides, and the leans of both
/// ends are covered; in a drag, a lower pivot shows the same lower section at a lean that is larger by Δ, and Δ turns
/// the upper section: its reach times Δ is added to the play.
/// @note The pipe stays where it is, as nothing but the hooks comes near it. That one hook gives way more than the
///       other is left out here: PipeSag::difference says how much.
/// @throws SceneError where the stair cannot stand on the bent pipe.
Model sagged(const Scene& scene, const Model& model);

}  // namespace stowpath
