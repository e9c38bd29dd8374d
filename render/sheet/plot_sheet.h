#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/sheet/labels.h"
#include "sim/trade/length.h"

namespace stowpath {

/// A small sheet for plots, A4 or letter across: border, answer over the plots, notes in a column at the right, title
/// block.
class PlotSheet {
 public:
  /// @param answer  its first word, up to the colon, is written large
  /// @param good    ticked or crossed; none: what the sheet shows is no verdict
  PlotSheet(DisplayUnits units, const std::string& title, const std::string& name, const std::string& answer,
            std::optional<bool> good);

  DisplayList& list() { return list_; }
  Labels& labels() { return labels_; }
  PaperBox plots() const;  ///< what is left for the plots, their figures included [mm]

  /// Sets the cautions at the foot of the notes' column, where nothing can push them out; before any other note.
  void cautions(const std::string& words);
  /// The same under another heading, over what stands at the foot already.
  void foot_note(const std::string& heading, const std::string& words);
  /// Whether a note of these words fits, and so many lines more under it. @param heading  a heading stands over it
  bool fits(const std::string& words, bool heading, int lines_more) const;
  /// A heading in the notes' column.
  void note_heading(const std::string& words);
  /// Lines under it; those that do not fit are left out: the report has them all.
  void note(const std::string& words, Ink ink = Ink::line);

  DisplayList drawn() && { return std::move(list_); }

 private:
  void write_answer(const std::string& answer, std::optional<bool> good);
  void title_block(DisplayUnits units, const std::string& title, const std::string& name);

  DisplayList list_;
  Labels labels_;
  PaperBox inner_;
  double column_ = 0.0;  // left edge of the notes
  double under_answer_ = 0.0;
  double down_ = 0.0;    // next free line of the notes
  double bottom_ = 0.0;  // where they have to end
};

}  // namespace stowpath
