#include "render/sheet/dry_fit_sheet.h"

#include <algorithm>
#include <utility>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/labels.h"
#include "render/sheet/notes_column.h"
#include "render/sheet/rail_detail.h"
#include "render/sheet/side_view.h"
#include "render/sheet/span_view.h"
#include "render/sheet/story_stick.h"

namespace stowpath {
namespace {

constexpr double kBorder = 8.0;        // paper's edge to the frame [mm]
constexpr double kAir = 4.0;           // frame to what is in it
constexpr double kColumn = 124.0;      // width of the notes
constexpr double kLeftMargin = 32.0;   // for heights and the names of lanes
constexpr double kHeading = 8.5;       // over each view
constexpr double kUnderFloor = 17.0;   // for the outs under the side view
constexpr double kLeastDetail = 50.0;  // width worth an enlarged detail
constexpr double kTitleBlock = 23.0;

class Sheet {
 public:
  explicit Sheet(const Subject& subject) : subject_(subject) {
    const bool metric = subject.units == DisplayUnits::metric;
    list_.width = metric ? 420.0 : 431.8;
    list_.height = metric ? 297.0 : 279.4;
    list_.title = "Dry fit: " + subject.model.name;
    list_.description = verdict_line(subject.model, subject.fit);
    inner_ = {{kBorder + kAir, kBorder + kAir}, {list_.width - kBorder - kAir, list_.height - kBorder - kAir}};
  }

  DisplayList drawn() {
    lay_out();
    border();
    NotesColumn column{{{column_left(), inner_.least.y}, inner_.greatest}, inner_.least.y};
    const auto ends = notes(column);
    draw_story_stick(list_, labels_, subject_, stick_, inner_.least.x);
    side_heading();
    draw_side_view(list_, labels_, subject_, side_);
    auto marks = finding_marks(subject_, side_);
    const auto enlarged = draw_rail_detail(list_, labels_, subject_, detail_room());
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (enlarged[i]) marks[i] = enlarged[i];
    }
    leaders(marks, ends);
    label_side_view(list_, labels_, subject_, side_, side_bounds());
    span();
    return std::move(list_);
  }

 private:
  double column_left() const { return inner_.greatest.x - kColumn; }
  double drawing_left() const { return inner_.least.x + kLeftMargin; }
  double drawing_width() const { return column_left() - 10.0 - drawing_left(); }
  double stick_top() const { return inner_.greatest.y - kStickHeight; }

  // The side view as large as the height allows while the span view keeps at least half its scale.
  void lay_out() {
    depth_ = span_depth(subject_);
    const PaperBox extent = side_extent(subject_);
    const Vec2 size = extent.greatest - extent.least, span_size{subject_.scene.room.length, depth_};
    const double height = stick_top() - inner_.least.y - 2 * kHeading - kUnderFloor - 4.0;
    side_.scale = span_.scale = common_scales(subject_.units).back();
    for (const DrawingScale& scale : common_scales(subject_.units)) {
      const double left = height - scale.paper(size.y);
      if (scale.paper(size.x) > drawing_width() || left < 0.0) continue;
      const DrawingScale span = common_scale(subject_.units, {drawing_width(), left}, span_size);
      if (span.ratio > 2.01 * scale.ratio || span.paper(span_size.y) > left) continue;
      side_.scale = scale;
      span_.scale = span;
      break;
    }
    span_.flipped = true;
    span_.zero = {drawing_left(), stick_top() - 4.0 - span_.scale.paper(depth_)};
    stick_ = span_;
    stick_.zero.y = stick_top();
    side_.zero = {drawing_left(), span_.zero.y - kHeading - kUnderFloor + side_.scale.paper(extent.least.y)};
  }

  void border() {
    list_.box({kBorder, kBorder}, {list_.width - kBorder, list_.height - kBorder}, Pen{Ink::line, kHeavy});
    const double x = column_left() - kAir;
    list_.line({x, kBorder}, {x, list_.height - kBorder}, {Ink::line, kThin});
  }

  void view_heading(double x, double y, const std::string& words, const DrawingScale& scale) {
    labels_.fix(list_, {{x, y}, words + ", " + scale.label, 3.0, Anchor::start, Ink::line});
  }

  void side_heading() {
    view_heading(drawing_left(), side_.y(subject_.scene.room.ceiling) - 4.2, "Side view, looking along the rail",
                 side_.scale);
  }

  PaperBox side_bounds() const { return {inner_.least, {column_left() - kAir - 2.0, span_.zero.y - kHeading - 1.0}}; }

  // Right of the span view, where no leader passes, else right of the side view.
  PaperBox detail_room() const {
    const double right = column_left() - kAir - 5.0, beside_span = span_.x(subject_.scene.room.length) + 6.0;
    if (right - beside_span >= kLeastDetail) return {{beside_span, span_.zero.y - 1.0}, {right, inner_.greatest.y}};
    const double top = side_.y(subject_.scene.room.ceiling), floor = side_.y(subject_.model.floor_level);
    return {{side_.x(subject_.scene.room.depth) + 6.0, top}, {right, floor}};
  }

  void span() {
    view_heading(drawing_left(), span_.zero.y - 4.2, "Span view, from above", span_.scale);
    const Vec2 corner = span_({subject_.scene.room.length, depth_});
    draw_span_view(list_, labels_, subject_, span_, depth_, working_configuration(subject_.model), {span_.zero, corner});
  }

  std::vector<std::optional<Vec2>> notes(NotesColumn& column) {
    const double block = inner_.greatest.y - kTitleBlock, cautions = block - cautions_height(column);
    write_verdict(list_, labels_, subject_, column);
    const double moves = std::max(cautions - moves_height(subject_), column.down + 40.0);
    const auto ends = write_findings(list_, labels_, subject_, column, moves);
    write_moves(list_, labels_, subject_, column, cautions);
    write_reach(list_, labels_, subject_, column, cautions);
    column.down = cautions;
    write_cautions(list_, labels_, column);
    title_block(block);
    return ends;
  }

  // From each ring to its note: level out of the column, then straight.
  void leaders(const std::vector<std::optional<Vec2>>& marks, const std::vector<std::optional<Vec2>>& ends) {
    list_.open("leaders", "Leaders from the findings to their notes");
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (!marks[i] || !ends[i]) continue;
      const Vec2 knee{column_left() - kAir - 3.0, ends[i]->y};
      const Vec2 way = knee - *marks[i];
      const Vec2 start = *marks[i] + (kRing / std::max(norm(way), kRing)) * way;
      const std::vector<Vec2> line{start, knee, *ends[i]};
      list_.path(line, false, Pen{Ink::red, kThin});
      labels_.avoid(line, false);
    }
    list_.close();
  }

  void title_block(double top) {
    const double left = column_left() - kAir, right = list_.width - kBorder, bottom = list_.height - kBorder;
    list_.open("title-block", "Title block");
    list_.box({left, top}, {right, bottom}, Pen{Ink::line, kMedium}, Ink::paper);
    list_.line({left, top + 11.0}, {right, top + 11.0}, {Ink::line, kThin});
    list_.line({left, top + 18.5}, {right, top + 18.5}, {Ink::line, kThin});
    const double x = left + 3.0;
    labels_.fix(list_, {{x, top + 7.4}, fitted(subject_.model.name, 4.0, right - x - 3.0), 4.0});
    labels_.fix(
        list_,
        {{x, top + 15.8}, "Dry fit. Side view " + side_.scale.label + ", span view " + span_.scale.label, kNotes});
    const std::string paper =
        subject_.units == DisplayUnits::metric ? "A3, sizes in mm and m" : "11 by 17, feet and inches";
    labels_.fix(list_, {{x, top + 23.3}, "Stowpath. " + paper + ". Print at 100 %.", kNotes, Anchor::start, Ink::soft});
    list_.close();
  }

  static std::string fitted(const std::string& words, double size, double width) {
    if (text_width(words, size) <= width) return words;
    const std::vector<std::string> lines = wrap_text(words, size, width - text_width(" ...", size));
    return lines.empty() ? "" : lines[0] + " ...";
  }

  const Subject& subject_;
  DisplayList list_;
  Labels labels_;
  PaperBox inner_;
  double depth_ = 0.0;
  ViewFrame span_, stick_, side_;
};

}  // namespace

DisplayList make_dry_fit_sheet(const Subject& subject) { return Sheet(subject).drawn(); }

}  // namespace stowpath
