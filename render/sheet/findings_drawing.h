#pragma once

#include <optional>
#include <span>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// Where each finding is marked in a side view, by index; none for those without a place [mm].
std::vector<std::optional<Vec2>> finding_marks(const Subject& subject, const ViewFrame& frame);

/// One finding in red pencil where it is worst: both outlines and their common part hatched. A zone is not drawn again.
/// @param window  what of the paper it may take; a convex polygon [mm]
void draw_finding(DisplayList& list, const Finding& finding, const ViewFrame& frame, std::span<const Vec2> window);

/// A ring and a cross; the ring is broken where nothing is proven to meet.
void draw_mark(DisplayList& list, const Finding& finding, Vec2 centre);

/// Their numbers, beside the marks.
void label_findings(DisplayList& list, Labels& labels, const std::vector<Finding>& findings,
                    const std::vector<std::optional<Vec2>>& marks, const PaperBox& bounds);

inline constexpr double kRing = 2.6;  ///< radius of a finding's ring [mm]

}  // namespace stowpath
