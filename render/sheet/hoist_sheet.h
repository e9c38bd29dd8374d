#pragma once

#include "render/report/hoist_report.h"
#include "render/sheet/display_list.h"

namespace stowpath {

/// Pull at the hand against the lean, raising, holding and lowering, with the limits as levels, on A4 or letter.
DisplayList make_hoist_sheet(const HoistSubject& subject);

}  // namespace stowpath
