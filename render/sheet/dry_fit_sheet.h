#pragma once

#include "render/sheet/view.h"

namespace stowpath {

/// The dry fit on one sheet, A3 or tabloid by the units shown: side view above, span view under it, the story stick
/// along the bottom edge, and beside them verdict, findings, moves and cautions over the title block.
DisplayList make_dry_fit_sheet(const Subject& subject);

}  // namespace stowpath
