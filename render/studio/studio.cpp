#include "render/studio/studio.h"

#include <algorithm>
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

namespace {

// The same moves of as many sections: what was found before still has its place in the picture.
bool like(const Model& a, const Model& b) {
  return a.linkage.sections == b.linkage.sections &&
         std::equal(a.moves.begin(), a.moves.end(), b.moves.begin(), b.moves.end(),
                    [](const Move& x, const Move& y) { return x.index == y.index && x.kind == y.kind; });
}

}  // namespace

Studio::Studio() = default;
Studio::~Studio() = default;

bool Studio::open(const std::string& text, const std::string& name) {
  try {
    open(reading_of(text, name));
  } catch (const SceneError& error) {
    faults_ = error.diagnostics;
    return false;
  }
  return true;
}

void Studio::open(SceneReading reading) {
  auto table = std::make_unique<Table>(reading.scene, reading.model);
  // Taken hold of by hand, the stair keeps its pose while measurements change under it.
  const bool by_hand = !on_procedure_ && table_->model.linkage.sections == table->model.linkage.sections;
  if (table_ && like(table_->model, table->model)) table->fit = std::move(table_->fit);
  table_ = std::move(table);
  ++revision_;
  ++edition_;
  faults_.clear();
  cures_.clear();
  trim_.reset();
  chosen_.reset();
  proving_ = curing_ = true;
  prover_.start(std::move(reading));
  if (place_.move >= table_->model.moves.size()) place_ = {};
  if (!by_hand) return go(place_);
  held_by_.reset();
  show(pose_);
}

const Scene& Studio::scene() const { return table_->scene; }
const Model& Studio::model() const { return table_->model; }
const DryFit& Studio::fit() const { return table_->fit; }

DisplayUnits Studio::units() const {
  return units_of(table_->scene);
}

bool Studio::poll() {
  Prover::News news = prover_.poll();
  if (news.fit) {
    table_->fit = std::move(*news.fit);
    chosen_.reset();
    proving_ = false;
    ++revision_;
  }
  if (news.cures) {
    cures_ = std::move(*news.cures);
    trim_ = news.trim;
    curing_ = false;
  }
  return news.fit || news.cures;
}

void Studio::wait() {
  prover_.wait_for_proof();
  poll();
}

void Studio::wait_for_cures() {
  prover_.wait_for_cures();
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
