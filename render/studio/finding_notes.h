#pragma once

#include <optional>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// The findings that a view shows as notes under each other, each with a leader from its mark.
/// @param marks   where each is marked, by index; none for those out of the view [mm]
/// @param chosen  its note is written in full; others are cut to a line where not all have room
/// @param column  where the notes stand [mm]
void draw_finding_notes(DisplayList& list, Labels& labels, const Subject& subject,
                        const std::vector<std::optional<Vec2>>& marks, std::optional<std::size_t> chosen,
                        const PaperBox& column);

}  // namespace stowpath
