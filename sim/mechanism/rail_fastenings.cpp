#include "sim/mechanism/rail_fastenings.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/mechanism/prism_touch.h"
#include "sim/mechanism/supports.h"

namespace stowpath {

namespace {

using Building = std::vector<const RoomPart*>;

// The face by which one bracket of the scene's shape is fixed, seen from the pipe's centre.
struct FixedFace {
  std::string what;  // "plate"
  Vec2 a, b;         // with the building to the right of the way from a to b [m]
  double width = 0.0;
};

FixedFace plate_face(const Brackets& b) {
  return {"plate",
          {-b.projection, -b.drop + 0.5 * b.plate_height},
          {-b.projection, -b.drop - 0.5 * b.plate_height},
          b.plate_width};
}

// Of the plate, or of the tab's own end where there is none.
FixedFace strap_face(const Brackets& b) {
  const bool plate = b.plate_thickness > 0.0;
  const double tab = b.strap_arc >= 2.0 * std::numbers::pi ? 2.0 * b.strap_thickness : b.strap_thickness;
  const double half = 0.5 * (plate ? b.plate_height : tab), width = plate ? b.plate_width : b.strap_width;
  const std::string what = plate ? "plate" : "tab's end";
  if (b.tab == TabWay::up) return {what, {half, b.projection}, {-half, b.projection}, width};
  return {what, {-b.projection, half}, {-b.projection, -half}, width};
}

FixedFace post_face(const Brackets& b, double pipe_up) {
  const double foot = b.post->foot - pipe_up;
  const double from = b.post->beside ? -b.projection - b.post->depth : -0.5 * b.post->depth;
  return {"post's foot", {from, foot}, {from + b.post->depth, foot}, b.post->width};
}

std::vector<FixedFace> piece_faces(const Brackets& b) {
  std::vector<FixedFace> faces;
  for (const BracketPiece& piece : b.pieces) {
    const std::size_t n = piece.corners.size();
    if (n < 2) continue;
    const RoundedPolygon grown{piece.corners, piece.radius};
    for (std::size_t i = 0; i < n; ++i) {
      const Vec2 p = piece.corners[i], q = piece.corners[(i + 1) % n], way = (1.0 / norm(q - p)) * (q - p);
      const Vec2 out = piece.radius * Vec2{way.y, -way.x};
      faces.push_back({piece.name, p + out, q + out, piece.width});
    }
  }
  return faces;
}

std::vector<FixedFace> fixed_faces(const Scene& scene) {
  const Brackets& b = scene.rail.brackets;
  switch (b.shape) {
    case BracketShape::wall_saddle:
      return {plate_face(b)};
    case BracketShape::strap:
      return {strap_face(b)};
    case BracketShape::post_mounted:
      return b.post ? std::vector<FixedFace>{post_face(b, scene.rail.at.y)} : std::vector<FixedFace>{};
    case BracketShape::outline:
      return piece_faces(b);
  }
  return {};
}

MountingFace placed(const FixedFace& face, Vec2 pipe, double station) {
  return {pipe + face.a, pipe + face.b, {station - 0.5 * face.width, station + 0.5 * face.width}};
}

// The face of one bracket that lies best on the building.
struct Mounted {
  std::string what;
  FaceSupport support;
};

bool better(const Mounted& a, const Mounted& b) {
  if (a.support.share != b.support.share) return a.support.share > b.support.share;
  return a.support.distance < b.support.distance;
}

Mounted mounted(const HoldingView& view, double station, const Building& building) {
  Mounted best{"bracket", {0.0, 1e9, {}}};
  for (const FixedFace& face : fixed_faces(view.scene)) {
    const Mounted here{face.what, face_support(placed(face, view.scene.rail.at, station), building)};
    if (better(here, best)) best = here;
  }
  return best;
}

std::string per_cent(double share) { return std::to_string(static_cast<int>(std::floor(100.0 * share))) + " %"; }

std::string wrong_with(const HoldingView& view, const Mounted& found) {
  const FaceSupport& support = found.support;
  if (support.share > 0.0)
    return "only " + per_cent(support.share) + " of the " + found.what + " lies on the " + support.nearest;
  if (support.nearest.empty()) return "there is nothing for the " + found.what + " to lie on";
  if (support.distance > kOnFace)
    return "the " + found.what + " is " + say_distance(view.scene, AtMost{support.distance}) + " away from the " +
           support.nearest + ", the nearest thing that could hold it";
  return "the " + found.what + " touches the " + support.nearest + " but does not lie on a face of it";
}

std::string remedy_for(const HoldingView& view) {
  const Rail& rail = view.scene.rail;
  const std::string timber = "under `obstacles` name the ledger or beam that it is screwed to";
  if (rail.brackets.shape == BracketShape::post_mounted)
    return "stand the post on the floor, the loft's deck or a thing that the scene names (`rail.brackets.post.foot`)";
  const double reach = rail.at.x - view.scene.loft.edge;
  if (rail.brackets.shape != BracketShape::wall_saddle || !(reach > 0.0) ||
      std::abs(reach - rail.brackets.projection) <= kOnFace)
    return "move it onto the face (`rail.brackets`, `loft.stations`), or " + timber;
  return "with `rail.brackets.projection: " + say_distance(view.scene, Nominal{reach}) +
         "` it reaches the plane of the loft's edge; or " + timber;
}

Fastening bracket_link(const HoldingView& view, double station, const Building& building) {
  const Mounted found = mounted(view, station, building);
  const std::string place = say_place(view.scene, station);
  Fastening link{"bracket " + place,
                 found.support.nearest,
                 "the " + found.what + " lies on its face",
                 true,
                 found.support.distance,
                 "bracket",
                 place};
  if (found.support.whole()) return link;
  link.ok = false;
  link.in_part = found.support.share > 0.0;
  link.how = wrong_with(view, found);
  link.remedy = remedy_for(view);
  return link;
}

// Of a bracket by outline: whether its pieces lead from one to the other, and one of them to the pipe.
bool hangs_together(const Scene& scene) {
  const std::vector<BracketPiece>& pieces = scene.rail.brackets.pieces;
  std::vector<RoundedPolygon> outlines{make_disc({}, 0.5 * scene.rail.pipe.diameter)};
  for (const BracketPiece& piece : pieces) outlines.push_back({piece.corners, piece.radius});
  std::vector<bool> reached(outlines.size(), false);
  std::vector<std::size_t> from{0};
  reached[0] = true;
  while (!from.empty()) {
    const std::size_t here = from.back();
    from.pop_back();
    for (std::size_t i = 0; i < outlines.size(); ++i) {
      if (reached[i] || free_distance({outlines[here], {0, 0}}, {outlines[i], {0, 0}}) > kOnFace) continue;
      reached[i] = true;
      from.push_back(i);
    }
  }
  return std::all_of(reached.begin(), reached.end(), [](bool r) { return r; });
}

void add_brackets(const HoldingView& view, Fastenings& links) {
  const Brackets& brackets = view.scene.rail.brackets;
  const Building building = building_of(view.model);
  const bool together = brackets.shape != BracketShape::outline || hangs_together(view.scene);
  for (const double station : brackets.stations) {
    links.push_back(bracket_link(view, station, building));
    if (together) continue;
    Fastening apart{
        "bracket " + say_place(view.scene, station), "pipe", {}, false, 0.0, "bracket", say_place(view.scene, station)};
    apart.how = "its pieces do not all touch each other and the pipe";
    apart.remedy = "draw them so that each lies on the next (`rail.brackets.parts`)";
    links.push_back(apart);
  }
}

Fastening loose_pipe(std::string how, std::string remedy) {
  return {"pipe", "bracket", std::move(how), false, 0.0, "rail's pipe", {}, std::move(remedy), true};
}

double widest_span(const std::vector<double>& stations) {
  double widest = 0.0;
  for (std::size_t i = 1; i < stations.size(); ++i) widest = std::max(widest, stations[i] - stations[i - 1]);
  return widest;
}

// Brackets that are fastened to nothing are told as such, and so count here.
void add_pipe(const HoldingView& view, Fastenings& links) {
  const std::vector<double>& brackets = view.scene.rail.brackets.stations;
  for (const double station : brackets)
    links.push_back({"pipe", "bracket " + say_place(view.scene, station), "it lies in its saddle"});
  if (brackets.size() < 2) {
    links.push_back(loose_pipe("it has " + std::to_string(brackets.size()) + " bracket, and takes two at least",
                               "give more brackets (`rail.brackets`)"));
    return;
  }
  const Interval pipe = view.scene.rail.stations;
  const double span = widest_span(brackets), over = std::max(brackets.front() - pipe.lo, pipe.hi - brackets.back());
  if (over <= span + 1e-9) return;
  links.push_back(loose_pipe("an end runs on " + say_distance(view.scene, AtMost{over}) +
                                 " past the last bracket, more than the widest span, " + say_distance(view.scene, Nominal{span}),
                             "give a bracket nearer to the end (`rail.brackets`), or a shorter pipe"));
}

void add_on_pipe(const HoldingView& view, Fastenings& links) {
  const Rail& rail = view.scene.rail;
  if (rail.stops.left) links.push_back({"left rail stop", "pipe", "a collar on its end"});
  if (rail.stops.right) links.push_back({"right rail stop", "pipe", "a collar on its end"});
  for (const PipeJoint& joint : rail.joints) {
    const std::string place = say_place(view.scene, joint.station);
    const Interval over{joint.station - 0.5 * joint.length, joint.station + 0.5 * joint.length};
    Fastening link{"pipe joint " + place, "pipe", "it lies round it", true, gap(over, rail.stations),
                   "pipe joint",          place};
    link.ok = over.lo >= rail.stations.lo - kOnFace && over.hi <= rail.stations.hi + kOnFace;
    if (!link.ok) link.how = "it is not on the pipe over its whole length", link.remedy = "move it (`rail.joints`)";
    links.push_back(link);
  }
}

void add_guard(const HoldingView& view, Fastenings& links) {
  if (!view.scene.loft.guard) return;
  const LoftGuard& guard = *view.scene.loft.guard;
  const double over = guard.out - view.scene.loft.edge, under = guard.thickness - guard.out;
  Fastening link{"guard", "loft", "it stands on the deck", true, std::max(0.0, over - guard.thickness), "loft's guard"};
  if (over > kOnFace || under > kOnFace) {
    link.ok = false;
    link.how = "it stands " + say_distance(view.scene, AtMost{std::max(over, under)}) + " past the deck's edge";
    link.remedy = "set its outer face back to the edge (`loft.guard.out`)";
  }
  links.push_back(link);
}

}  // namespace

Fastenings rail_fastenings(const HoldingView& view) {
  Fastenings links;
  add_brackets(view, links);
  add_pipe(view, links);
  add_on_pipe(view, links);
  add_guard(view, links);
  return links;
}

}  // namespace stowpath
