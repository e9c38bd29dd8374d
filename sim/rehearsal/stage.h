#pragma once

#include "sim/rehearsal/tally.h"
#include "sim/rehearsal/what_if.h"

namespace stowpath {

/// One run of a rehearsal at one step.
class Stage {
 public:
  Stage(const Scene& scene, const Model& model, const RehearsalOptions& options, double step);

  /// False where a rope bounces too swiftly for the step; then the report means nothing.
  bool run();
  const RehearsalReport& report() const { return tally_.report; }

 private:
  void start();
  bool over() const;
  void advance();
  void try_things();
  void begin_aftermath(const std::string& cause, RecordedEventKind kind, bool line_gone);
  void push_now();
  void watch_energy();
  void watch_aftermath();
  void watch_below();
  void watch_push();
  double kinetic() const;
  bool still() const;
  void end_aftermath();
  std::string lies_against() const;

  const Scene& scene_;
  const Model& model_;
  const RehearsalOptions& options_;
  Crew crew_;
  SideWorld world_;
  Tally tally_;
  bool gone_ = false, pushed_ = false;
  double ended_ = -1.0, still_since_ = 0.0;
  double push_from_ = -1.0, push_work_ = 0.0;
  std::array<double, kMaxSections> push_leans_{};
  double ledger_ = 0.0, ledger_least_ = 0.0, done_before_ = 0.0;
  bool ledger_begun_ = false;
  double next_look_ = 0.0;
};

}  // namespace stowpath
