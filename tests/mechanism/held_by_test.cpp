#include "sim/mechanism/held_by.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/loose_scenes.h"

using namespace stowpath;
using stowpath::testing::changed;
using stowpath::testing::loose_scene;
using stowpath::testing::model_of;

namespace {

Fastenings links_of(const std::string& text) {
  const Scene scene = parse_scene(text, "test.yaml");
  return held_by(scene, build_model(scene));
}

/// The fault that tells of a kind of part; none: nullptr.
const BuildFault* fault_of(const Model& model, const std::string& kind) {
  const auto it = std::find_if(model.faults.begin(), model.faults.end(), [&](const BuildFault& fault) {
    return fault.parts.front() == kind && fault.text.find("fastened") != std::string::npos;
  });
  return it == model.faults.end() ? nullptr : &*it;
}

/// The words of that fault, or "held".
std::string told_of(const std::string& text, const std::string& kind) {
  const Model model = model_of(text);
  const BuildFault* fault = fault_of(model, kind);
  return fault ? fault->text : "held";
}

bool intact(const Fastenings& chain) {
  return !chain.empty() && std::all_of(chain.begin(), chain.end(), [](const Fastening& link) { return link.ok; });
}

// A ledger under the loft's edge for the plates, which reach below it.
std::string map_room() {
  return changed(loose_scene("ladder"), "obstacles:\n",
                 "obstacles:\n  - {name: ledger, box: {out: [380, 420], up: [2240, 2390]}, stations: [100, 5100]}\n");
}

using Catch::Contains;

}  // namespace

TEST_CASE("held by: every part of a sound scene has a chain down to the building", "[mechanism][held]") {
  const Fastenings links = links_of(map_room());
  for (const Fastening& link : links) {
    INFO(link.part << " / " << link.holder << ": " << link.how);
    CHECK(link.ok);
    const Fastenings chain = chain_of(links, link.part);
    CHECK(intact(chain));
    const std::string end = chain.back().holder;
    CHECK((end == "ledger" || end == "loft"));
  }
}

TEST_CASE("held by: a chain goes from a caster over section, hook, pipe and bracket to what the bracket is on",
          "[mechanism][held]") {
  const Fastenings chain = chain_of(links_of(loose_scene("three sections")), "section 3");
  std::vector<std::string> way;
  for (const Fastening& link : chain) way.push_back(link.part);
  CHECK(way == std::vector<std::string>{"section 3", "hinge 2", "section 2", "hinge 1", "section 1",
                                        "hook at -281 mm from the stair's middle", "pipe", "bracket at 250 mm"});
  CHECK(chain.back().holder == "loft");
}

TEST_CASE("held by: hooks beside their side rails hang on nothing, in either unit", "[mechanism][held]") {
  CHECK(told_of(loose_scene("one piece in inches"), "hook") == "held");
  const std::string inches =
      told_of(changed(loose_scene("one piece in inches"), "[-11-1/4, 11-1/4]", "[-4-1/4, 4-1/4]"), "hook");
  // The side rails' inner faces at 10-1/2 in, the rod's outer edge at 4-1/2 in.
  CHECK_THAT(inches, Contains("6\" beside the nearest side rail") && Contains("2 hooks") && Contains("11 1/4\""));
  const std::string between = changed(loose_scene("three sections"), "[-281, 281]", "[-150, 150]");
  // Side rails from 262 mm: the rod ends at 157 mm.
  CHECK_THAT(told_of(between, "hook"), Contains("105 mm beside the nearest side rail"));
}

TEST_CASE("held by: a hook may lie flat on a side rail's face, but no further off than 2 mm", "[mechanism][held]") {
  const std::string text = loose_scene("folding");
  const auto at = [&](const std::string& station) {
    return told_of(changed(text, "stations: [-261, 261], rod", "stations: [-" + station + ", " + station + "], rod"),
                   "hook");
  };
  CHECK(at("234.5") == "held");  // the inner face at 242 mm, half a rod of 6 mm, 1.5 mm between
  CHECK_THAT(at("233"), Contains("beside the nearest side rail"));
}

TEST_CASE("held by: a shank lies on wood over two of its diameters at least, and so do its screws",
          "[mechanism][held]") {
  const std::string text = loose_scene("folding");  // side rails begin 75 mm below the pivot, rod 12
  const auto shank = [&](const std::string& length) { return changed(text, "shank: 150", "shank: " + length); };
  CHECK(told_of(shank("99"), "hook") == "held");
  CHECK_THAT(told_of(shank("98"), "hook"), Contains("over 23 mm") && Contains("24 mm at least"));
  CHECK_THAT(told_of(shank("60"), "hook"), Contains("ends 15 mm short"));
  const auto screwed = [&](const std::string& count) {
    return changed(text, "wrap: 195, tip: 0}",
                   "wrap: 195, tip: 0, screws: {count: " + count + ", diameter: 6, thread: 30}}");
  };
  CHECK(told_of(screwed("3"), "hook") == "held");  // 72 of 75 mm
  CHECK_THAT(told_of(screwed("4"), "hook"), Contains("96 mm") && Contains("only 75 mm"));
}

TEST_CASE("held by: a plate hook is held by its pieces below the pivot", "[mechanism][held]") {
  const std::string text = loose_scene("straps");
  CHECK(told_of(text, "hook") == "held");
  const std::string short_shank =
      changed(text, "[[0, 22], [170, 22], [170, 52], [0, 52]]", "[[0, 22], [85, 22], [85, 52], [0, 52]]");
  CHECK_THAT(told_of(short_shank, "hook"), Contains("ends 5.0 mm short"));
}

TEST_CASE("held by: brackets off the loft are screwed to nothing", "[mechanism][held]") {
  const std::string text = loose_scene("inches");
  CHECK(told_of(text, "bracket") == "held");
  const std::string off = told_of(changed(text, "edge: 30", "edge: 28"), "bracket");
  CHECK_THAT(off, Contains("8 brackets") && Contains("2\" away from the loft") && Contains("projection: 5\""));
  const std::string three = told_of(changed(loose_scene("three sections"), "edge: 800", "edge: 749"), "bracket");
  CHECK_THAT(three, Contains("51 mm away from the loft"));
}

TEST_CASE("held by: each bracket counts by itself, and half a plate is told as half", "[mechanism][held]") {
  const std::string text = loose_scene("inches");  // plates 2-1/2 in wide, the loft from 6 in to 21 ft
  const std::string half = told_of(changed(text, "stations: [6, 21 ft]", "stations: [12, 21 ft]"), "bracket");
  CHECK_THAT(half, Contains("the bracket at 1'-0\" is fastened only in part") && Contains("50 %"));
  const std::string beyond = told_of(changed(text, "stations: [6, 21 ft]", "stations: [24, 21 ft]"), "bracket");
  CHECK_THAT(beyond, Contains("the bracket at 1'-0\" is fastened to nothing"));
  const std::string post =
      changed(changed(text, "stations: [6, 21 ft]", "stations: [24, 21 ft]"), "obstacles:\n",
              "obstacles:\n  - {name: wall stud, box: {out: [26, 30], up: [100, 110]}, stations: [10, 14]}\n");
  CHECK(told_of(post, "bracket") == "held");
}

TEST_CASE("held by: a plate that is sunk into a thing is on no face of it", "[mechanism][held]") {
  CHECK_THAT(told_of(changed(loose_scene("inches"), "edge: 30", "edge: 32"), "bracket"),
             Contains("touches the loft but does not lie on a face of it"));
}

TEST_CASE("held by: two things side by side hold one plate between them", "[mechanism][held]") {
  const std::string two =
      changed(loose_scene("ladder"), "obstacles:\n",
              "obstacles:\n"
              "  - {name: upper board, box: {out: [380, 420], up: [2285, 2390]}, stations: [100, 5100]}\n"
              "  - {name: lower board, box: {out: [380, 420], up: [2200, 2285]}, stations: [100, 5100]}\n");
  CHECK(told_of(two, "bracket") == "held");
  CHECK_THAT(told_of(changed(two, "up: [2200, 2285]", "up: [2200, 2270]"), "bracket"), Contains("only in part"));
}

TEST_CASE("held by: a post stands on what is under its foot", "[mechanism][held]") {
  const std::string text = loose_scene("posts");
  CHECK(told_of(text, "bracket") == "held");
  CHECK_THAT(told_of(changed(text, "above: 30}", "above: 30, foot: 20}"), "bracket"),
             Contains("the post's foot is 20 mm away from the floor"));
}

TEST_CASE("held by: a strap's plate has to be on the wall that it is screwed to", "[mechanism][held]") {
  const std::string text = loose_scene("straps");
  CHECK_THAT(told_of(text, "bracket"), Contains("only in part"));
  CHECK(
      told_of(
          changed(text, "obstacles:\n",
                  "obstacles:\n  - {name: ledger, box: {out: [340, 380], up: [2000, 2090]}, stations: [200, 4000]}\n"),
          "bracket") == "held");
}

TEST_CASE("held by: a bracket by outline needs one whole edge on a face, and pieces that touch", "[mechanism][held]") {
  const std::string wall = changed(
      loose_scene("three sections"),
      "shape: wall-saddle, projection: 90, drop: 75, arm: 14, saddle: [45, 2], plate: [70, 110, 8]",
      "shape: outline, parts: [{name: plate, outline: [[-90, -130], [-82, -130], [-82, -20], [-90, -20]], width: 70}, "
      "{name: arm, outline: [[-82, -85], [0, -85], [0, -24.13], [-82, -75]], width: 14}]");
  CHECK(told_of(wall, "bracket") == "held");
  CHECK_THAT(told_of(changed(wall, "edge: 800", "edge: 780"), "bracket"), Contains("20 mm away from the loft"));
  CHECK_THAT(told_of(changed(wall, "[-82, -85], [0, -85], [0, -24.13], [-82, -75]",
                             "[-72, -85], [0, -85], [0, -24.13], [-72, -75]"),
                     "bracket"),
             Contains("do not all touch"));
}

TEST_CASE("held by: a pipe takes two brackets, and its ends do not run on beyond a span", "[mechanism][held]") {
  const std::string text = loose_scene("inches");
  const std::string all = "at: [12, 48, 84, 120, 156, 192, 228, 250]";
  CHECK_THAT(told_of(changed(text, all, "at: [120]"), "rail's pipe"), Contains("takes two"));
  CHECK_THAT(told_of(changed(text, all, "at: [48, 84, 120, 156, 192, 228, 250]"), "rail's pipe"), Contains("3'-8\""));
  CHECK(told_of(changed(text, all, "at: [24, 60, 96, 132, 168, 204, 240]"), "rail's pipe") == "held");
}

TEST_CASE("held by: a pick has wood within 60 mm, and so has each of two", "[mechanism][held]") {
  const std::string text = loose_scene("three sections");
  const std::string pick = "along: 1800, across: 0, spread: 0";
  CHECK_THAT(told_of(changed(text, pick, "along: 15000, across: 0, spread: 0"), "pick"), Contains("12.824 m"));
  CHECK_THAT(told_of(changed(text, pick, "along: 50, across: 0, spread: 0"), "pick"), Contains("it reaches 60 mm"));
  // No tread within reach at 355 mm along; the side rails' inner faces are 262 mm from the middle.
  CHECK(told_of(changed(text, pick, "along: 355, across: 0, spread: 404"), "pick") == "held");
  CHECK_THAT(told_of(changed(text, pick, "along: 355, across: 0, spread: 402"), "pick"),
             Contains("2 picks") && Contains("61 mm"));
  CHECK(told_of(changed(text, pick, "along: 355, across: 0, spread: 562"), "pick") == "held");
}

TEST_CASE("held by: the fold line's end and its pulleys are in wood", "[mechanism][held]") {
  const std::string text = loose_scene("folding");
  CHECK(told_of(text, "fold line's end") == "held");
  CHECK_THAT(told_of(changed(text, "from: {section: 1, along: 200, across: -60}",
                             "from: {section: 1, along: 200, across: -260}"),
                     "fold line's end"),
             Contains("fastened to nothing"));
  CHECK_THAT(told_of(changed(text, "along: 1300, across: -60", "along: 2300, across: -60"), "fold line's pulley"),
             Contains("of section 2"));
}

TEST_CASE("held by: a ceiling point hangs from something within 100 mm, over all of its way if it rolls",
          "[mechanism][held]") {
  const std::string text = loose_scene("inches");
  const std::string point = "ceiling point: {out: 94, up: 12 ft 11 in, station: 102}";
  CHECK(told_of(text, "ceiling point") == "held");
  const std::string low = changed(text, point, "ceiling point: {out: 94, up: 11 ft 4 in, station: 102}");
  CHECK_THAT(told_of(low, "ceiling point"), Contains("the ceiling, 1'-8\" away"));
  const std::string beam = changed(
      low, "obstacles:\n", "obstacles:\n  - {name: beam, box: {out: [90, 98], up: [138, 148]}, stations: [90, 110]}\n");
  CHECK(told_of(beam, "ceiling point") == "held");
  const std::string rolling =
      changed(changed(beam, "rolls: no", "rolls: yes"), ", lead: {out: 15 ft, up: 12 ft 6 in, station: 102}", "");
  CHECK_THAT(told_of(rolling, "ceiling point"), Contains("where it rolls past station"));
}

TEST_CASE("held by: each lead is on a wall, ceiling or named thing", "[mechanism][held]") {
  const std::string lead = "lead: {out: 4400, up: 3900, station: 4170}";
  CHECK_THAT(told_of(loose_scene("folding"), "lead 1"), Contains("the ceiling, 200 mm away"));
  const std::string wall = "{out: 4550, up: 3900, station: 4170}";
  CHECK(told_of(changed(loose_scene("folding"), lead, "lead: " + wall), "lead 1") == "held");
  const std::string two =
      changed(loose_scene("folding"), lead, "leads: [" + wall + ", {out: 3600, up: 2300, station: 7000}]");
  CHECK(told_of(two, "lead 1") == "held");
  CHECK_THAT(told_of(two, "lead 2"), Contains("lead 2 is fastened to nothing"));
}

TEST_CASE("held by: a winch stands on something, and a hand pulls where someone stands", "[mechanism][held]") {
  CHECK_THAT(told_of(loose_scene("three sections"), "winch"), Contains("the floor, 1.200 m away"));
  CHECK(told_of(changed(loose_scene("three sections"), "strength: 12 kN}",
                        "strength: 12 kN, hand: {out: 5700, up: 800, station: 4700}}"),
                "winch") == "held");
  const std::string hand =
      changed(loose_scene("folding"), "station: 4170}}", "station: 4170}, hand: {out: 4400, up: 2400, station: 4170}}");
  CHECK_THAT(told_of(hand, "hand on the line"), Contains("2.400 m over the floor"));
}

TEST_CASE("held by: an extra touches wood of its section, or one that does", "[mechanism][held]") {
  const auto with = [](const std::string& extras) {
    return changed(loose_scene("three sections"), "  handrails: none\n", "  handrails: none\n  extras:\n" + extras);
  };
  const std::string tray =
      "    - {name: tray, section: 2, outline: [[500, 172], [700, 172], [700, 200], [500, 200]], stations: [-290, "
      "290], mass: 1 kg}\n";
  const std::string foot =
      "    - {name: tray foot, section: 2, outline: [[580, 70], [620, 70], [620, 172], [580, 172]], stations: [265, "
      "295], mass: 1 kg}\n";
  CHECK_THAT(told_of(with(tray), "tray"), Contains("102 mm away"));
  CHECK(told_of(with(tray + foot), "tray") == "held");
  CHECK(told_of(with(foot), "tray foot") == "held");
  std::string other = foot;
  CHECK_THAT(told_of(with(tray + changed(other, "section: 2", "section: 1")), "tray"), Contains("102 mm away"));
}

TEST_CASE("held by: casters beside the stair are carried by nothing", "[mechanism][held]") {
  CHECK(told_of(loose_scene("three sections"), "caster") == "held");
  // Wheel of 80 mm: its rim 100 mm off the plate, which ends 8 mm outside of the side rail's face at 300 mm.
  CHECK_THAT(
      told_of(changed(loose_scene("three sections"), "stations: [-330, 330]", "stations: [-448, 448]"), "caster"),
      Contains("2 casters") && Contains("100 mm away"));
  CHECK_THAT(told_of(changed(loose_scene("one piece in inches"), "[-12-7/8, 12-7/8]", "[-17-3/4, 17-3/4]"), "caster"),
             Contains("2 casters"));
  CHECK_THAT(told_of(changed(loose_scene("ladder"), "along: 2405, across: 0", "along: 2405, across: 160"), "caster"),
             Contains("2 casters"));
}

TEST_CASE("held by: treads stand between the side rails, a pin goes through both sections, leaves lie on wood",
          "[mechanism][held]") {
  CHECK_THAT(told_of(changed(loose_scene("folding"), "overhang: 0}", "overhang: 90}"), "tread"), Contains("only 3"));
  Scene scene = parse_scene(loose_scene("three sections"), "test.yaml");
  scene.stair.hinges[1].leaf = 1.430;  // the last section is 1.4 m long
  scene.stair.locks[1].length = 5.598;
  const Model model = build_model(scene);
  REQUIRE(fault_of(model, "hinge 2"));
  CHECK_THAT(fault_of(model, "hinge 2")->text, Contains("30 mm past the end"));
  REQUIRE(fault_of(model, "lock pin 2"));
  CHECK_THAT(fault_of(model, "lock pin 2")->text, Contains("does not go whole through the side rail of section 3"));
}

TEST_CASE("held by: a guard stands on the deck", "[mechanism][held]") {
  const auto guarded = [](const std::string& out) {
    return changed(loose_scene("folding"), "stations: [300, 7300]}",
                   "stations: [300, 7300], guard: {height: 1050, thickness: 40, out: " + out + "}}");
  };
  CHECK(told_of(guarded("900"), "loft's guard") == "held");
  CHECK_THAT(told_of(guarded("930"), "loft's guard"), Contains("30 mm past"));
}

TEST_CASE("held by: wider margins and tolerances hold nothing that was loose", "[mechanism][held]") {
  for (const char* name : {"folding", "inches", "three sections", "straps", "ladder", "posts", "one piece in inches"}) {
    Scene scene = parse_scene(loose_scene(name), "test.yaml");
    const Fastenings before = held_by(scene, build_model(scene));
    scene.margin = {0.2, 0.2, 0.2};
    scene.tolerance = 0.1;
    const Fastenings after = held_by(scene, build_model(scene));
    REQUIRE(after.size() == before.size());
    for (std::size_t i = 0; i < after.size(); ++i) {
      CHECK(after[i].ok == before[i].ok);
      CHECK(after[i].how == before[i].how);
    }
  }
}

TEST_CASE("held by: the dry fit tells each loose thing as a finding of kind build", "[mechanism][held]") {
  const DryFit fit = testing::dry_fit_of(changed(loose_scene("posts"), "[-204, 204]", "[-100, 100]"));
  const auto loose = std::find_if(fit.findings.begin(), fit.findings.end(),
                                  [](const Finding& f) { return f.parts[0] == "hook" && f.note != ""; });
  REQUIRE(loose != fit.findings.end());
  CHECK(loose->kind == FindingKind::build);
  CHECK_THAT(loose->note, Contains("fastened to nothing"));
  CHECK(fit.verdict == Verdict::interference);
}
