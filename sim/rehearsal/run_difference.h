#pragma once

#include "sim/rehearsal/rehearsal.h"

namespace stowpath {

/// Lays a run beside the same run at half its step: fills in how far its numbers differ, and what happened in one of
/// the two alone (touches, zones entered, hooks off the pipe, slack lines, a stair that turns over, a crew that gives
/// up).
/// @param finer  the other run; a refused one leaves `compared` false
void lay_beside(RehearsalReport& report, const RehearsalReport& finer);

}  // namespace stowpath
