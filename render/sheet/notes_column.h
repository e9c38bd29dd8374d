#pragma once

#include <optional>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// Where the verdict, the findings, the moves and the cautions are written, from the top down.
struct NotesColumn {
  PaperBox box;       ///< [mm]
  double down = 0.0;  ///< the next free baseline's top [mm]
};

/// The verdict in one word with its mark, and the counts under it.
void write_verdict(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column);

/// The findings as numbered notes. Those that do not fit above `last` are counted instead.
/// @returns for each finding, the note's point that its leader comes to; none where it has no note
std::vector<std::optional<Vec2>> write_findings(DisplayList& list, Labels& labels, const Subject& subject,
                                                NotesColumn& column, double last);

/// The moves as numbered slips in order of work.
void write_moves(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column, double last);

/// Height that write_moves wants [mm].
double moves_height(const Subject& subject);

/// How much of the loft is served, and what was taken for granted; as much of it as fits above `last`.
void write_reach(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column, double last);

/// What the sheet does not say, and who has to be asked.
void write_cautions(DisplayList& list, Labels& labels, NotesColumn& column);

/// Height that write_cautions takes [mm].
double cautions_height(const NotesColumn& column);

}  // namespace stowpath
