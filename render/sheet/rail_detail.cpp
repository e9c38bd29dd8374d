#include "render/sheet/rail_detail.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

constexpr double kHalfWindow = 0.135;  // of the model, about the pipe [m]
constexpr double kUnder = 11.0;        // for the words under it [mm]

bool in_window(const Subject& subject, const Finding& finding) {
  const Vec2 off = lerp(finding.witness.on_a, finding.witness.on_b, 0.5) - subject.model.linkage.pivot;
  return finding.kind != FindingKind::build && std::max(std::abs(off.x), std::abs(off.y)) < 0.9 * kHalfWindow;
}

class Detail {
 public:
  Detail(DisplayList& list, Labels& labels, const Subject& subject, const PaperBox& room)
      : list_(list), labels_(labels), subject_(subject) {
    frame_.scale =
        common_scale(subject.units, room.greatest - room.least - Vec2{0.0, kUnder}, {2 * kHalfWindow, 2 * kHalfWindow});
    const double half = frame_.scale.paper(kHalfWindow);
    const Vec2 middle{0.5 * (room.least.x + room.greatest.x), room.least.y + half};
    frame_.zero = middle - Vec2{frame_.scale.paper(subject.model.linkage.pivot.x),
                                -frame_.scale.paper(subject.model.linkage.pivot.y)};
    box_ = grown({middle, middle}, half);
    window_ = {box_.least, {box_.greatest.x, box_.least.y}, box_.greatest, {box_.least.x, box_.greatest.y}};
  }

  std::vector<std::optional<Vec2>> drawn() {
    const std::vector<Finding>& findings = subject_.fit.findings;
    const auto first =
        std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return in_window(subject_, f); });
    const Configuration pose = first == findings.end() ? working_configuration(subject_.model) : first->worst;
    list_.open("rail-detail", "The rail, enlarged");
    list_.path(window_, true, {}, Ink::paper);
    room(false);
    stair(pose, true);
    room(true);
    stair(pose, false);
    list_.path(window_, true, Pen{Ink::line, kThin});
    words(pose, first == findings.end() ? "" : first->id + ": ");
    const auto marks = this->marks(pose);
    list_.close();
    return marks;
  }

 private:
  void piece(const RoundedPolygon& outline, const Pen& pen, Ink fill) {
    list_.path(common_part(on_paper(frame_, outline), window_), true, pen, fill);
  }

  void room(bool steel) {
    for (const RoomPart& part : subject_.model.room) {
      if (is_shell(part.kind) || part.kind == PartKind::pipe || part.kind == PartKind::rail_stop) continue;
      const bool of_rail = part.kind == PartKind::bracket || part.kind == PartKind::pipe_joint;
      if (of_rail == steel) piece(part.outline, {Ink::line, steel ? kThin : kMedium}, steel ? Ink::faint : Ink::wall);
    }
    for (const RoomPart& part : subject_.model.room) {
      if (steel && part.kind == PartKind::pipe) piece(part.outline, {Ink::line, kMedium}, Ink::paper);
    }
  }

  // Outlines first, then insides: the pieces of bent rod run together.
  void stair(const Configuration& pose, bool wood) {
    const SectionPoses poses = place_sections(subject_.model.linkage, pose);
    for (const bool outlines : {true, false}) {
      for (const StairPart& part : subject_.model.stair) {
        if ((part.kind == PartKind::hook) == wood || !seen_from_side(subject_.model, part)) continue;
        const auto section = static_cast<std::size_t>(part.section);
        const std::vector<Vec2> corners =
            common_part(on_paper(frame_, placed(part.outline, poses.at(section))), window_);
        if (outlines) {
          list_.path(corners, true, Pen{Ink::line, kMedium});
        } else {
          // A stroke of its own colour closes the seams between pieces.
          const Ink ink = wood ? Ink::wood : Ink::faint;
          list_.path(corners, true, Pen{ink, 0.1}, ink);
        }
      }
    }
  }

  std::vector<std::optional<Vec2>> marks(const Configuration& pose) {
    const std::vector<Finding>& findings = subject_.fit.findings;
    std::vector<std::optional<Vec2>> marks = finding_marks(subject_, frame_);
    for (std::size_t i = 0; i < findings.size(); ++i) {
      const bool shown = in_window(subject_, findings[i]) && std::abs(findings[i].worst.lean - pose.lean) < 1e-3 &&
                         std::abs(findings[i].worst.folds[0] - pose.folds[0]) < 1e-3;
      if (!shown) {
        marks[i].reset();
        continue;
      }
      draw_finding(list_, findings[i], frame_, window_);
      draw_mark(list_, findings[i], *marks[i]);
      labels_.place(list_, {{}, findings[i].id, kFigures, Anchor::start, Ink::red}, *marks[i] + Vec2{kRing, 0.0}, box_);
    }
    return marks;
  }

  void words(const Configuration& pose, const std::string& id) {
    const double x = box_.least.x, y = box_.greatest.y;
    labels_.fix(list_, {{x, y + 4.4}, "Detail at the rail, " + frame_.scale.label, kNotes});
    const std::string where = id + pose_text(subject_.model.linkage, pose);
    labels_.fix(list_, {{x, y + 8.6}, where, kNotes, Anchor::start, id.empty() ? Ink::soft : Ink::red});
  }

  DisplayList& list_;
  Labels& labels_;
  const Subject& subject_;
  ViewFrame frame_;
  PaperBox box_;
  std::vector<Vec2> window_;
};

}  // namespace

std::vector<std::optional<Vec2>> draw_rail_detail(DisplayList& list, Labels& labels, const Subject& subject,
                                                  const PaperBox& room) {
  constexpr double kLeast = 30.0;  // smaller than this it shows nothing more than the side view [mm]
  const Vec2 size = room.greatest - room.least;
  if (size.x < kLeast || size.y < kLeast + kUnder) return std::vector<std::optional<Vec2>>(subject.fit.findings.size());
  return Detail(list, labels, subject, room).drawn();
}

}  // namespace stowpath
