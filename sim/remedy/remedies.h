#pragma once

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "sim/remedy/assess.h"
#include "sim/remedy/lever.h"
#include "sim/scene/draft.h"

namespace stowpath {

/// One number of the file before and after.
struct ValueChange {
  std::string key;
  std::string from_text, to_text;  ///< as the file writes them
  double from = 0.0, to = 0.0;     ///< [m or rad]
  bool angle = false;
};

/// One thing that a builder does: all its numbers change together.
struct Change {
  Lever lever;
  double amount = 0.0;  ///< [m or rad]
  std::vector<ValueChange> values;
};

/// A pose or state in which a clearance becomes less.
struct Tighter {
  MoveKind move = MoveKind::lift;
  std::array<std::string, 2> parts;
  double before = 0.0, after = 0.0;  ///< at least [m]
};

/// One change, or two together, with which a finding is gone and nothing is new or worse: proven on the whole scene as
/// its text would then read.
struct Remedy {
  std::string id;                        ///< "F1.2"
  std::vector<Change> changes;           ///< one; two where no single one works
  std::vector<std::string> cures_also;   ///< ids of other findings that go with it
  Verdict verdict = Verdict::undecided;  ///< of the whole scene with it
  std::optional<double> clearance;       ///< at least, of what the finding was about; none for zones and rules [m]
  std::optional<Tighter> tighter;        ///< the clearance elsewhere that suffers most
  double reach_lost = 0.0;               ///< of the loft, where the stair stands clear; negative: gained [m]
  double wrap = 0.0;                     ///< arc that the hooks then cover [rad]
  std::optional<double> arc_left;        ///< least of it past where the pipe bears; none: not looked at [rad]
  std::optional<double> pull_before, pull_after;  ///< greatest, at the hand, raising; where it changes by 2 % [N]
};

/// What can be done about one finding.
struct Cures {
  std::string finding;           ///< its id
  std::vector<Remedy> remedies;  ///< least effort first, then the smallest amount
  int levers = 0;                ///< changes looked into
};

struct RemedyOptions {
  int most = 4;                                     ///< remedies for a finding
  int most_pairs = 1;                               ///< where no single change works
  std::string only;                                 ///< id of the one finding to look at; empty: all
  std::function<void(int done, int all)> progress;  ///< after each finding; may be empty
  std::function<bool()> stop{};                     ///< asked before each change is looked into: true ends it; may be empty
};

/// Looks for what cures each finding of a scene as it was assessed with those options, in the findings' order. Stopped, it
/// gives what it has.
std::vector<Cures> find_remedies(const SceneDraft& draft, const Scene& scene, const Assessment& assessed,
                                 const AssessOptions& options, const RemedyOptions& wanted = {});

/// All edits of a remedy, for SceneDraft::write.
std::vector<ValueEdit> edits_of(const Remedy& remedy);

/// By its id; null if there is none.
const Remedy* find_remedy(const std::vector<Cures>& cures, const std::string& id);

}  // namespace stowpath
