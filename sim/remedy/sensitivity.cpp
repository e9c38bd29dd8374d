#include "sim/remedy/sensitivity.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "sim/clearance/pair_look.h"
#include "sim/clearance/pairs.h"
#include "sim/mechanism/room_parts.h"
#include "sim/remedy/measurement.h"
#include "sim/remedy/pair_sight.h"
#include "sim/remedy/seated.h"
#include "sim/scene/scene_error.h"

namespace stowpath {
namespace {

constexpr double kShift = 1e-8;      // [m] or [rad]: far above rounding, far below any corner's size
constexpr double kCounts = 1e-5;     // changes below this are rounding [m/m]
constexpr double kAgree = 1e-3;      // sides that differ by more are a kink [m/m]
constexpr double kTie = 1e-6;        // pairs this near the closest tie with it [m]
constexpr double kSamePlace = 1e-7;  // [m]
constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

bool in_room(const PairEnd& end) { return end.kind != PartKind::zone && end.section < 0; }

/// A thing of the room that only its own measurements move, and which piece of it the place looks at.
struct Thing {
  bool zone = false;
  int number = 0;         // of the scene's obstacles or zones
  std::size_t piece = 0;  // of a round post's slabs
};

std::size_t pieces_of(const Obstacle& obstacle) { return obstacle.round_post ? round_post_parts(obstacle).size() : 1; }

/// Obstacles' parts follow each other in the room's list, in the scene's order.
std::optional<Thing> thing_of(const Scene& scene, const Model& model, const PairEnd& target) {
  const bool own_zone = target.kind == PartKind::zone && target.index < static_cast<int>(scene.zones.size());
  if (own_zone) return Thing{true, target.index};
  if (target.kind != PartKind::obstacle) return std::nullopt;
  const auto first = std::find_if(model.room.begin(), model.room.end(),
                                  [](const RoomPart& part) { return part.kind == PartKind::obstacle; });
  auto left = static_cast<std::size_t>(target.index - (first - model.room.begin()));
  int number = 0;
  for (; left >= pieces_of(scene.obstacles.at(static_cast<std::size_t>(number))); ++number)
    left -= pieces_of(scene.obstacles[static_cast<std::size_t>(number)]);
  return Thing{false, number, left};
}

bool same_pair(const PairPlace& a, const PairPlace& b) {
  const auto same = [](const PairEnd& x, const PairEnd& y) {
    return x.kind == y.kind && x.index == y.index && x.section == y.section && x.rope_from == y.rope_from;
  };
  return a.base == b.base && same(a.mover, b.mover) && same(a.target, b.target);
}

Target target_of_thing(const Obstacle& shape, std::size_t piece) {
  if (!shape.round_post) return {Outline(make_rounded_polygon(shape.outline, shape.radius)), {shape.stations}};
  const RoomPart part = round_post_parts(shape).at(piece);
  return {Outline(part.outline), part.stations, part.excess};
}

/// The same end in a model without the scene's obstacles and zones.
PairEnd without_things(const Scene& scene, const Model& model, PairEnd end) {
  if (end.kind == PartKind::zone) end.index -= static_cast<int>(scene.zones.size());
  if (!in_room(end)) return end;
  const auto until = model.room.begin() + end.index;
  end.index -= static_cast<int>(
      std::count_if(model.room.begin(), until, [](const RoomPart& part) { return part.kind == PartKind::obstacle; }));
  return end;
}

/// Whether two models have the same parts and moves, one for one.
bool same_build(const Model& a, const Model& b) {
  const auto same_pieces = [](const Move& x, const Move& y) { return x.segments.size() == y.segments.size(); };
  return a.stair.size() == b.stair.size() && a.room.size() == b.room.size() && a.ropes.size() == b.ropes.size() &&
         std::equal(a.moves.begin(), a.moves.end(), b.moves.begin(), b.moves.end(), same_pieces);
}

/// One pair of a tight place, with what is needed to look at it again.
struct Watched {
  PairPlace place;
  PairSight sight;
  PairEnd target;  // in the model without things
  std::optional<Thing> thing;
  Target fixed;       // the thing's own target
  double here = 0.0;  // the sight's mean in the scene as it is
};

/// A tight place: its pair, and those that tie with it, any of which may be the closest after a change.
struct Spot {
  TightPlace tight;
  std::vector<Watched> pairs;
};

/// The change of the least of several that tie; not known where one of them is not.
void take_least(double& least, double change) {
  if (!(least <= change)) least = std::isnan(least) ? least : change;
}

class Study {
 public:
  Study(const Scene& scene, const Model& model) : scene_(scene), model_(model), bare_(scene) {
    bare_.obstacles.clear();
    bare_.zones.clear();
    bare_.where.clear();
    bare_model_ = build_model(bare_);
    seat_alike(model_, bare_model_);
  }

  /// @param one_thing  a finding's place: only pairs with the same thing can take over from it
  TightPlace& watch(const PairPlace& place, const std::array<std::string, 2>& parts, double needed, bool one_thing) {
    Spot spot;
    spot.pairs.push_back(watched(place));
    spot.tight.place = spot.pairs[0].place;
    spot.tight.parts = parts;
    spot.tight.clearance = spot.pairs[0].sight.clearance;
    spot.tight.needed = needed;
    spot.tight.at = at(model_.linkage, segment_of(place), spot.tight.place.u);
    for (const PairPlace& other : tied_pairs(model_, spot.tight.place, spot.tight.clearance, kTie)) {
      const bool counts = !one_thing || name_of(model_, other.target) == name_of(model_, place.target);
      if (counts && !same_pair(other, place)) spot.pairs.push_back(watched(other));
    }
    return add(std::move(spot));
  }

  std::vector<TightPlace> told() {
    for (const Measurement& m : measurements(scene_)) measure(m);
    std::vector<TightPlace> out;
    for (Spot& spot : spots_) {
      for (const Watched& w : spot.pairs) measure_thing(w, spot);
      tidy(spot.tight);
      out.push_back(std::move(spot.tight));
    }
    return out;
  }

 private:
  const Segment& segment_of(const PairPlace& place) const {
    return model_.moves.at(static_cast<std::size_t>(place.move)).segments.at(static_cast<std::size_t>(place.segment));
  }

  Watched watched(const PairPlace& place) const {
    Watched w;
    w.place = place;
    w.target = without_things(scene_, model_, place.target);
    w.thing = thing_of(scene_, model_, place.target);
    if (w.thing) w.fixed = target_of(model_, place.target);
    const PairView view(bare_model_, place, target_in(w, bare_model_));
    w.sight = settle(view, place);
    w.place.u = w.sight.u;
    w.here = w.sight.mean(view);
    return w;
  }

  TightPlace& add(Spot spot) {
    const auto known = std::find_if(spots_.begin(), spots_.end(), [&](const Spot& other) {
      return same_pair(other.tight.place, spot.tight.place) && other.pairs.size() == spot.pairs.size() &&
             std::abs(other.tight.clearance - spot.tight.clearance) < kSamePlace;
    });
    if (known != spots_.end()) return known->tight;
    spots_.push_back(std::move(spot));
    return spots_.back().tight;
  }

  static Target target_in(const Watched& w, const Model& model) {
    return w.thing ? w.fixed : target_of(model, w.target);
  }

  /// How the clearance of each spot changes with one measurement; not known where the scene cannot be built alike.
  std::vector<double> changes(const Measurement& m, double by) const {
    std::vector<double> out(spots_.size(), kUnknown);
    Scene changed = bare_;
    m.shift(changed, by);
    try {
      Model model = build_model(changed);
      if (!same_build(model, bare_model_)) return out;
      seat_alike(model_, model);
      for (std::size_t i = 0; i < spots_.size(); ++i) out[i] = change(spots_[i], model);
    } catch (const SceneError&) {             // a limit of the file or of the stair
    } catch (const std::invalid_argument&) {  // an outline that is convex no more
    }
    return out;
  }

  static double change(const Spot& spot, const Model& model) {
    double least = std::numeric_limits<double>::infinity();
    for (const Watched& w : spot.pairs)
      take_least(least, w.sight.mean(PairView(model, w.place, target_in(w, model))) - w.here);
    return least;
  }

  void measure(const Measurement& m) {
    const std::vector<double> more = changes(m, kShift), less = changes(m, -kShift);
    for (std::size_t i = 0; i < spots_.size(); ++i)
      spots_[i].tight.by.push_back({m.key, m.words, m.angle, more[i] / kShift, -less[i] / kShift});
  }

  double change_of_thing(const Watched& w, const Obstacle& shape) const {
    try {
      return w.sight.mean(PairView(bare_model_, w.place, target_of_thing(shape, w.thing->piece))) - w.here;
    } catch (const std::invalid_argument&) {
      return kUnknown;  // its outline is convex no more
    }
  }

  /// Adds a thing's own measurements. Where other pairs tie with it, they stay and bound what is gained.
  void measure_thing(const Watched& w, Spot& spot) const {
    if (!w.thing) return;
    const auto i = static_cast<std::size_t>(w.thing->number);
    const Obstacle shape = w.thing->zone ? as_obstacle(scene_.zones.at(i)) : scene_.obstacles.at(i);
    const double others = spot.pairs.size() > 1 ? 0.0 : std::numeric_limits<double>::infinity();
    for (const ThingMeasurement& m :
         w.thing->zone ? zone_measurements(scene_, w.thing->number) : obstacle_measurements(scene_, w.thing->number)) {
      Obstacle larger = shape, smaller = shape;
      m.shift(larger, kShift);
      m.shift(smaller, -kShift);
      const double more = std::min(change_of_thing(w, larger), others);
      const double less = std::min(change_of_thing(w, smaller), others);
      spot.tight.by.push_back({m.key, m.words, false, more / kShift, -less / kShift});
    }
  }

  /// Leaves what counts, the strongest first: lengths and angles by what a millimetre and a degree do.
  static void tidy(TightPlace& place) {
    std::vector<Sensitivity>& by = place.by;
    constexpr double kMillimetre = 1e-3, kDegree = 0.017453292519943295;
    const auto counts = [](const Sensitivity& s) {
      return !(std::abs(s.more) < kCounts && std::abs(s.less) < kCounts);
    };
    by.erase(std::stable_partition(by.begin(), by.end(), counts), by.end());
    std::stable_sort(by.begin(), by.end(), [&](const Sensitivity& a, const Sensitivity& b) {
      return effect(a, kMillimetre, kDegree) > effect(b, kMillimetre, kDegree);
    });
  }

  const Scene& scene_;
  const Model& model_;
  Scene bare_;  // without obstacles and zones, so that building it anew costs the same in a full room
  Model bare_model_;
  std::vector<Spot> spots_;
};

double needed_by(const Model& model, const PairPlace& place) {
  if (place.base == kRoom) return room_need(model, place.mover.kind, place.target.kind).margin;
  return model.margin.self;
}

}  // namespace

bool Sensitivity::smooth() const { return std::abs(more - less) < kAgree; }

double effect(const Sensitivity& by, double length, double angle) {
  const double most = std::fmax(std::abs(by.more), std::abs(by.less));
  return std::isnan(most) ? 0.0 : most * (by.angle ? angle : length);
}

std::vector<TightPlace> tight_places(const Scene& scene, const Model& model, const DryFit& fit) {
  Study study(scene, model);
  for (const Finding& f : fit.findings) {
    if (f.place.move < 0) continue;
    study.watch(f.place, f.parts, f.needed, true).findings.push_back(f.id);
  }
  for (std::size_t i = 0; i < fit.moves.size(); ++i) {
    const MoveResult& move = fit.moves[i];
    if (move.closest_place.move < 0) continue;
    const double needed = needed_by(model, move.closest_place);
    study.watch(move.closest_place, move.closest, needed, false).moves.push_back(static_cast<int>(i));
  }
  return study.told();
}

}  // namespace stowpath
