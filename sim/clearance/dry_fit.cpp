#include "sim/clearance/dry_fit.h"

#include <chrono>

#include "sim/clearance/findings.h"
#include "sim/clearance/trial.h"

namespace stowpath {
namespace {

Verdict verdict_of(const std::vector<Finding>& findings) {
  Verdict out = Verdict::clear;
  for (const Finding& f : findings) {
    out = worse(out, f.kind == FindingKind::undecided ? Verdict::undecided : Verdict::interference);
  }
  return out;
}

Reach reach_of(const Model& model, const std::vector<MoveTrial>& trials) {
  Reach out{model.loft_span, model.span, {}};
  IntervalSet blocked;
  for (std::size_t i = 0; i < trials.size(); ++i) {
    if (!stands_over_stations(model.moves[i])) continue;
    blocked.insert(blocked.end(), trials[i].not_clear.begin(), trials[i].not_clear.end());
  }
  out.standing = subtract(model.span, unite(std::move(blocked)));
  return out;
}

}  // namespace

void add_findings(std::vector<Finding> more, DryFit& fit) {
  for (Finding& finding : more) fit.findings.push_back(std::move(finding));
  rank_findings(fit.findings);
  fit.verdict = verdict_of(fit.findings);
}

DryFit dry_fit(const Model& model, const DryFitOptions& options) {
  const auto start = std::chrono::steady_clock::now();
  Trial trial(model, options);
  std::vector<MoveTrial> trials;
  for (int i = 0; i < static_cast<int>(model.moves.size()); ++i) trials.push_back(trial.run(i));
  DryFit out;
  for (const MoveTrial& t : trials) out.moves.push_back(t.result);
  out.findings = gather_findings(model, trial, trials);
  out.verdict = verdict_of(out.findings);
  out.reach = reach_of(model, trials);
  out.work = trial.work();
  out.work.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  return out;
}

}  // namespace stowpath
