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

// Where it is worst; where that is not known, the end of the last move in which it happens. None: it is of no move.
std::optional<Place> place_of(const Finding& finding, const Model& model) {
  if (finding.moves.empty()) return std::nullopt;
  if (finding.place.move >= 0) {
    const auto number = static_cast<std::size_t>(finding.place.move);
    const auto segments = static_cast<double>(std::max<std::size_t>(1, model.moves.at(number).segments.size()));
    return Place{number, std::clamp((finding.place.segment + finding.place.u) / segments, 0.0, 1.0)};
  }
  const auto same = [&](const Move& move) {
    return move.index == finding.moves.back() && move.kind == finding.move_kinds.back();
  };
  const auto found = std::find_if(model.moves.begin(), model.moves.end(), same);
  if (found == model.moves.end()) return std::nullopt;
  return Place{static_cast<std::size_t>(found - model.moves.begin()), 1.0};
}

// As far as the scene lets it: measurements may have changed under a stair that is held by hand.
Configuration kept_within(const Scene& scene, const Model& model, Configuration pose) {
  pose.station = std::clamp(pose.station, model.span.lo, model.span.hi);
  for (std::size_t k = 0; k < scene.stair.hinges.size(); ++k)
    pose.folds.at(k) = std::clamp(pose.folds.at(k), 0.0, scene.stair.hinges[k].limit);
  return pose;
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
  show(kept_within(table_->scene, table_->model, pose_));
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
  const auto place = place_of(finding, table_->model);
  if (!place) return;
  place_ = *place;
  held_by_.reset();
  on_procedure_ = false;
  show(finding.worst);
}

}  // namespace stowpath
