#include "render/studio/finding_notes.h"

#include <algorithm>
#include <string>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"

namespace stowpath {
namespace {

constexpr double kLine = 3.7;    // from baseline to baseline [mm]
constexpr double kApart = 1.8;   // from note to note
constexpr double kIndent = 7.5;  // of the words, beside the number

struct Note {
  std::size_t finding = 0;
  std::vector<std::string> lines;
  double height() const { return kLine * static_cast<double>(lines.size()) + kApart; }
};

class Notes {
 public:
  Notes(DisplayList& list, Labels& labels, const Subject& subject, const std::vector<std::optional<Vec2>>& marks,
        std::optional<std::size_t> chosen, const PaperBox& column)
      : list_(list), labels_(labels), subject_(subject), marks_(marks), chosen_(chosen), column_(column) {}

  void draw() {
    for (std::size_t i = 0; i < marks_.size(); ++i) {
      if (marks_[i]) notes_.push_back({i, lines_of(i)});
    }
    if (height() > room()) shorten();
    const std::size_t left_out = drop_the_last();
    // By their marks' height, so that leaders do not cross.
    std::stable_sort(notes_.begin(), notes_.end(),
                     [this](const Note& a, const Note& b) { return marks_[a.finding]->y < marks_[b.finding]->y; });
    double down = top();
    for (const Note& note : notes_) write(note, down), down += note.height();
    if (left_out == 0) return;
    const std::string rest = "and " + std::to_string(left_out) + " more, in the list of findings";
    labels_.fix(list_, {{column_.least.x, down + kNotes}, rest, kNotes, Anchor::start, Ink::red});
  }

 private:
  double room() const { return column_.greatest.y - column_.least.y; }

  double height() const {
    double out = 0.0;
    for (const Note& note : notes_) out += note.height();
    return out;
  }

  // About as high as their marks, where there is room.
  double top() const {
    double middle = 0.0;
    for (const Note& note : notes_) middle += marks_[note.finding]->y / static_cast<double>(notes_.size());
    const double last = std::max(column_.least.y, column_.greatest.y - height());
    return std::clamp(middle - 0.5 * height(), column_.least.y, last);
  }

  std::vector<std::string> lines_of(std::size_t i, double less = 0.0) const {
    const double width = column_.greatest.x - column_.least.x - kIndent - less;
    return wrap_text(finding_sentence(subject_.fit.findings[i], subject_.units), kNotes, width);
  }

  void shorten() {
    constexpr const char* kGoesOn = " ...";
    for (Note& note : notes_) {
      if (note.finding == chosen_ || note.lines.size() < 2) continue;
      note.lines = {lines_of(note.finding, text_width(kGoesOn, kNotes)).front() + kGoesOn};
    }
  }

  std::size_t drop_the_last() {
    std::size_t dropped = 0;
    while (!notes_.empty() && height() + (dropped > 0 ? kLine : 0.0) > room()) {
      const bool keep = notes_.back().finding == chosen_ && notes_.size() > 1;
      notes_.erase(notes_.end() - (keep ? 2 : 1));
      ++dropped;
    }
    return dropped;
  }

  void write(const Note& note, double down) {
    const double left = column_.least.x;
    const Finding& finding = subject_.fit.findings[note.finding];
    const bool chosen = note.finding == chosen_;
    list_.open("note-" + finding.id, finding.id);
    leader(*marks_[note.finding], {left - 1.2, down + 0.5 * kNotes}, chosen);
    labels_.fix(list_, {{left, down + kNotes}, finding.id, kNotes, Anchor::start, Ink::red, 0.0, true});
    double line = down + kNotes;
    for (const std::string& words : note.lines) {
      labels_.fix(list_, {{left + kIndent, line}, words, kNotes, Anchor::start, chosen ? Ink::red : Ink::line, 0.0, true});
      line += kLine;
    }
    list_.close();
  }

  void leader(Vec2 mark, Vec2 end, bool chosen) {
    const Vec2 knee{end.x - 3.0, end.y}, way = knee - mark;
    const Vec2 start = mark + (kRing / std::max(norm(way), kRing)) * way;
    const std::vector<Vec2> line{start, knee, end};
    list_.path(line, false, Pen{Ink::red, chosen ? kMedium : kThin});
    labels_.avoid(line, false);
  }

  DisplayList& list_;
  Labels& labels_;
  const Subject& subject_;
  const std::vector<std::optional<Vec2>>& marks_;
  std::optional<std::size_t> chosen_;
  PaperBox column_;
  std::vector<Note> notes_;
};

}  // namespace

void draw_finding_notes(DisplayList& list, Labels& labels, const Subject& subject,
                        const std::vector<std::optional<Vec2>>& marks, std::optional<std::size_t> chosen,
                        const PaperBox& column) {
  Notes(list, labels, subject, marks, chosen, column).draw();
}

}  // namespace stowpath
