#pragma once

#include "sim/scene/scene.h"

namespace stowpath::testing {

/// A two-part stair to a wheel loft, in millimetres: it stands at 29.7 degrees and its joint drags, hangs, folds and
/// lifts.
///
/// Every number is set here, in code, so that tests of the mechanism need no scene reader. Places in the file are
/// invented: each key has a line of its own.
Scene sample_scene();

/// The same with the sections joined into one, without hinge, lock, fold line or the steps that need them.
Scene one_section_scene();

}  // namespace stowpath::testing
