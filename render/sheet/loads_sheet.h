#pragma once

#include "render/report/loads_report.h"
#include "render/sheet/display_list.h"

namespace stowpath {

/// The pipe's bending stress and how far it gives way, against the stair's station, on A4 or letter; brackets marked.
DisplayList make_loads_sheet(const LoadsSubject& subject);

}  // namespace stowpath
