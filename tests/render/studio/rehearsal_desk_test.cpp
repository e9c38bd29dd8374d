#include "render/studio/rehearsal_desk.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sstream>
#include <thread>

#include "sim/rehearsal/recording_text.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

namespace {

constexpr double kForever = std::numeric_limits<double>::infinity();

struct Table {
  Scene scene = parse_scene(gallery_text("demo-cured"), "demo-cured");
  Model model = build_model(scene);
  RehearsalDesk desk;

  Table() { desk.start_over({scene, model}); }
  void start() { desk.toggle({scene, model}); }
  void run(double seconds) {
    for (double left = seconds; left > 0.0; left -= 1.0 / 64.0) desk.tick(1.0 / 64.0, kForever);
  }
  int move_of(MoveKind kind) const {
    for (std::size_t k = 0; k < model.moves.size(); ++k)
      if (model.moves[k].kind == kind) return static_cast<int>(k);
    return -1;
  }
  Vec2 on_stair() const {
    const LiveRun::Moment now = desk.shown();
    return now.frame.sections[0].origin +
           Vec2{std::cos(now.frame.sections[0].turn), std::sin(now.frame.sections[0].turn)};
  }
};

}  // namespace

TEST_CASE("rehearsal desk: it runs in real time, at the speed asked for, and stands still when paused", "[studio]") {
  Table table;
  table.run(1.0);
  CHECK(table.desk.live_time() == 0.0);
  table.start();
  table.run(1.0);
  CHECK(table.desk.live_time() == Approx(1.0).margin(5e-3));  // a few steps
  table.desk.change_speed(1);
  table.run(1.0);
  CHECK(table.desk.live_time() == Approx(3.0).margin(5e-3));
  for (int i = 0; i < 9; ++i) table.desk.change_speed(-1);
  CHECK(table.desk.speed == kRehearsalSpeeds.front());
  table.start();
  table.run(1.0);
  CHECK(table.desk.live_time() == Approx(3.0).margin(5e-3));
}

TEST_CASE("rehearsal desk: without time to compute in, it goes slower and says so", "[studio]") {
  Table table;
  table.start();
  for (int i = 0; i < 64; ++i) table.desk.tick(1.0 / 16.0, 0.0);
  CHECK(table.desk.lags());
  table.start();  // pauses
  CHECK_FALSE(table.desk.lags());
  CHECK(table.desk.live_time() < 2.0);
}

TEST_CASE("rehearsal desk: wound back it shows what was recorded, and goes on from the live end", "[studio]") {
  Table table;
  table.start();
  table.run(4.0);
  table.desk.show(2.0);
  CHECK_FALSE(table.desk.running());
  CHECK(table.desk.wound_back());
  CHECK(table.desk.shown().frame.time == Approx(2.0).margin(0.041));
  table.desk.step(-1);
  CHECK(table.desk.shown().frame.time == Approx(1.96).margin(0.041));
  table.desk.step(1);
  CHECK(table.desk.shown_time() == Approx(2.0).margin(0.041));
  table.desk.step(-1000);
  CHECK(table.desk.shown().frame.time < 0.01);
  table.start();
  table.run(1.0);
  CHECK(table.desk.live_time() == Approx(5.0).margin(5e-3));
  table.desk.show(99.0);
  CHECK_FALSE(table.desk.wound_back());
  const double before = table.desk.live_time();
  table.desk.step(1);
  CHECK(table.desk.live_time() == Approx(before + 0.04).margin(5e-3));
}

TEST_CASE("rehearsal desk: it winds on to a move, and back to one that has begun", "[studio]") {
  Table table;
  const int lift = table.move_of(MoveKind::lift), drag = table.move_of(MoveKind::drag);
  table.desk.go_to_move(lift);
  while (table.desk.winding()) table.desk.tick(0.01, 0.01);
  REQUIRE(table.desk.run().begins(lift).has_value());
  CHECK(table.desk.live_time() - *table.desk.run().begins(lift) < 0.05);
  CHECK(table.desk.shown().frame.move == lift);
  table.desk.go_to_move(drag);
  CHECK(table.desk.shown_time() == *table.desk.run().begins(drag));
  table.desk.take_up();
  while (table.desk.winding()) table.desk.tick(0.01, 0.01);
  CHECK(table.desk.live_time() == Approx(*table.desk.run().begins(drag)).margin(5e-3));
}

TEST_CASE("rehearsal desk: a push that cannot be read is refused with what to write, and nothing happens", "[studio]") {
  Table table;
  table.desk.push_words = "hard";
  table.desk.push();
  CHECK_THAT(table.desk.message(), Contains("hard") && Contains("120N at 1.1m"));
  table.desk.push_words = "120N at 1.1m";  // along the rail
  table.desk.push();
  CHECK_THAT(table.desk.message(), Contains("120N at 1.1m outward"));
  table.desk.gust_words = "storm";
  table.desk.gust();
  CHECK_THAT(table.desk.message(), Contains("storm") && Contains("10 m/s"));
  CHECK(table.desk.run().tried().empty());
  CHECK_FALSE(table.desk.running());
}

TEST_CASE("rehearsal desk: a line is let go once, and what followed is told", "[studio]") {
  Table table;
  table.desk.go_to_move(table.move_of(MoveKind::hang));
  while (table.desk.winding()) table.desk.tick(0.01, 0.01);
  table.start();
  table.run(0.5);
  table.desk.let_go();
  table.run(8.0);
  CHECK_FALSE(table.desk.running());  // it has run out
  CHECK_THAT(table.desk.what_then(), Contains("the line is let go") && Contains(" reaches "));
  table.desk.break_line();
  CHECK(table.desk.run().tried().size() == 1);
  CHECK_THAT(table.desk.message(), Contains("Nobody holds the line"));
}

TEST_CASE("rehearsal desk: a line that is not hooked on is not let go", "[studio]") {
  Table table;
  table.start();
  table.run(0.2);
  table.desk.let_go();
  table.desk.break_line();
  CHECK(table.desk.run().tried().empty());
  CHECK_THAT(table.desk.message(), Contains("not hooked on"));
}

TEST_CASE("rehearsal desk: a scene without a hoist has no line to let go", "[studio]") {
  Table table;
  table.scene.hoist.reset();
  table.scene.procedure.clear();
  table.desk.start_over({table.scene, table.model});
  table.desk.let_go();
  CHECK_THAT(table.desk.message(), Contains("no hoist line"));
}

TEST_CASE("rehearsal desk: the stair is pushed by hand as far as the pointer is drawn", "[studio]") {
  Table table;
  CHECK_FALSE(table.desk.aim({-3.0, 9.0}, 0.02));
  const Vec2 held = table.on_stair();
  REQUIRE(table.desk.aim(held, 0.1));
  table.desk.aim_to(held + Vec2{-0.5, 0.3}, 240.0);
  REQUIRE(table.desk.aimed());
  CHECK(table.desk.aimed()->force == -120.0);
  table.start();
  table.run(1.0);  // time stands still while one aims
  CHECK(table.desk.live_time() == 0.0);
  table.desk.give();
  REQUIRE(table.desk.run().tried().size() == 1);
  const Push& push = table.desk.run().tried().front().push;
  CHECK(push.force == -120.0);
  CHECK(push.height == Approx(held.y - table.model.floor_level).margin(0.0051));
  REQUIRE(table.desk.aim(table.on_stair(), 0.1));
  table.desk.give();  // of nothing
  CHECK(table.desk.run().tried().size() == 1);
}

TEST_CASE("rehearsal desk: standing without a pin it falls from the start", "[studio]") {
  Table table;
  table.desk.without_pin = 1;
  table.desk.start_over({table.scene, table.model});
  table.start();
  table.run(2.0);
  CHECK_THAT(table.desk.what_then(), Contains("without the pin of hinge 1"));
  CHECK(table.desk.run().recording().options == "--no-pin \"1\"");
}

TEST_CASE("rehearsal desk: a pin chosen in another scene that this stair has not is not left out", "[studio]") {
  Table table;
  table.desk.without_pin = 2;
  table.desk.start_over({table.scene, table.model});
  CHECK(table.desk.without_pin == 0);
  CHECK_THAT(table.desk.message(), Contains("no hinge 2"));
  REQUIRE(table.desk.begun());
  table.start();
  table.run(0.5);
  CHECK(table.desk.what_then().empty());
}

TEST_CASE("rehearsal desk: what cannot be rehearsed is not begun, and it says why", "[studio]") {
  Table table;
  Model weightless = table.model;
  for (SectionMass& mass : weightless.masses) mass.mass = 0.0;
  Scene bare = table.scene;
  bare.hoist.reset();
  bare.fold_line.reset();
  table.desk.start_over({bare, weightless});
  CHECK_FALSE(table.desk.begun());
  CHECK_THAT(table.desk.message(), Contains("cannot be rehearsed"));
  table.desk.toggle({bare, weightless});
  CHECK_FALSE(table.desk.running());
  table.desk.start_over({table.scene, table.model});
  CHECK(table.desk.begun());
}

// The time of what is tried is that of the live end, which is then somewhere else.
TEST_CASE("rehearsal desk: on its way to another time nothing is tried", "[studio]") {
  Table table;
  table.desk.go_to_move(table.move_of(MoveKind::hang));
  table.desk.tick(0.01, 0.0);
  REQUIRE(table.desk.winding());
  table.desk.let_go();
  table.desk.push();
  table.desk.gust();
  CHECK_FALSE(table.desk.aim(table.on_stair(), 0.1));
  CHECK(table.desk.winding());
  CHECK(table.desk.run().tried().empty());
  CHECK_THAT(table.desk.message(), Contains("wait until it is there"));
  table.start();  // stops it
  CHECK_FALSE(table.desk.winding());
  table.desk.push();
  CHECK(table.desk.run().tried().size() == 1);
}

TEST_CASE("rehearsal desk: whatever ends the writing of a run is said, and ends nothing else", "[studio]") {
  const ScratchFolder folder;
  Table table;
  table.model.name = "loft \xFF";  // no lettering: the drawing library refuses it
  table.desk.start_over({table.scene, table.model});
  table.start();
  table.run(0.5);
  table.desk.file = folder.file("run.pdf");
  table.desk.write(DisplayUnits::metric);
  while (table.desk.writing()) table.desk.tick(0.0, 0.0), std::this_thread::sleep_for(std::chrono::milliseconds(2));
  CHECK_THAT(table.desk.message(), Contains("run.pdf: not written"));
  CHECK(folder.entries() == 0);
}

TEST_CASE("rehearsal desk: the run is written as it is recorded, and no file is written over unasked", "[studio]") {
  Table table;
  const auto folder = std::filesystem::temp_directory_path() / "stowpath-rehearsal-desk";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directory(folder);
  const auto wait = [&] {
    while (table.desk.writing()) table.desk.tick(0.0, 0.0), std::this_thread::sleep_for(std::chrono::milliseconds(2));
  };
  table.start();
  table.run(2.0);
  table.start();
  table.desk.file = (folder / "run.txt").string();
  table.desk.write(DisplayUnits::metric);
  wait();
  CHECK_THAT(table.desk.message(), Contains("Written"));
  std::ifstream file(table.desk.file);
  std::stringstream text;
  text << file.rdbuf();
  CHECK(bool(text.str() == write_recording(table.desk.run().recording())));
  table.desk.file = (folder / "run.doc").string();
  table.desk.write(DisplayUnits::metric);
  CHECK_THAT(table.desk.message(), Contains(".html") && Contains("run.doc"));
  std::ofstream(folder / "mine.txt") << "mine";
  table.desk.file = (folder / "mine.txt").string();
  table.desk.write(DisplayUnits::metric);
  CHECK_THAT(table.desk.message(), Contains("is there already"));
  CHECK_FALSE(table.desk.writing());
  CHECK(std::filesystem::file_size(folder / "mine.txt") == 4);
  table.desk.write(DisplayUnits::metric);
  wait();
  CHECK(std::filesystem::file_size(folder / "mine.txt") > 4);
  table.desk.file = (folder / "no" / "such" / "run.txt").string();
  table.desk.write(DisplayUnits::metric);
  wait();
  CHECK_THAT(table.desk.message(), Contains("run.txt"));
  CHECK_THAT(table.desk.message(), !Contains("Written"));
  std::filesystem::remove_all(folder);
}
