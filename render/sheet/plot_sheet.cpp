#include "render/sheet/plot_sheet.h"

#include <algorithm>

namespace stowpath {
namespace {

constexpr double kBorder = 8.0;       // paper's edge to the frame [mm]
constexpr double kAir = 4.0;          // frame to what is in it
constexpr double kColumn = 82.0;      // width of the notes
constexpr double kTitleBlock = 16.0;  // its height
constexpr double kHead = 9.0;         // a heading with its air
constexpr double kLine = 4.1;         // from baseline to baseline of notes
constexpr double kNoteAir = 0.8;      // under a note

}  // namespace

PlotSheet::PlotSheet(DisplayUnits units, const std::string& title, const std::string& name, const std::string& answer,
                     std::optional<bool> good) {
  const bool metric = units == DisplayUnits::metric;
  list_.width = metric ? 297.0 : 279.4;
  list_.height = metric ? 210.0 : 215.9;
  list_.title = title + ": " + name;
  list_.description = answer;
  inner_ = {{kBorder + kAir, kBorder + kAir}, {list_.width - kBorder - kAir, list_.height - kBorder - kAir}};
  column_ = inner_.greatest.x - kColumn;
  down_ = inner_.least.y;
  bottom_ = inner_.greatest.y - kTitleBlock;
  list_.box({kBorder, kBorder}, {list_.width - kBorder, list_.height - kBorder}, Pen{Ink::line, kHeavy});
  list_.line({column_ - kAir, kBorder}, {column_ - kAir, list_.height - kBorder}, {Ink::line, kThin});
  write_answer(answer, good);
  title_block(units, title, name);
}

PaperBox PlotSheet::plots() const {
  return {{inner_.least.x, under_answer_ + 4.0}, {column_ - 2.0 * kAir, inner_.greatest.y}};
}

void PlotSheet::write_answer(const std::string& answer, std::optional<bool> good) {
  const Ink ink = good.value_or(true) ? Ink::line : Ink::red;
  const std::size_t colon = std::min(answer.find(':'), answer.size());
  const Pen pen{ink, 0.7};
  const Vec2 mark{inner_.least.x + 3.0, inner_.least.y + 4.0};
  list_.open("answer", answer);
  if (good) *good ? tick_mark(list_, mark, 2.6, pen) : cross_mark(list_, mark, 2.6, pen);
  const double left = inner_.least.x + (good ? 9.0 : 0.0);
  labels_.fix(list_, {{left, inner_.least.y + 6.6}, answer.substr(0, colon), 5.0, Anchor::start, ink});
  double at = inner_.least.y + 10.0;
  const std::string rest = answer.substr(std::min(colon + 2, answer.size()));
  for (const std::string& line : wrap_text(rest, kNotes, column_ - 2.0 * kAir - left)) {
    labels_.fix(list_, {{left, at + kNotes}, line, kNotes, Anchor::start, ink});
    at += kLine;
  }
  list_.close();
  under_answer_ = at;
}

void PlotSheet::title_block(DisplayUnits units, const std::string& title, const std::string& name) {
  const double left = column_ - kAir, right = list_.width - kBorder, bottom = list_.height - kBorder;
  const double top = bottom - kTitleBlock;
  list_.open("title-block", "Title block");
  list_.box({left, top}, {right, bottom}, Pen{Ink::line, kMedium}, Ink::paper);
  list_.line({left, top + 9.5}, {right, top + 9.5}, {Ink::line, kThin});
  const double room = right - left - 6.0, size = text_width(name, 3.5) <= room ? 3.5 : kNotes;
  const std::vector<std::string> lines = wrap_text(name, size, room - 4.0);
  const std::string fitted = lines.empty() || text_width(name, size) <= room ? name : lines[0] + " ...";
  labels_.fix(list_, {{left + 3.0, top + 6.3}, fitted, size});
  const std::string paper = units == DisplayUnits::metric ? "A4" : "letter";
  labels_.fix(list_,
              {{left + 3.0, top + 14.0}, title + ". Stowpath. " + paper + ".", kNotes, Anchor::start, Ink::soft});
  list_.close();
}

void PlotSheet::cautions(const std::string& words) { foot_note("Cautions", words); }

void PlotSheet::foot_note(const std::string& heading, const std::string& words) {
  const auto lines = static_cast<double>(wrap_text(words, kNotes, kColumn).size());
  const double top = bottom_ - kHead - kLine * lines;
  down_ = top;
  note_heading(heading);
  note(words, Ink::soft);
  down_ = inner_.least.y;
  bottom_ = top;
}

bool PlotSheet::fits(const std::string& words, bool heading, int lines_more) const {
  const auto lines = static_cast<double>(wrap_text(words, kNotes, kColumn).size());
  const double after = lines_more > 0 ? kNoteAir + kLine * lines_more : 0.0;
  return down_ + (heading ? kHead : 0.0) + kLine * lines + after <= bottom_;
}

void PlotSheet::note_heading(const std::string& words) {
  if (down_ + kHead + kLine > bottom_) return;
  labels_.fix(list_, {{column_, down_ + 6.0}, words, 3.0});
  list_.line({column_, down_ + 7.4}, {inner_.greatest.x, down_ + 7.4}, {Ink::line, kThin});
  down_ += kHead;
}

void PlotSheet::note(const std::string& words, Ink ink) {
  for (const std::string& line : wrap_text(words, kNotes, kColumn)) {
    if (down_ + kLine > bottom_) return;
    labels_.fix(list_, {{column_, down_ + kNotes}, line, kNotes, Anchor::start, ink});
    down_ += kLine;
  }
  down_ += kNoteAir;
}

}  // namespace stowpath
