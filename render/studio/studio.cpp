#include "render/studio/studio.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "render/report/words.h"
#include "sim/scene/reader.h"

namespace stowpath {

struct Studio::Table {
  Scene scene;
  Model model;
  PoseWatch watch;
  DryFit fit;

  Table(Scene s, Model m) : scene(std::move(s)), model(std::move(m)), watch(model) {}
};

Studio::Studio() = default;
Studio::~Studio() = default;

bool Studio::open(const std::string& text, const std::string& name) {
  try {
    Scene scene = parse_scene(text, name);
    Model model = build_model(scene);
    table_ = std::make_unique<Table>(std::move(scene), std::move(model));
  } catch (const SceneError& error) {
    faults_ = error.diagnostics;
    return false;
  }
  faults_.clear();
  chosen_.reset();
  start_proof();
  const bool kept = place_.move < table_->model.moves.size();
  go(kept ? place_ : Place{});
  return true;
}

const Scene& Studio::scene() const { return table_->scene; }
const Model& Studio::model() const { return table_->model; }
const DryFit& Studio::fit() const { return table_->fit; }

DisplayUnits Studio::units() const {
  return units_of(table_->scene);
}

// An older proof that still runs is waited for by its future's end: it is short, and its scene is its own copy.
void Studio::start_proof() {
  proof_ = std::async(std::launch::async, [scene = table_->scene, model = table_->model] { return assess(scene, model); });
}

bool Studio::poll() {
  if (!proof_.valid() || proof_.wait_for(std::chrono::seconds(0)) != std::future_status::ready) return false;
  table_->fit = proof_.get().fit;
  return true;
}

void Studio::wait() {
  if (proof_.valid()) proof_.wait();
  poll();
}

void Studio::show(const Configuration& pose) {
  pose_ = pose;
  news_ = table_->watch.at(pose, table_->model.moves.at(place_.move));
}

void Studio::go(const Place& place) {
  place_ = place;
  on_procedure_ = true;
  held_by_.reset();
  show(pose_at(table_->model, place));
}

void Studio::forward() { go(step_forward(table_->model, place_)); }
void Studio::back() { go(step_back(table_->model, place_)); }
void Studio::run(double seconds) { go(run_on(table_->model, place_, seconds)); }

void Studio::handle(const Configuration& wanted) {
  Segment way;
  way.from = pose_;
  way.to = wanted;
  held_by_.reset();
  on_procedure_ = false;
  if (!hold_at_touch) return show(wanted);
  const FreeWay free = table_->watch.free_way(way, table_->model.moves.at(place_.move));
  held_by_ = free.held_by;
  show(free.u >= 1.0 ? wanted : at(table_->model.linkage, way, free.u));
}

void Studio::choose(std::size_t number) {
  chosen_.reset();
  if (number >= table_->fit.findings.size()) return;
  chosen_ = number;
  const Finding& finding = table_->fit.findings[number];
  const auto same = [&](const Move& move) {
    return !finding.moves.empty() && move.index == finding.moves.back() && move.kind == finding.move_kinds.back();
  };
  const auto found = std::find_if(table_->model.moves.begin(), table_->model.moves.end(), same);
  if (found == table_->model.moves.end()) return;
  place_ = {static_cast<std::size_t>(found - table_->model.moves.begin()), 1.0};
  held_by_.reset();
  on_procedure_ = false;
  show(finding.worst);
}

}  // namespace stowpath
