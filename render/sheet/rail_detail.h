#pragma once

#include <optional>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// The rail enlarged: pipe, bracket, hooks and the loft's edge, in the pose of the gravest finding that lies there,
/// else in the working pose. Nothing where `room` is too small for it.
/// @param room  the paper it may take [mm]
/// @returns the marks of the findings it shows, by index [mm]
std::vector<std::optional<Vec2>> draw_rail_detail(DisplayList& list, Labels& labels, const Subject& subject,
                                                  const PaperBox& room);

}  // namespace stowpath
