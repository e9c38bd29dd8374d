#include "sim/trade/length.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

using namespace stowpath;

namespace {

constexpr double kInch = 0.0254;

// Lengths in these tests are exact multiples of their unit, so only rounding of the last bits is allowed for.
constexpr double kRounding = 1e-12;

double inches(const std::string& text, LengthUnit bare = LengthUnit::none) {
  const Measure measure = parse_length(text, bare);
  INFO(text << ": " << measure.problem);
  REQUIRE(measure.value);
  CHECK(measure.problem.empty());
  return *measure.value / kInch;
}

Measure refused(const std::string& text, LengthUnit bare = LengthUnit::none) {
  const Measure measure = parse_length(text, bare);
  INFO(text);
  CHECK_FALSE(measure.value);
  CHECK_FALSE(measure.problem.empty());
  CHECK_FALSE(measure.hint.empty());
  return measure;
}

struct Reading {
  std::string text;
  double inches;
};

}  // namespace

TEST_CASE("length: feet and inches read in every usual spelling", "[trade]") {
  const std::vector<Reading> readings{{"9' 10-1/2\"", 118.5},
                                      {"9ft 4-3/16in", 112.1875},
                                      {"9ft4-3/16in", 112.1875},
                                      {"9'-4\"", 112},
                                      {"9' - 4\"", 112},
                                      {"9' -4\"", 112},
                                      {"9' 4", 112},
                                      {"9'", 108},
                                      {"9.5 ft", 114},
                                      {"5'3.5\"", 63.5},
                                      {"5' 3-1/2\"", 63.5},
                                      {"5'-3 1/2\"", 63.5},
                                      {"63 1/2 in", 63.5},
                                      {"63-1/2\"", 63.5},
                                      {"63.5\"", 63.5},
                                      {"3/8 in", 0.375},
                                      {"5/4\"", 1.25},
                                      {"5' 3''", 63},
                                      {"9 feet 4 inches", 112},
                                      {"1 foot 1 inch", 13},
                                      {"9ft. 4in.", 112},
                                      {"9 FT 4 In", 112},
                                      {"-5in", -5},
                                      {"- 5in", -5},
                                      {"+5in", 5},
                                      {"-9' 4\"", -112},
                                      {"  9' 4\"  ", 112},
                                      {"0' 0 1/16\"", 0.0625},
                                      {"9' 11-31/32\"", 119.96875}};
  for (const Reading& reading : readings) {
    INFO(reading.text);
    CHECK(inches(reading.text) == Approx(reading.inches).margin(kRounding));
  }
}

TEST_CASE("length: typographic marks read as what they look like", "[trade]") {
  const std::vector<Reading> readings{{"9′ 4″", 112},  {"9’ 4”", 112},      {"9‘ 4“", 112},    {"9′ 4½″", 112.5},
                                      {"4¼ in", 4.25}, {"¾\"", 0.75},       {"4-⅛\"", 4.125},  {"4⅜″", 4.375},
                                      {"⅝ in", 0.625}, {"9′–4⅞″", 112.875}, {"3⁄8 in", 0.375}, {"−5 in", -5},
                                      {"9′ 4″", 112},  {"1⅓ in", 4.0 / 3},  {"−½″", -0.5}};
  for (const Reading& reading : readings) {
    INFO(reading.text);
    CHECK(inches(reading.text) == Approx(reading.inches).margin(kRounding));
  }
}

TEST_CASE("length: metric lengths read in millimetres, centimetres and metres", "[trade]") {
  for (const std::string text : {"1613 mm", "161.3 cm", "1.613 m", "1613mm", "1613 MM", "1.613 metres",
                                 "161.3 centimeters", "1613 millimetres"}) {
    INFO(text);
    CHECK(parse_length(text, LengthUnit::none).value.value() == Approx(1.613).margin(kRounding));
  }
  CHECK(parse_length("-.5 m", LengthUnit::none).value.value() == -0.5);
}

TEST_CASE("length: a bare number takes the unit it is given and is refused without one", "[trade]") {
  CHECK(parse_length("900", LengthUnit::millimetre).value.value() == Approx(0.9).margin(kRounding));
  CHECK(inches("63 1/2", LengthUnit::inch) == Approx(63.5).margin(kRounding));
  CHECK(inches("3/8", LengthUnit::inch) == Approx(0.375).margin(kRounding));
  CHECK(refused("63").problem == "“63” has no unit");
  CHECK(refused("63 1/2").hint == "write the unit: 63 in, 9ft 4in, 412 mm or 2.5 m");
  refused("3/8", LengthUnit::millimetre);
  CHECK(inches("3/8 in", LengthUnit::millimetre) == Approx(0.375).margin(kRounding));
}

TEST_CASE("length: what could be read in two ways is refused", "[trade]") {
  for (const std::string text : {"9-4-3/16", "9-4-3/16\"", "9-4", "9 4", "9 -4\"", "1 200 mm", "½5 in", "63 -"}) {
    for (const LengthUnit bare : {LengthUnit::none, LengthUnit::inch, LengthUnit::millimetre}) {
      CHECK_THAT(refused(text, bare).problem, Catch::EndsWith("can be read in two ways"));
    }
  }
  CHECK(refused("1 1/2'").hint == "write 1 1/2\" for inches, 1' 6\" or 1.5 ft for feet");
  refused("1/2'");
  refused("9.5' 4\"");
  CHECK_THAT(refused("4' 13\"").problem, Catch::EndsWith("has 12 inches or more after its feet"));
  refused("4' 12");
  refused("4 5/4 in");
}

TEST_CASE("length: commas, exponents and what is no decimal number are refused", "[trade]") {
  CHECK(refused("1,200 mm").hint == "leave thousands unmarked: 1200, not 1,200");
  CHECK(refused("1,200,000 mm").hint == "leave thousands unmarked: 1200, not 1,200");
  CHECK(refused("2,5 m").hint == "write a decimal point: 2.5, not 2,5");
  CHECK(refused("1.200,5 mm").hint == "write a decimal point: 2.5, not 2,5");
  CHECK(refused("0x10 in").hint == "write the number out: 1000, not 1e3");
  CHECK(refused("1e3 mm").hint == "write the number out: 1000, not 1e3");
  for (const std::string& text : std::vector<std::string>{"1e3",
                                                          "1E-3 m",
                                                          "1.5e+3 in",
                                                          "0x10 in",
                                                          "nan",
                                                          "nan m",
                                                          "inf",
                                                          "-inf mm",
                                                          "infinity in",
                                                          "3/0 in",
                                                          "1 0/0 in",
                                                          "5. in",
                                                          "5..2 m",
                                                          "1.5/2 in",
                                                          "1/2.5 in",
                                                          "3/ in",
                                                          "/8 in",
                                                          "1'200 mm",
                                                          std::string(400, '9') + " mm",
                                                          "123456789012345678901 m"}) {
    for (const LengthUnit bare : {LengthUnit::none, LengthUnit::inch, LengthUnit::millimetre}) refused(text, bare);
  }
}

TEST_CASE("length: anything after the measurement, and nothing at all, is refused", "[trade]") {
  for (const std::string text :
       {"",          " ",          "-",     "in",       "\"",        "'",     "--5 in",   "- -5 in",
        "5 in x",    "5 in 3",     "5\"\"", "9' 4\" 3", "9'-",       "9' x",  "9' 4'",    "9\" 4'",
        "2 m 40 mm", "5 furlongs", "2x4",   "1/2 mm",   "12 1/2 cm", "5 in,", "5 in;6 in"}) {
    for (const LengthUnit bare : {LengthUnit::none, LengthUnit::inch, LengthUnit::millimetre}) refused(text, bare);
  }
  CHECK(refused("--5 in").hint == "write one sign or none");
  CHECK(refused("5" + std::string(200, ' ') + "in").problem == "is too long to be a measurement");
}

TEST_CASE("length: a refusal quotes the text, shortened and without control characters", "[trade]") {
  CHECK_THAT(refused("\x1b[31m5\xff").problem, Catch::StartsWith("“?[31m5?”"));
  CHECK_THAT(refused(std::string(60, 'y')).problem, Catch::StartsWith("“" + std::string(40, 'y') + "…”"));
}

// Programming Praxis, "Feet And Inches", 2011-07-01: the ten examples, rounded to 1/32 in, in this program's own
// spelling.
TEST_CASE("length: feet and inches print as in the published examples", "[trade][published]") {
  const std::vector<std::pair<double, std::string>> examples{
      {0.2785, "0'-0 9/32\""},  {1.6895, "0'-1 11/16\""},  {11.9999, "1'-0\""}, {12.2785, "1'-0 9/32\""},
      {71.9999, "6'-0\""},      {72.3492, "6'-0 11/32\""}, {72.9999, "6'-1\""}, {73.0135, "6'-1\""},
      {73.0185, "6'-1 1/32\""}, {73.8218, "6'-1 13/16\""}};
  for (const auto& [value, text] : examples) CHECK(format_feet_inches(Nominal{value * kInch}, 32) == text);
}

// Derived: the nearest sixteenth, halves up, computed apart from this program.
TEST_CASE("length: sixteenths are rounded once, halves up, and carried", "[trade]") {
  const std::vector<std::pair<double, std::string>> examples{{63.5, "5'-3 1/2\""},        {71.9999, "6'-0\""},
                                                             {95.97, "8'-0\""},           {11.96875, "1'-0\""},
                                                             {0.03125, "0'-0 1/16\""},    {0.03, "0'-0\""},
                                                             {123.4375, "10'-3 7/16\""},  {95.984375, "8'-0\""},
                                                             {47.968, "3'-11 15/16\""},   {0.0, "0'-0\""},
                                                             {-0.03, "0'-0\""},           {-63.5, "-5'-3 1/2\""},
                                                             {2438 / 25.4, "8'-0\""},     {2440 / 25.4, "8'-0 1/16\""},
                                                             {1000 / 25.4, "3'-3 3/8\""}, {915 / 25.4, "3'-0\""}};
  for (const auto& [value, text] : examples) CHECK(format_feet_inches(Nominal{value * kInch}) == text);
  CHECK_THROWS_AS(format_feet_inches(Nominal{1.0}, 0), std::invalid_argument);
}

TEST_CASE("length: metric lengths print in whole millimetres or in metres", "[trade]") {
  CHECK(format_millimetres(Nominal{0.4124}) == "412 mm");
  CHECK(format_millimetres(Nominal{0.0125}) == "13 mm");
  CHECK(format_millimetres(Nominal{0.0034}, 1) == "3.4 mm");
  CHECK(format_millimetres(Nominal{-0.0004}) == "0 mm");
  CHECK(format_metres(Nominal{2.4124}, 2) == "2.41 m");
  CHECK(format_metres(Nominal{-2.0049}, 3) == "-2.005 m");
  CHECK(format_length(Nominal{0.412}, DisplayUnits::metric) == "412 mm");
  CHECK(format_length(Nominal{2.412}, DisplayUnits::metric) == "2.412 m");
  CHECK(format_length(Nominal{0.9996}, DisplayUnits::metric) == "1.000 m");
  CHECK(format_length(Nominal{1.6129}, DisplayUnits::imperial) == "5'-3 1/2\"");
  CHECK_THROWS_AS(format_metres(Nominal{1.0}, 7), std::invalid_argument);
}

TEST_CASE("length: a small clearance never prints as zero unless it is", "[trade]") {
  const auto metric = [](double metres) { return format_small_length(Nominal{metres}, DisplayUnits::metric); };
  const auto imperial = [](double metres) { return format_small_length(Nominal{metres}, DisplayUnits::imperial); };
  CHECK(metric(0.0034) == "3.4 mm");
  CHECK(metric(-0.0034) == "-3.4 mm");
  CHECK(metric(0.00996) == "10 mm");
  CHECK(metric(1e-6) == "under 0.1 mm");
  CHECK(metric(-1e-6) == "less than 0.1 mm below zero");
  CHECK(metric(0.0) == "0.0 mm");
  CHECK(imperial(0.0048) == "3/16\"");
  CHECK(imperial(-3.5 * kInch) == "-3 1/2\"");
  CHECK(imperial(1e-6) == "under 1/16\"");
  CHECK(imperial(-1e-6) == "less than 1/16\" below zero");
  CHECK(imperial(0.0) == "0\"");
  CHECK(imperial(11.99 * kInch) == "1'-0\"");
}

TEST_CASE("length: what is not finite prints as unbounded", "[trade]") {
  for (const double value : {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
                             std::numeric_limits<double>::quiet_NaN(), 1e300, -1.01e9}) {
    CHECK(format_feet_inches(Nominal{value}) == "unbounded");
    CHECK(format_millimetres(Nominal{value}) == "unbounded");
    CHECK(format_metres(Nominal{value}, 6) == "unbounded");
    CHECK(format_length(Nominal{value}, DisplayUnits::metric) == "unbounded");
    CHECK(format_small_length(Nominal{value}, DisplayUnits::imperial) == "unbounded");
    CHECK(format_degrees(Nominal{value}) == "unbounded");
  }
}

TEST_CASE("length: degrees print with one decimal and no negative zero", "[trade]") {
  CHECK(format_degrees(Nominal{1.0}) == "57.3°");
  CHECK(format_degrees(Nominal{-1e-9}) == "0.0°");
  CHECK(format_degrees(Nominal{-1.0}, 0) == "-57°");
}

TEST_CASE("length: what is printed reads back to within half a sixteenth", "[trade][random]") {
  std::mt19937 random(20250711);
  std::uniform_real_distribution<double> any(-30.0, 30.0), small(-0.5, 0.5);
  int negative = 0;
  double worst = 0.0;
  for (int i = 0; i < 100'000; ++i) {
    const double metres = i % 2 == 0 ? any(random) : small(random);
    const Measure back = parse_length(format_feet_inches(Nominal{metres}), LengthUnit::none);
    REQUIRE(back.value);
    worst = std::max(worst, std::abs(*back.value - metres));
    negative += metres < 0 ? 1 : 0;
  }
  CHECK(worst <= kInch / 32 * (1 + 2e-6));  // a millionth of a sixteenth is the formatter's own allowance for halves
  CHECK(negative > 30'000);
  CHECK(negative < 70'000);
}

TEST_CASE("length: random bytes either read or are refused with a reason", "[trade][random]") {
  constexpr std::string_view kLikely = "0123456789 '\"-/.,infmcte½";
  std::mt19937 random(7);
  std::uniform_int_distribution<int> byte(0, 255), size(0, 14), kind(0, 9);
  std::uniform_int_distribution<size_t> likely(0, kLikely.size() - 1);
  int read = 0;
  for (int i = 0; i < 100'000; ++i) {
    std::string text;
    for (int k = size(random); k > 0; --k)
      text += kind(random) == 0 ? static_cast<char>(byte(random)) : kLikely[likely(random)];
    const Measure measure = parse_length(text, LengthUnit::inch);
    REQUIRE(measure.value.has_value() == measure.problem.empty());
    REQUIRE(measure.value.has_value() == measure.hint.empty());
    if (measure.value) REQUIRE(std::isfinite(*measure.value));
    read += measure.value ? 1 : 0;
  }
  CHECK(read > 1000);  // so that both answers were seen
}

namespace {

// What a length reads as; what is told as under a step counts as that step from above and as nothing from below.
double read_length(const std::string& text, bool from_below, double step) {
  if (text.starts_with("under ")) return from_below ? 0.0 : step;
  if (text.starts_with("less than ")) return from_below ? -step : 0.0;
  const Measure back = parse_length(text, LengthUnit::none);
  INFO(text);
  REQUIRE(back.value);
  return *back.value;
}

using Format = std::string (*)(Figure);

void check_sides(Format format, double metres, double step) {
  const std::string below = format(AtLeast{metres}), above = format(AtMost{metres});
  INFO(metres << " m: " << below << ", " << above);
  const double down = read_length(below, true, step), up = read_length(above, false, step);
  REQUIRE(down <= metres + kShownSlack);
  REQUIRE(down >= metres - step - kShownSlack);
  REQUIRE(up >= metres - kShownSlack);
  REQUIRE(up <= metres + step + kShownSlack);
}

}  // namespace

TEST_CASE("length: a least length is printed down, a greatest one up", "[trade]") {
  const auto metric = [](Figure figure) { return format_small_length(figure, DisplayUnits::metric); };
  const auto imperial = [](Figure figure) { return format_small_length(figure, DisplayUnits::imperial); };
  CHECK(metric(AtLeast{0.01687}) == "16 mm");
  CHECK(metric(AtMost{0.01612}) == "17 mm");
  CHECK(metric(AtLeast{-0.0162}) == "-17 mm");
  CHECK(metric(AtLeast{0.00999}) == "9.9 mm");
  CHECK(metric(AtMost{0.00991}) == "10 mm");
  CHECK(metric(AtMost{1e-5}) == "0.1 mm");
  CHECK(metric(AtLeast{1e-5}) == "under 0.1 mm");
  CHECK(metric(AtLeast{-1e-5}) == "-0.1 mm");
  CHECK(imperial(AtLeast{0.00917}) == "5/16\"");
  CHECK(imperial(AtMost{0.00917}) == "3/8\"");
  CHECK(imperial(AtLeast{11.99 * kInch}) == "11 15/16\"");
  CHECK(format_length(AtMost{0.9991}, DisplayUnits::metric) == "1.000 m");
  CHECK(format_degrees(AtLeast{1.0}) == "57.2°");
  CHECK(format_degrees(AtMost{1.0}) == "57.3°");
}

TEST_CASE("length: a proof's guards do not take a step from a length that is kept", "[trade]") {
  CHECK(format_small_length(AtLeast{0.011999999}, DisplayUnits::metric) == "12 mm");
  CHECK(format_small_length(AtLeast{0.5 * kInch - 2e-9}, DisplayUnits::imperial) == "1/2\"");
  CHECK(format_metres(AtMost{5.0 + 1e-9}, 3) == "5.000 m");
  CHECK(format_small_length(AtLeast{0.0119997}, DisplayUnits::metric) == "11 mm");
  CHECK(format_degrees(AtMost{88.0 * 0.017453292519943295 + 1e-12}) == "88.0°");
}

TEST_CASE("length: read back, a length lies on its own side, within a step", "[trade][random]") {
  std::mt19937 random(1313);
  std::uniform_real_distribution<double> any(-30.0, 30.0), small(-0.4, 0.4), tiny(-2e-3, 2e-3);
  for (int i = 0; i < 60'000; ++i) {
    const double metres = i % 3 == 0 ? any(random) : i % 3 == 1 ? small(random) : tiny(random);
    check_sides([](Figure f) { return format_feet_inches(f); }, metres, kInch / 16);
    check_sides([](Figure f) { return format_length(f, DisplayUnits::metric); }, metres, 1e-3);
    check_sides([](Figure f) { return format_small_length(f, DisplayUnits::metric); }, metres, 1e-3);
    check_sides([](Figure f) { return format_small_length(f, DisplayUnits::imperial); }, metres, kInch / 16);
  }
}
