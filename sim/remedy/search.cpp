#include "sim/remedy/search.h"

#include <algorithm>
#include <cmath>

#include "sim/loads/sag.h"
#include "sim/remedy/judge.h"
#include "sim/remedy/narrow.h"
#include "sim/scene/scene_error.h"

namespace stowpath {
namespace {

constexpr int kMostNarrow = 50;  // proofs of the parts concerned, for one lever
constexpr int kMostWhole = 10;   // proofs of the whole scene, for one lever
constexpr int kSameForNow = 3;   // amounts after which a stop that changes nothing is given up

// Round things are covered anew when a rod's length changes: the covers may differ by twice their tolerance [m].
constexpr double kCovers = 1e-4;

class LeverSearch {
 public:
  LeverSearch(const SearchBench& bench, const Lever& lever)
      : bench_(bench), lever_(lever), watched_{bench.target}, most_(steps_within(lever)) {}

  LeverAnswer run() {
    int next = first(), failing = next - 1;
    while (next <= most_ && answer_.narrow_proofs < kMostNarrow && answer_.whole_proofs < kMostWhole) {
      const Outcome outcome = look(next);
      if (outcome.ends || changes_nothing(outcome.lacking)) break;
      if (outcome.well) {
        answer_.steps = between(failing, next);
        answer_.edits = *edits_at(bench_.draft, lever_, *answer_.steps);
        break;
      }
      const int ahead = passed_over(outcome.lacking);
      failing = ahead > 0 ? next + ahead - 1 : next;
      next = ahead > 0 ? next + ahead : next + lever_.stride;
    }
    return std::move(answer_);
  }

 private:
  struct Outcome {
    bool well = false, ends = false;
    double lacking = 0.0;
  };

  static int steps_within(const Lever& lever) { return static_cast<int>(std::floor(lever.most / lever.step + 1e-9)); }

  // How many steps ahead the next amount lies that may work; 0 where nothing is known of that.
  int passed_over(double lacking) const {
    if (lever_.reach <= 0.0 || lacking <= kCovers) return 0;
    const double steps = std::ceil((lacking - kCovers) / (lever_.reach * lever_.step) - 1e-6);
    return static_cast<int>(std::clamp(steps, 1.0, static_cast<double>(most_ + 1)));
  }

  int first() const { return std::max(lever_.first, bench_.fresh ? passed_over(lacking_of(bench_.target)) : 1); }

  // Where an earlier step turns farther or less and the finding does not feel it, it will not do so later.
  bool changes_nothing(double lacking) {
    same_ = lever_.kind == ChangeKind::stop_move && std::abs(lacking - last_lacking_) < 1e-9 ? same_ + 1 : 0;
    last_lacking_ = lacking;
    return same_ >= kSameForNow;
  }

  Outcome look(int steps) {
    const auto edits = edits_at(bench_.draft, lever_, steps);
    if (!edits) return {false, true, 0.0};
    try {
      const Scene scene = bench_.draft.read(*edits);
      Model model = build_model(scene);
      if (bench_.options.sagged) model = sagged(scene, model);
      const Outcome narrow = look_narrow(model);
      return narrow.well ? look_whole(scene, steps) : narrow;
    } catch (const SceneError&) {
      return {};  // no scene at all; the next may be one
    }
  }

  Outcome look_narrow(const Model& model) {
    ++answer_.narrow_proofs;
    DryFitOptions options = bench_.options.fit;
    options.least = false;
    const DryFit fit = dry_fit(narrowed(model, watched_), options);
    const Judgement found = judge(bench_.before, fit.findings, bench_.target);
    return {found.well(), false, found.lacking};
  }

  Outcome look_whole(const Scene& scene, int steps) {
    ++answer_.whole_proofs;
    AssessOptions options = bench_.options;
    options.fit.least = false;
    const Assessment now = assess(scene, options);
    const Judgement found = judge(bench_.before, now.fit.findings, bench_.target);
    if (found.well()) return {true, false, 0.0};
    if (found.cured && !answer_.cured_at) {
      answer_.cured_at = steps;
      for (const Finding* f : found.against) answer_.price.push_back(*f);
    }
    for (const Finding* f : found.against) watch(*f);
    return {false, false, found.lacking};
  }

  // From now on the narrow proof looks at this too.
  void watch(const Finding& f) {
    const bool known =
        std::any_of(watched_.begin(), watched_.end(), [&](const Finding& w) { return same_matter(w, f); });
    if (!known || f.moves.size() > 1) watched_.push_back(f);
  }

  // The smallest amount that works after `failing`, known not to, up to `works`, if what works is one stretch.
  int between(int failing, int works) {
    while (works - failing > 1) {
      const int middle = failing + (works - failing) / 2;
      (look(middle).well ? works : failing) = middle;
    }
    return works;
  }

  const SearchBench& bench_;
  const Lever& lever_;
  std::vector<Finding> watched_;
  int most_ = 0;
  int same_ = 0;  // amounts in a row that lack the same
  double last_lacking_ = -1.0;
  LeverAnswer answer_;
};

}  // namespace

std::optional<std::vector<ValueEdit>> edits_at(const SceneDraft& draft, const Lever& lever, int steps) {
  std::vector<ValueEdit> edits;
  for (const LeverValue& value : lever.values) {
    const std::optional<double> from = draft.number(value.key);
    std::optional<ValueEdit> edit =
        from ? draft.edit(value.key, *from + value.rate * lever.step * steps) : std::nullopt;
    if (!edit) return std::nullopt;
    edits.push_back(std::move(*edit));
  }
  return edits;
}

LeverAnswer try_lever(const SearchBench& bench, const Lever& lever) { return LeverSearch(bench, lever).run(); }

}  // namespace stowpath
