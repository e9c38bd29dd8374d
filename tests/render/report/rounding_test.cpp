#include <catch2/catch.hpp>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>
#include <sstream>

#include "render/report/hardware_words.h"
#include "render/report/hoist_words.h"
#include "render/report/json.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/roll_report.h"
#include "render/report/text.h"
#include "render/report/words.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "sim/trade/us_units.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

constexpr double kFootPound = kPoundForce * kFoot;  // [J]
constexpr double kPsi = 6894.757293168;             // [Pa]
constexpr auto kBothSystems = {DisplayUnits::metric, DisplayUnits::imperial};

/// One mark of a tape.
double tape_step(DisplayUnits units) { return units == DisplayUnits::imperial ? kInch / 16 : 1e-3; }

/// In metres; "under 1/16\"" is nothing, read as a least length.
double read_least(const std::string& text, DisplayUnits units) {
  if (text.starts_with("under ")) return 0.0;
  if (text.starts_with("less than ")) return -tape_step(units);
  const Measure back = parse_length(text, LengthUnit::none);
  INFO(text);
  REQUIRE(back.value);
  return *back.value;
}

/// Likewise of a greatest length: "under 1/16\"" is a sixteenth.
double read_most(const std::string& text, DisplayUnits units) {
  if (text.starts_with("under ")) return tape_step(units);
  if (text.starts_with("less than ")) return 0.0;
  return read_least(text, units);
}

double number(const std::string& text) {
  double out = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), out);
  return out;
}

struct Said {
  const char* what;
  std::string (*text)(Figure, DisplayUnits);
  double metric, imperial;  ///< unit of the first number said, in SI
  double greatest;          ///< of what is said with it
};

const std::vector<Said>& all_said() {
  static const std::vector<Said> all{
      {"force", force_text, 1.0, kPoundForce, 9e3},
      {"figures", force_figures, 1.0, kPoundForce, 9e3},
      {"mass", mass_text, 1.0, kPound, 200.0},
      {"torque", torque_text, 1.0, kFootPound, 500.0},
      {"stress", stress_text, 1e6, kPsi, 3e8},
      {"speed", speed_text, 1.0, kFoot, 9.0},
      {"energy", energy_text, 1.0, kFootPound, 900.0},
      {"seconds", [](Figure f, DisplayUnits) { return seconds_text(f); }, 1.0, 1.0, 300.0},
      {"time", [](Figure f, DisplayUnits) { return time_text(f); }, 1.0, 1.0, 300.0},
      {"friction", [](Figure f, DisplayUnits) { return friction_text(f); }, 1.0, 1.0, 1.0},
      {"moment", [](Figure f, DisplayUnits u) { return load_text(LoadKind::moment, f, u); }, 1.0, kFootPound, 500.0}};
  return all;
}

/// Unwrapped: every run of white space as one space.
std::string on_one_line(const std::string& text) { return std::regex_replace(text, std::regex("\\s+"), " "); }

std::vector<std::string> rows_under(const std::string& text, const std::string& heading) {
  std::istringstream lines(text.substr(text.find(heading)));
  std::vector<std::string> rows;
  std::string line;
  std::getline(lines, line), std::getline(lines, line);  // the heading, and the columns' names
  while (std::getline(lines, line) && !line.empty()) rows.push_back(line);
  return rows;
}

/// Each scene of the gallery with both reports, in one system of units.
struct Reported {
  Assessment found;
  std::string text;
  nlohmann::json json;
};

Reported reported(const std::string& scene, DisplayUnits units) {
  Reported out{assess(parse_scene(testing::gallery_text(scene), scene)), "", {}};
  out.text = dry_fit_text(out.found.model, out.found.fit, {units, false, {}, &out.found.seat});
  out.json = nlohmann::json::parse(dry_fit_json(out.found.model, out.found.fit, units, {}, &out.found.seat, {}));
  return out;
}

const std::vector<std::string> kGallery{"costume-loft", "crowded-workshop", "demo",       "demo-cured",   "long-curl",
                                        "post-rail",    "rolling-ladder",   "strap-rail", "three-section"};

void check_moves(const Reported& said, DisplayUnits units) {
  const std::vector<std::string> rows = rows_under(said.text, "MOVES, in order of work");
  REQUIRE(rows.size() == said.json["moves"].size());
  const std::regex cells(R"((?:CLEAR|INTERFERENCE|UNDECIDED)  +(.*?)  +(.*?)  )");
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::smatch cell;
    if (!std::regex_search(rows[i], cell, cells)) continue;  // nothing near
    const auto& move = said.json["moves"][i];
    INFO(rows[i]);
    CHECK(read_least(cell[1], units) <= move["clearance_at_least_m"].get<double>() + kShownSlack);
    CHECK(read_most(cell[2], units) >= move["clearance_at_most_m"].get<double>() - kShownSlack);
    CHECK(read_least(move["clearance_text"], units) <= move["clearance_at_least_m"].get<double>() + kShownSlack);
  }
}

struct Stretches {
  IntervalSet all;
  bool complete = true;  ///< false: "and 3 more"
};

/// "0.487 m to 7.113 m, 7.300 m and 2 more".
Stretches read_stretches(std::string text) {
  Stretches out;
  const std::size_t more = text.find(" and ");
  out.complete = more == std::string::npos;
  std::istringstream pieces(text.substr(0, more));
  for (std::string piece; std::getline(pieces, piece, ',');) {
    const std::size_t to = piece.find(" to ");
    const Measure lo = parse_length(piece.substr(0, to), LengthUnit::none);
    const Measure hi = to == std::string::npos ? lo : parse_length(piece.substr(to + 4), LengthUnit::none);
    INFO(piece);
    REQUIRE((lo.value && hi.value));
    out.all.push_back({*lo.value, *hi.value});
  }
  return out;
}

bool covers(const IntervalSet& outer, Interval inner) {
  return std::any_of(outer.begin(), outer.end(),
                     [&](Interval o) { return o.lo <= inner.lo + kShownSlack && o.hi >= inner.hi - kShownSlack; });
}

IntervalSet stretches_of(const nlohmann::json& json) {
  IntervalSet out;
  for (const auto& stretch : json) out.push_back({stretch[0], stretch[1]});
  return out;
}

void check_reach(const Reported& said, DisplayUnits units) {
  std::smatch words;
  const std::string text = on_one_line(said.text);
  const std::regex reach(R"(stand clear over (.*?) of the loft's .*? \((\d+) %\)(?:: (.*?))?\. TAKEN FOR GRANTED)");
  if (!std::regex_search(text, words, reach)) return;
  const Reach& proven = said.found.fit.reach;
  IntervalSet served;
  for (const Interval stretch : proven.standing) {
    if (const Interval part = meet(stretch, proven.span); !part.empty()) served.push_back(part);
  }
  const double length = total_length(unite(served));
  INFO(words[0]);
  CHECK(read_least(words[1], units) <= length + kShownSlack);
  CHECK(number(words[2]) <= 100.0 * length / said.json["reach"]["span_m"].get<double>() + 1e-5);
  const IntervalSet standing = stretches_of(said.json["reach"]["standing_stations_m"]);
  if (words[3].matched)
    for (const Interval stretch : read_stretches(words[3]).all) CHECK(covers(standing, stretch));
}

void check_finding(const nlohmann::json& finding, DisplayUnits units) {
  const std::string text = finding["text"];
  INFO(text);
  std::smatch words;
  if (finding["kind"] == "build" || finding["kind"] == "seat") return;
  const double clearance = finding["clearance_at_least_m"];
  if (std::regex_search(text, words, std::regex(R"(comes within (.*?) of )")))
    CHECK(read_least(words[1], units) <= clearance + kShownSlack);
  if (std::regex_search(text, words, std::regex(R"(, ([^,]*) deep$)")))
    CHECK(read_most(words[1], units) >= -clearance - kShownSlack);
  const Stretches said = read_stretches(finding["stations_text"]);
  if (!said.complete) return;
  for (const Interval stretch : stretches_of(finding["stations_m"])) CHECK(covers(said.all, stretch));
}

}  // namespace

TEST_CASE("rounding: read back, whatever a report says of a bound lies on its cautious side", "[report][random]") {
  std::mt19937 random(31);
  for (const Said& said : all_said()) {
    std::uniform_real_distribution<double> any(0.0, said.greatest);
    for (int i = 0; i < 4000 && said.greatest > 0.0; ++i) {
      const double value = any(random);
      for (const DisplayUnits units : kBothSystems) {
        const double unit = units == DisplayUnits::metric ? said.metric : said.imperial;
        const std::string below = said.text(AtLeast{value}, units), above = said.text(AtMost{value}, units);
        INFO(said.what << " " << value << ": " << below << ", " << above);
        REQUIRE(number(below) * unit <= value + 1e-5 * unit);
        REQUIRE(number(above) * unit >= value - 1e-5 * unit);
        REQUIRE(std::max(value - number(below) * unit, number(above) * unit - value) <= 1.00001 * unit);
      }
    }
  }
}

TEST_CASE("rounding: places and lengths in the reports are no longer than proven", "[report][random]") {
  std::mt19937 random(32);
  std::uniform_real_distribution<double> any(-2.0, 12.0);
  for (int i = 0; i < 5000; ++i) {
    const double value = any(random);
    for (const DisplayUnits units : kBothSystems) {
      const double step = tape_step(units) + kShownSlack;
      const double below = read_least(place_text(AtLeast{value}, units), units);
      const double above = read_most(place_text(AtMost{value}, units), units);
      REQUIRE(below <= value + kShownSlack);
      REQUIRE(below >= value - step);
      REQUIRE(above >= value - kShownSlack);
      REQUIRE(above <= value + step);
      REQUIRE(read_most(up_to_text({std::abs(value)}, units).substr(6), units) >= std::abs(value) - kShownSlack);
    }
  }
}

TEST_CASE("rounding: the largest forces, in kilonewtons, are rounded the same way", "[report]") {
  CHECK(force_text(AtMost{12310.0}, DisplayUnits::metric) == "12.4 kN");
  CHECK(force_text(AtLeast{12390.0}, DisplayUnits::metric) == "12.3 kN");
  CHECK(minutes_text(AtMost{6.21}) == "6.3 min");
  CHECK(minutes_text(AtLeast{1.01}) == "60 s");
}

TEST_CASE("rounding: no report of the gallery says more than is proven, in either system", "[report][gallery]") {
  for (const std::string& scene : kGallery) {
    for (const DisplayUnits units : kBothSystems) {
      const Reported said = reported(scene, units);
      INFO(scene << (units == DisplayUnits::metric ? " in metres" : " in inches"));
      check_moves(said, units);
      check_reach(said, units);
      for (const auto& finding : said.json["findings"]) check_finding(finding, units);
    }
  }
}

// The types keep bare numbers from being written; what they cannot see is a bound that is passed off as a plain number.
TEST_CASE("rounding: no bound is written to the nearest", "[report]") {
  const std::regex passed_off(
      R"(Nominal\{[^}]*\b(at_least|at_most|clearance|depth|to_spare|arc_left|reach_lost|play|resistance|allowable|peak|pull|load)(\(\))?\})");
  int looked_at = 0;
  for (const char* folder : {"render/report", "render/sheet", "render/studio", "render/window", "sim"}) {
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(std::filesystem::path(STOWPATH_SOURCE_DIR) / folder)) {
      if (entry.path().extension() != ".cpp") continue;
      std::ifstream in(entry.path());
      const std::string code{std::istreambuf_iterator<char>(in), {}};
      INFO(entry.path());
      CHECK_FALSE(std::regex_search(code, passed_off));
      ++looked_at;
    }
  }
  CHECK(looked_at > 200);
}
