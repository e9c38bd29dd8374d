#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/studio/grip.h"
#include "render/studio/playback.h"
#include "render/studio/prover.h"
#include "render/studio/scene_on_table.h"
#include "render/studio/scene_picture.h"
#include "sim/clearance/live_pose.h"
#include "sim/scene/scene_error.h"

namespace stowpath {

/// One scene on the table: what the window shows and what its keys and pointer do, without a window.
///
/// The proof of the newest scene runs beside it, then the search for its cures. Until the proof is there `proving` is true
/// and `fit` is that of the scene before, empty where there was none. Not to be used from two threads.
class Studio {
 public:
  Studio();
  ~Studio();
  Studio(const Studio&) = delete;
  Studio& operator=(const Studio&) = delete;

  /// Takes up a scene's text, and starts its proof. Where it cannot be used the scene on the table stays, and `faults`
  /// says why. @returns whether it was taken up
  bool open(const std::string& text, const std::string& name);
  /// The same of what has been read already. The stair stays where it is, as far as the scene has that place.
  void open(SceneReading reading);

  const Scene& scene() const;
  const Model& model() const;
  const DryFit& fit() const;
  SceneOnTable on_table() const { return {scene(), model(), edition_}; }
  /// Of the findings in `fit`; empty until they were looked for.
  const std::vector<Cures>& cures() const { return cures_; }
  const std::optional<Trim>& trim() const { return trim_; }  ///< found with them, where a hook meets a bracket
  const std::vector<Diagnostic>& faults() const { return faults_; }
  DisplayUnits units() const;
  /// Another number whenever scene, model or proof are others: what was drawn of them is old.
  unsigned revision() const { return revision_; }

  /// Another number whenever the scene is another one.
  unsigned edition() const { return edition_; }

  /// Collects what is done. @returns whether something new is there
  bool poll();
  void wait();            ///< until the proof is done, then polls
  void wait_for_cures();  ///< the same for the cures
  bool proving() const { return proving_; }
  bool curing() const { return curing_; }

  // Stepping through the procedure.
  const Place& place() const { return place_; }
  const Configuration& pose() const { return pose_; }
  bool on_procedure() const { return on_procedure_; }
  void go(const Place& place);
  void forward();
  void back();
  void run(double seconds);  ///< shows so much more of it, backwards where negative

  // Free handling. With `hold_at_touch` a way ends where two parts would first touch.
  bool hold_at_touch = false;
  void handle(const Configuration& wanted);
  const std::optional<PoseMeeting>& held_by() const { return held_by_; }

  /// What is near at the pose shown.
  const PoseNews& news() const { return news_; }

  std::optional<std::size_t> chosen_finding() const { return chosen_; }
  void choose(std::size_t finding);  ///< goes to its worst pose; out of range: chooses none

 private:
  struct Table;
  void show(const Configuration& pose);

  std::unique_ptr<Table> table_;
  std::vector<Diagnostic> faults_;
  std::vector<Cures> cures_;
  std::optional<Trim> trim_;
  Prover prover_;
  bool proving_ = false, curing_ = false;
  unsigned revision_ = 0, edition_ = 0;
  Place place_;
  Configuration pose_;
  bool on_procedure_ = true;
  std::optional<PoseMeeting> held_by_;
  PoseNews news_;
  std::optional<std::size_t> chosen_;
};

}  // namespace stowpath
