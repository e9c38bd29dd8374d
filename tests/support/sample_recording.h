#pragma once

#include "sim/rehearsal/recording.h"

namespace stowpath::testing {

/// A made-up rehearsal of two sections: the first sinks from level to plumb while the second swings, with the line let
/// go half way and a touch at the end.
Recording sample_recording();

/// What may be said of it: one thing wrong, how good its numbers are, one caution.
Account sample_account();

}  // namespace stowpath::testing
