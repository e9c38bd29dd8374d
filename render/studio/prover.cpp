#include "render/studio/prover.h"

#include <utility>

#include "render/sheet/hook_sheet.h"

namespace stowpath {

Prover::Prover() : worker_([this](const std::stop_token& stop) { work(stop); }) {}
Prover::~Prover() = default;

void Prover::start(SceneReading reading) {
  const std::lock_guard lock(guard_);
  wanted_ = std::move(reading);
  news_ = {};
  proof_due_ = cures_due_ = true;
  changed_.notify_all();
}

Prover::News Prover::poll() {
  const std::lock_guard lock(guard_);
  if (fault_) std::rethrow_exception(std::exchange(fault_, nullptr));
  return std::exchange(news_, {});
}

bool Prover::proving() const {
  const std::lock_guard lock(guard_);
  return proof_due_;
}

bool Prover::curing() const {
  const std::lock_guard lock(guard_);
  return cures_due_;
}

void Prover::wait_for_proof() const {
  std::unique_lock lock(guard_);
  changed_.wait(lock, [&] { return !proof_due_; });
}

void Prover::wait_for_cures() const {
  std::unique_lock lock(guard_);
  changed_.wait(lock, [&] { return !cures_due_; });
}

bool Prover::superseded(const std::stop_token& stop) const {
  const std::lock_guard lock(guard_);
  return stop.stop_requested() || wanted_.has_value();
}

std::optional<SceneReading> Prover::next(const std::stop_token& stop) {
  std::unique_lock lock(guard_);
  changed_.wait(lock, stop, [&] { return wanted_.has_value(); });
  if (stop.stop_requested()) return std::nullopt;
  return std::exchange(wanted_, std::nullopt);
}

void Prover::work(const std::stop_token& stop) {
  while (const std::optional<SceneReading> reading = next(stop)) {
    try {
      prove(*reading, stop);
    } catch (...) {
      const std::lock_guard lock(guard_);
      if (wanted_) continue;  // of a scene that nobody asks for any more
      fault_ = std::current_exception();
      proof_due_ = cures_due_ = false;
      changed_.notify_all();
    }
  }
}

void Prover::prove(const SceneReading& reading, const std::stop_token& stop) {
  const AssessOptions options;
  const Assessment assessed = assess(reading.scene, reading.model, options);
  {
    const std::lock_guard lock(guard_);
    if (wanted_) return;
    news_.fit = assessed.fit;
    proof_due_ = false;
    changed_.notify_all();
  }
  RemedyOptions wanted;
  wanted.stop = [&] { return superseded(stop); };
  std::vector<Cures> cures = find_remedies(reading.draft, reading.scene, assessed, options, wanted);
  const bool trims = !superseded(stop) && meets_bracket(assessed.fit);
  const auto trim = trims ? trim_that_clears(reading.scene, kLeastArc, options) : std::nullopt;
  const std::lock_guard lock(guard_);
  if (wanted_ || stop.stop_requested()) return;
  news_.trim = trim;
  news_.cures = std::move(cures);
  cures_due_ = false;
  changed_.notify_all();
}

}  // namespace stowpath
