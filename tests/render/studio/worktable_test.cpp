#include "render/studio/worktable.h"

#include <catch2/catch.hpp>
#include <fstream>

#include "render/sheet/hook_sheet.h"
#include "tests/support/gallery.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

void write(const std::string& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
  // The clock of a file system may be coarse: a change is to be seen as one.
  static int changes = 0;
  std::filesystem::last_write_time(file, std::filesystem::file_time_type::clock::now() + std::chrono::seconds(++changes));
}

std::string demo_with(const std::string& width) {
  return changed(gallery_text("demo"), "  width: 560\n", "  width: " + width + "\n");
}

// A folder with a scene in it, opened as often as wanted.
struct Shop {
  ScratchFolder folder;
  std::string file = folder.file("scene.yaml");
  Shop() { write(file, gallery_text("demo")); }
};

struct Window {
  Studio studio;
  Worktable table;
  explicit Window(const Shop& shop)
      : table(studio, {content(shop.file), shop.file, shop.file}, shop.folder.file("state")) {}
  void widen(const std::string& to) { REQUIRE_FALSE(table.set({"stair.width", to})); }
};

// A window that ends on unsaved work.
void leave_work(const Shop& shop) {
  Window window(shop);
  window.widen("600");
  CHECK_THAT(window.table.farewell(), Catch::Contains("is kept"));
}

// The scene that was put aside; empty where none was.
std::string set_aside(const Shop& shop) {
  for (const auto& entry : std::filesystem::directory_iterator(shop.folder.file("state")))
    if (entry.path().extension() == ".yaml") return entry.path().string();
  return "";
}

}  // namespace

TEST_CASE("worktable: a change is shown at once, and saved it is the one thing that differs", "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  window.widen("600");
  CHECK(window.studio.scene().stair.width == Approx(0.6));
  CHECK(content(shop.file) == gallery_text("demo"));
  CHECK(window.table.save());
  CHECK(content(shop.file) == demo_with("600"));
  CHECK_FALSE(window.table.sheet().unsaved());
  CHECK(shop.folder.entries() == 2);  // the scene and the state's folder
  window.table.undo();
  CHECK(window.table.sheet().unsaved());
  CHECK(window.studio.scene().stair.width == Approx(0.56));
  window.table.redo();
  CHECK_FALSE(window.table.sheet().unsaved());
}

TEST_CASE("worktable: the numbers after a change are those of the saved file", "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  window.widen("610");
  window.studio.wait_for_cures();
  REQUIRE(window.table.save());
  const SceneReading saved = reading_of(content(shop.file), shop.file);
  const Assessment assessed = assess(saved.scene, saved.model);
  REQUIRE(window.studio.fit().findings.size() == assessed.fit.findings.size());
  CHECK(window.studio.fit().verdict == assessed.fit.verdict);
  for (std::size_t i = 0; i < assessed.fit.findings.size(); ++i) {
    CHECK(window.studio.fit().findings[i].clearance == assessed.fit.findings[i].clearance);
    CHECK(window.studio.fit().findings[i].id == assessed.fit.findings[i].id);
  }
  const auto cures = find_remedies(saved.draft, saved.scene, assessed, {});
  REQUIRE(window.studio.cures().size() == cures.size());
  for (std::size_t i = 0; i < cures.size(); ++i) {
    REQUIRE(window.studio.cures()[i].remedies.size() == cures[i].remedies.size());
    for (std::size_t k = 0; k < cures[i].remedies.size(); ++k)
      CHECK(window.studio.cures()[i].remedies[k].clearance == cures[i].remedies[k].clearance);
  }
  const auto trim = trim_that_clears(saved.scene, kLeastArc);
  REQUIRE((meets_bracket(assessed.fit) && trim));
  REQUIRE(window.studio.trim());
  CHECK(window.studio.trim()->wrap == trim->wrap);
  CHECK(window.studio.trim()->cut == trim->cut);
}

TEST_CASE("worktable: a cure is one step that cures what it says", "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  window.studio.wait_for_cures();
  const Remedy* cure = find_remedy(window.studio.cures(), "F4.1");
  REQUIRE(cure != nullptr);
  const std::string zone = window.studio.fit().findings[3].parts[1];
  REQUIRE_FALSE(window.table.apply(*cure));
  window.studio.wait();
  for (const Finding& finding : window.studio.fit().findings) CHECK(finding.parts[1] != zone);
  window.table.undo();
  CHECK(window.table.sheet().text() == gallery_text("demo"));
}

TEST_CASE("worktable: a file that changed is taken up where nothing is unsaved", "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  write(shop.file, demo_with("580"));
  window.table.look_at_file();
  CHECK(window.studio.scene().stair.width == Approx(0.58));
  CHECK_FALSE(window.table.sheet().unsaved());
  write(shop.file, "stowpath: 1\nname: \"half");
  window.table.look_at_file();
  CHECK(window.studio.scene().stair.width == Approx(0.58));
  CHECK_FALSE(window.studio.faults().empty());
  write(shop.file, demo_with("580"));
  window.table.look_at_file();
  CHECK(window.studio.faults().empty());
  std::filesystem::remove(shop.file);
  window.table.look_at_file();
  CHECK(window.studio.scene().stair.width == Approx(0.58));
  window.widen("590");
  CHECK(window.table.save());
  CHECK(content(shop.file) == demo_with("590"));
}

TEST_CASE("worktable: a file that changed under unsaved work is neither written over nor read before it is asked",
          "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  window.widen("600");
  write(shop.file, demo_with("580"));
  CHECK_FALSE(window.table.save());
  REQUIRE(window.table.question());
  CHECK(content(shop.file) == demo_with("580"));
  CHECK(window.table.sheet().text() == demo_with("600"));
  SECTION("mine is kept, and saving writes over") {
    window.table.answer(true);
    CHECK_FALSE(window.table.question());
    CHECK(content(shop.file) == demo_with("580"));
    CHECK(window.table.save());
    CHECK(content(shop.file) == demo_with("600"));
  }
  SECTION("the file's is taken, and undo has mine") {
    window.table.answer(false);
    CHECK(window.table.sheet().text() == demo_with("580"));
    CHECK_FALSE(window.table.sheet().unsaved());
    window.table.undo();
    CHECK(window.table.sheet().text() == demo_with("600"));
    CHECK(window.table.sheet().unsaved());
  }
  SECTION("the file's has faults: mine stays") {
    write(shop.file, "stowpath: 1\n");
    window.table.look_at_file();
    window.table.answer(false);
    CHECK(window.table.sheet().text() == demo_with("600"));
    CHECK(window.table.sheet().unsaved());
    CHECK_FALSE(window.studio.faults().empty());
  }
  SECTION("the file goes back to what it was: there is nothing to ask") {
    write(shop.file, gallery_text("demo"));
    window.table.look_at_file();
    CHECK_FALSE(window.table.question());
    CHECK(window.table.save());
  }
}

TEST_CASE("worktable: unsaved work outlives its window and is offered to the next", "[studio][worktable]") {
  const Shop shop;
  leave_work(shop);
  bool taken_up = false;
  {
    Window next(shop);
    REQUIRE(next.table.question());
    CHECK_THAT(next.table.question()->words, !Catch::Contains("changed"));
    CHECK(next.table.sheet().text() == gallery_text("demo"));
    CHECK(next.table.set({"stair.width", "590"}));  // it would be written over
    CHECK_FALSE(next.table.save());
    SECTION("taken up, it is still not saved") {
      taken_up = true;
      next.table.answer(true);
      CHECK_FALSE(next.table.question());
      CHECK(next.table.sheet().text() == demo_with("600"));
      CHECK(next.table.sheet().unsaved());
      CHECK(next.studio.scene().stair.width == Approx(0.6));
      CHECK(next.table.save());
    }
    SECTION("put aside, it is a scene of its own") {
      next.table.answer(false);
      CHECK_FALSE(next.table.sheet().unsaved());
      CHECK(content(set_aside(shop)) == demo_with("600"));
      CHECK_THAT(next.table.news(), Catch::Contains(set_aside(shop)));
    }
    CHECK(next.table.farewell().empty());
  }
  CHECK(set_aside(shop).empty() == taken_up);
  CHECK_FALSE(Window(shop).table.question());  // the window before has ended: its place is free, and looked at
}

TEST_CASE("worktable: work from before that cannot be put aside is asked about again", "[studio][worktable]") {
  const Shop shop;
  leave_work(shop);
  Window next(shop);
  std::filesystem::rename(shop.folder.file("state"), shop.folder.file("gone"));
  next.table.answer(false);
  CHECK_THAT(next.table.news(), Catch::Contains("cannot be put aside"));
  REQUIRE(next.table.question());
  std::filesystem::rename(shop.folder.file("gone"), shop.folder.file("state"));
  next.table.answer(false);
  CHECK(content(set_aside(shop)) == demo_with("600"));
}

TEST_CASE("worktable: work from before on a file that has changed since says so, and nothing is lost either way",
          "[studio][worktable]") {
  const Shop shop;
  leave_work(shop);
  const std::string theirs = changed(gallery_text("demo"), "depth: 4600", "depth: 4610");
  write(shop.file, theirs);
  Window next(shop);
  REQUIRE(next.table.question());
  CHECK_THAT(next.table.question()->words, Catch::Contains("The file was changed since"));
  next.table.answer(true);
  CHECK(next.table.sheet().text() == demo_with("600"));
  REQUIRE(next.table.question());
  CHECK_THAT(next.table.question()->words, Catch::Contains("changed on disk"));
  CHECK_FALSE(next.table.save());
  CHECK(content(shop.file) == theirs);
  SECTION("mine is kept, and saving writes over") {
    next.table.answer(true);
    CHECK(next.table.save());
    CHECK(content(shop.file) == demo_with("600"));
    next.table.undo();
    CHECK(next.table.sheet().text() == theirs);
  }
  SECTION("the file's is taken, and undo has mine") {
    next.table.answer(false);
    CHECK(next.table.sheet().text() == theirs);
    CHECK_FALSE(next.table.sheet().unsaved());
    next.table.undo();
    CHECK(next.table.sheet().text() == demo_with("600"));
  }
}

TEST_CASE("worktable: work from before that does not read any more is put aside", "[studio][worktable]") {
  const Shop shop;
  {
    std::filesystem::create_directory(shop.folder.file("state"));
    Unsaved before(shop.folder.file("state"), shop.file);
    before.keep("stowpath: 1\nname: half\n", gallery_text("demo"));
  }
  Window next(shop);
  REQUIRE(next.table.question());
  next.table.answer(true);
  const std::string said = next.table.news();
  CHECK_THAT(said, Catch::Contains("does not read: line ") && Catch::Contains(set_aside(shop)));
  CHECK(next.table.sheet().text() == gallery_text("demo"));
  next.widen("590");
  CHECK(content(set_aside(shop)) == "stowpath: 1\nname: half\n");
}

TEST_CASE("worktable: a scene without a file is saved under a name, never over another file unasked",
          "[studio][worktable]") {
  const Shop shop;
  Studio studio;
  Worktable table(studio, {gallery_text("demo"), "", "the built-in demo"}, shop.folder.file("state"));
  REQUIRE_FALSE(table.set({"stair.width", "600"}));
  CHECK_FALSE(table.save());
  CHECK_THAT(table.news(), Catch::Contains("name"));
  CHECK_FALSE(table.save_as(shop.file));
  REQUIRE(table.question());
  table.answer(false);
  CHECK(content(shop.file) == gallery_text("demo"));
  CHECK_FALSE(table.save_as(shop.folder.file("missing/scene.yaml")));
  CHECK_THAT(table.news(), Catch::Contains("Not saved"));
  CHECK(table.save_as(shop.folder.file("new.yaml")));
  CHECK(content(shop.folder.file("new.yaml")) == demo_with("600"));
  CHECK(table.file() == shop.folder.file("new.yaml"));
  CHECK_FALSE(table.save_as(shop.file));
  table.answer(true);
  CHECK(content(shop.file) == demo_with("600"));
}

TEST_CASE("worktable: what is not saved under a name says why", "[studio][worktable]") {
  const Shop shop;
  Window window(shop);
  CHECK_FALSE(window.table.save_as(""));
  CHECK_THAT(window.table.news(), Catch::Contains("Not saved") && Catch::Contains("needs a name"));
  {
    Window before(shop);
    before.widen("600");
  }
  Window held(shop);
  REQUIRE(held.table.question());
  const std::string other = shop.folder.file("other.yaml");
  CHECK_FALSE(held.table.save_as(other));
  CHECK_THAT(held.table.news(), Catch::Contains("unsaved work from before"));
  CHECK_FALSE(std::filesystem::exists(other));
}

TEST_CASE("worktable: saved under a name for which no unsaved work can be kept, it says both", "[studio][worktable]") {
  const Shop shop;
  Studio studio;
  const std::string no_folder = shop.folder.file("taken");
  write(no_folder, "a file where the folder should be");
  Worktable table(studio, {gallery_text("demo"), "", "demo"}, no_folder);
  CHECK_THAT(table.news(), Catch::Contains("Unsaved work is not kept"));
  REQUIRE(table.save_as(shop.folder.file("new.yaml")));
  CHECK_THAT(table.news(), Catch::Contains("Saved: ") && Catch::Contains("Unsaved work is not kept"));
}

TEST_CASE("worktable: a link stays a link, and what it leads to is written", "[studio][worktable]") {
  Shop shop;
  const std::string target = shop.file;
  shop.file = shop.folder.file("link.yaml");
  std::filesystem::create_symlink(target, shop.file);
  Window window(shop);
  window.widen("600");
  CHECK(window.table.save());
  CHECK(std::filesystem::is_symlink(shop.file));
  CHECK(content(target) == demo_with("600"));
}
