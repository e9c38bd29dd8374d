#include "render/sheet/findings_drawing.h"

namespace stowpath {
namespace {

bool has_place(const Finding& finding) { return finding.kind != FindingKind::build; }

}  // namespace

std::vector<std::optional<Vec2>> finding_marks(const Subject& subject, const ViewFrame& frame) {
  std::vector<std::optional<Vec2>> marks;
  for (const Finding& finding : subject.fit.findings) {
    std::optional<Vec2>& mark = marks.emplace_back();
    if (has_place(finding)) mark = frame(lerp(finding.witness.on_a, finding.witness.on_b, 0.5));
  }
  return marks;
}

void draw_finding(DisplayList& list, const Finding& finding, const ViewFrame& frame, std::span<const Vec2> window) {
  std::vector<std::vector<Vec2>> outlines;
  for (const std::vector<Vec2>& outline : finding.outlines)
    outlines.push_back(common_part(on_paper(frame, outline), window));
  for (std::size_t i = 0; i < outlines.size(); ++i) {
    if (i == 0 || finding.kind != FindingKind::zone) list.path(outlines[i], true, Pen{Ink::red, kThin});
  }
  if (outlines.size() < 2 || finding.clearance >= 0.0) return;
  const std::vector<Vec2> shared = common_part(outlines[0], outlines[1]);
  list.path(shared, true, {}, Ink::red_wash);
  hatch(list, shared, 1.05, 1.1, {Ink::red, kThin});
}

void draw_mark(DisplayList& list, const Finding& finding, Vec2 centre) {
  const bool open = finding.kind == FindingKind::undecided || finding.kind == FindingKind::margin;
  list.circle(centre, kRing, Pen{Ink::red, kMedium, open ? Dash::hidden : Dash::solid});
  cross_mark(list, centre, 1.2, {Ink::red, kMedium});
}

void label_findings(DisplayList& list, Labels& labels, const std::vector<Finding>& findings,
                    const std::vector<std::optional<Vec2>>& marks, const PaperBox& bounds) {
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (!marks[i]) continue;
    labels.place(list, {{}, findings[i].id, kFigures, Anchor::start, Ink::red}, *marks[i], bounds);
  }
}

}  // namespace stowpath
