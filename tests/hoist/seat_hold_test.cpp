#include "sim/hoist/seat_hold.h"

#include <catch2/catch.hpp>

#include "sim/hoist/pull_pose.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

// A board close behind the hooks' crown stops a push along the shanks, a beam over the stair a lift of the level stair.
std::string beamed(int up) {
  const std::string text =
      testing::changed(testing::rig_text("demo-cured"), "hang: {lean: 70}", "hang: {lean: 80}");
  return testing::changed(
      text, "obstacles:",
      "obstacles:\n  - {name: board, box: {out: [905, 933], up: [2860, 2950]}, stations: [0, 7600]}\n"
      "  - {name: beam, box: {out: [1500, 1600], up: [" +
          std::to_string(up) + ", 3000]}, stations: [0, 7600]}");
}

struct Hang {
  Scene scene;
  Model model;
  std::size_t move = 0, segment = 0;

  explicit Hang(const std::string& text) : scene(parse_scene(text, "hang.yaml")), model(build_model(scene)) {
    while (model.moves[move].kind != MoveKind::hang) ++move;
    segment = model.moves[move].segments.size() - 1;
  }
  bool held(double v) const {
    const Segment& along = model.moves[move].segments[segment];
    const Configuration pose = at(model.linkage, along, place_on(along, v));
    const SeatHold hold = hold_at(scene, model, move, pose, {pose.station, pose.station});
    return hold.lift_stopped() && hold.slide_stopped();
  }
};

}  // namespace

// What is said to be held is so at every pose of a fine walk; what is not, is held for less than a tenth of a degree.
TEST_CASE("seat hold: a held piece is held all along, and what is held is lost but for its edge", "[hoist]") {
  int held_poses = 0, lost = 0, walked = 0;
  for (const int up : {2800, 2830, 2865, 2890}) {
    const Hang hang(beamed(up));
    const auto pieces = held_pieces(hang.scene, hang.model, hang.move, hang.segment, 0.0, 1.0);
    CHECK(pieces.front().from == 0.0);
    CHECK(pieces.back().to == 1.0);
    for (std::size_t i = 1; i < pieces.size(); ++i) {
      CHECK(pieces[i].from == pieces[i - 1].to);
      CHECK(pieces[i].held != pieces[i - 1].held);
    }
    for (const HeldPiece& piece : pieces) {
      for (int i = 0; i <= 1500; ++i) {
        const double v = i / 1500.0;  // of 36 degrees
        if (v < piece.from || v > piece.to) continue;
        ++walked;
        const bool is = hang.held(v);
        if (piece.held) CHECK(is);
        if (piece.held) ++held_poses;
        if (!piece.held && is) ++lost;
      }
    }
  }
  CHECK(held_poses > 100);
  CHECK(walked - held_poses > 100);
  CHECK(lost < 4 * 4);
}
