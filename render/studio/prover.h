#pragma once

#include <condition_variable>
#include <exception>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "render/studio/scene_reading.h"
#include "sim/remedy/hook_gap.h"
#include "sim/remedy/remedies.h"

namespace stowpath {

/// Proves scenes and looks for their cures on a thread of its own, always the newest one.
///
/// What has become old is not proven at all, or its answer is dropped; the search for its cures ends early. Nothing here
/// waits for a proof but `wait_for_proof` and `wait_for_cures`. For one caller's thread.
class Prover {
 public:
  Prover();
  ~Prover();
  Prover(const Prover&) = delete;
  Prover& operator=(const Prover&) = delete;

  /// Takes up a scene in place of the one before.
  void start(SceneReading reading);

  /// What is new of the newest scene since it was asked last.
  struct News {
    std::optional<DryFit> fit;
    std::optional<std::vector<Cures>> cures;
    std::optional<Trim> trim;  ///< with the cures: what has to go of a hook that meets a bracket, where that is proven
  };
  /// @throws what the proof threw: a fault of the program
  News poll();

  bool proving() const;  ///< the newest scene's proof is not there yet
  bool curing() const;   ///< nor are its cures
  void wait_for_proof() const;
  void wait_for_cures() const;

 private:
  void work(const std::stop_token& stop);
  void prove(const SceneReading& reading, const std::stop_token& stop);
  std::optional<SceneReading> next(const std::stop_token& stop);
  bool superseded(const std::stop_token& stop) const;

  mutable std::mutex guard_;
  mutable std::condition_variable_any changed_;
  std::optional<SceneReading> wanted_;  // not taken up yet
  News news_;
  std::exception_ptr fault_;
  bool proof_due_ = false, cures_due_ = false;
  std::jthread worker_;  // last: it ends before what it uses
};

}  // namespace stowpath
