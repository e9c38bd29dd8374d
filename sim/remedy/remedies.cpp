#include "sim/remedy/remedies.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "sim/remedy/judge.h"
#include "sim/remedy/price.h"
#include "sim/remedy/search.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"

namespace stowpath {
namespace {

constexpr std::size_t kMostFirsts = 3;  // changes that are tried as the first of a pair

bool changes_rigging(const Change& change) {
  switch (change.lever.kind) {
    case ChangeKind::move_pick:
    case ChangeKind::move_ceiling_point:
    case ChangeKind::move_home:
    case ChangeKind::shift_hinge:
    case ChangeKind::stop_move:
      return true;
    default:
      return false;
  }
}

// Amounts of angle and of length side by side: a degree counts as a centimetre.
double size_of(const Change& change) {
  constexpr double kPerRadian = 0.01 * 57.29577951308232;
  return change.lever.angle ? change.amount * kPerRadian : change.amount;
}

std::tuple<int, double> rank_of(const Remedy& remedy) {
  std::tuple<int, double> rank{0, 0.0};
  for (const Change& change : remedy.changes) {
    std::get<0>(rank) += static_cast<int>(change.lever.labour);
    std::get<1>(rank) += size_of(change);
  }
  return rank;
}

Change change_of(const SceneDraft& draft, const Lever& lever, int steps, const std::vector<ValueEdit>& edits) {
  Change change{lever, lever.step * steps, {}};
  for (const ValueEdit& edit : edits) {
    ValueChange value;
    value.key = edit.key;
    value.from_text = draft.value(edit.key)->text;
    value.to_text = edit.text;
    value.from = draft.number(edit.key).value_or(0.0);
    value.to = value.from;
    for (const LeverValue& moved : lever.values)
      if (moved.key == edit.key) value.to += moved.rate * change.amount;
    value.angle = lever.angle;
    change.values.push_back(std::move(value));
  }
  return change;
}

class Doctor {
 public:
  Doctor(const SceneDraft& draft, const Scene& scene, const Assessment& assessed, const AssessOptions& options,
         const RemedyOptions& wanted)
      : draft_(draft), scene_(scene), assessed_(assessed), options_(options), wanted_(wanted) {}

  Cures cure(const Finding& target) {
    Cures out;
    out.finding = target.id;
    firsts_.clear();
    singles(target, out);
    if (out.remedies.empty()) pairs(target, out);
    std::stable_sort(out.remedies.begin(), out.remedies.end(),
                     [](const Remedy& a, const Remedy& b) { return rank_of(a) < rank_of(b); });
    if (out.remedies.size() > static_cast<std::size_t>(wanted_.most))
      out.remedies.resize(static_cast<std::size_t>(wanted_.most));
    for (std::size_t i = 0; i < out.remedies.size(); ++i) out.remedies[i].id = target.id + "." + std::to_string(i + 1);
    return out;
  }

  bool stopped() const { return wanted_.stop && wanted_.stop(); }

 private:
  // A change that cures the target, but at a price.
  struct First {
    Lever lever;
    LeverAnswer answer;
  };

  void singles(const Finding& target, Cures& out) {
    const SearchBench bench{draft_, options_, assessed_.fit.findings, target};
    for (const Lever& lever : levers_for({draft_, scene_, assessed_.model}, target)) {
      if (enough(out, lever) || stopped()) break;
      ++out.levers;
      LeverAnswer answer = try_lever(bench, lever);
      if (answer.steps) {
        offer(target, {change_of(draft_, lever, *answer.steps, answer.edits)}, out);
      } else if (answer.cured_at) {
        firsts_.push_back({lever, std::move(answer)});
      }
    }
  }

  // What takes more effort than that will not be among those offered.
  bool enough(const Cures& out, const Lever& lever) const {
    const auto easier = std::count_if(out.remedies.begin(), out.remedies.end(), [&](const Remedy& remedy) {
      return remedy.changes.front().lever.labour < lever.labour;
    });
    return easier >= wanted_.most;
  }

  void pairs(const Finding& target, Cures& out) {
    if (firsts_.size() > kMostFirsts) firsts_.resize(kMostFirsts);
    for (const First& first : firsts_) {
      if (out.remedies.size() >= static_cast<std::size_t>(wanted_.most_pairs)) break;
      pair_with(first, target, out);
    }
  }

  // Cures what the first change costs by a second one.
  void pair_with(const First& first, const Finding& target, Cures& out) {
    const int steps = *first.answer.cured_at;
    const auto edits = edits_at(draft_, first.lever, steps);
    if (!edits || first.answer.price.size() != 1) return;
    const SceneDraft changed(draft_.write(*edits), draft_.name());
    const Scene scene = changed.read();
    const Model model = build_model(scene);
    const SearchBench bench{changed, options_, assessed_.fit.findings, target, false};
    std::vector<Remedy> found;
    for (const Lever& lever : levers_for({changed, scene, model}, first.answer.price.front())) {
      if (!found.empty() && lever.labour > found.front().changes.back().lever.labour) break;
      if (stopped()) break;
      ++out.levers;
      const LeverAnswer answer = try_lever(bench, lever);
      if (!answer.steps) continue;
      offer(target,
            {change_of(draft_, first.lever, steps, *edits), change_of(changed, lever, *answer.steps, answer.edits)},
            out);
      if (!out.remedies.empty()) found.push_back(out.remedies.back());
    }
    keep_best_pairs(out);
  }

  void keep_best_pairs(Cures& out) const {
    std::stable_sort(out.remedies.begin(), out.remedies.end(),
                     [](const Remedy& a, const Remedy& b) { return rank_of(a) < rank_of(b); });
    if (out.remedies.size() > static_cast<std::size_t>(wanted_.most_pairs))
      out.remedies.resize(static_cast<std::size_t>(wanted_.most_pairs));
  }

  // The last word: the text as it would be written is read and proven, and only then is the remedy offered.
  void offer(const Finding& target, std::vector<Change> changes, Cures& out) {
    Remedy remedy;
    remedy.changes = std::move(changes);
    const Scene changed = parse_scene(draft_.write(edits_of(remedy)), draft_.name());
    const Assessment after = assess(changed, options_);
    if (!judge(assessed_.fit.findings, after.fit.findings, target).well()) return;
    if (std::any_of(remedy.changes.begin(), remedy.changes.end(), changes_rigging)) {
      if (!lift_) lift_ = lift_summary(scene_, assessed_.model);
      const LiftSummary now = lift_summary(changed, after.model);
      if (now.troubles > lift_->troubles) return;
      tell_pull(*lift_, now, remedy);
    }
    tell_price(assessed_, changed, after, target, options_, remedy);
    out.remedies.push_back(std::move(remedy));
  }

  const SceneDraft& draft_;
  const Scene& scene_;
  const Assessment& assessed_;
  const AssessOptions& options_;
  const RemedyOptions& wanted_;
  std::vector<First> firsts_;
  std::optional<LiftSummary> lift_;  // of the scene itself, once it is asked for
};

}  // namespace

std::vector<Cures> find_remedies(const SceneDraft& draft, const Scene& scene, const Assessment& assessed,
                                 const AssessOptions& options, const RemedyOptions& wanted) {
  Doctor doctor(draft, scene, assessed, options, wanted);
  std::vector<Cures> all;
  for (const Finding& finding : assessed.fit.findings) {
    if (!wanted.only.empty() && wanted.only != finding.id) continue;
    if (doctor.stopped()) break;
    all.push_back(doctor.cure(finding));
    if (wanted.progress) wanted.progress(static_cast<int>(all.size()), static_cast<int>(assessed.fit.findings.size()));
  }
  return all;
}

std::vector<ValueEdit> edits_of(const Remedy& remedy) {
  std::vector<ValueEdit> edits;
  for (const Change& change : remedy.changes)
    for (const ValueChange& value : change.values) edits.push_back({value.key, value.to_text});
  return edits;
}

const Remedy* find_remedy(const std::vector<Cures>& cures, const std::string& id) {
  for (const Cures& of : cures)
    for (const Remedy& remedy : of.remedies)
      if (remedy.id == id) return &remedy;
  return nullptr;
}

}  // namespace stowpath
