#include "render/paint/cairo.h"

#include <array>
#include <catch2/catch.hpp>
#include <future>
#include <stdexcept>
#include <vector>

#include "render/paint/palette.h"
#include "render/paint/typeface.h"
#include "render/sheet/lettering.h"

using namespace stowpath;
using Catch::Contains;

namespace {

constexpr double kDotsPerInch = 254.0;  // ten dots a millimetre

DisplayList paper(double width, double height) {
  DisplayList list;
  list.width = width;
  list.height = height;
  list.title = "A <sheet>";
  return list;
}

std::uint32_t shade(Ink ink) {
  const Colour c = paper_colour(ink);
  return 0xFF000000U | static_cast<std::uint32_t>(c.red) << 16 | static_cast<std::uint32_t>(c.green) << 8 | c.blue;
}

// The dot at a place of the paper [mm].
std::uint32_t dot(const Raster& picture, double x, double y) {
  return picture.pixels.at(static_cast<std::size_t>(10.0 * y) * static_cast<std::size_t>(picture.width) +
                           static_cast<std::size_t>(10.0 * x));
}

// Leftmost and rightmost column with ink, in millimetres.
std::array<double, 2> inked_columns(const Raster& picture) {
  std::array<double, 2> out{1e9, -1e9};
  for (std::size_t i = 0; i < picture.pixels.size(); ++i) {
    if (picture.pixels[i] == shade(Ink::paper)) continue;
    const double x = 0.1 * static_cast<double>(i % static_cast<std::size_t>(picture.width));
    out = {std::min(out[0], x), std::max(out[1], x)};
  }
  return out;
}

}  // namespace

// A face that another thread's took the place of in FreeType's list is found damaged, or ends the program.
TEST_CASE("cairo: threads that write pictures at once do not disturb each other's lettering", "[paint]") {
  DisplayList list = paper(12.0, 5.0);
  list.text({{1.0, 4.0}, "1/4 in \xE2\x9C\x93", 3.0});
  const std::string alone = paint_png(list, kDotsPerInch);
  std::vector<std::future<bool>> all;
  for (int thread = 0; thread < 8; ++thread) {
    all.push_back(std::async(std::launch::async, [&] {
      for (int k = 0; k < 40; ++k) {
        const std::vector<Typeface> many(25);  // opened and closed by the dozen
        if (paint_png(list, kDotsPerInch) != alone) return false;
      }
      return true;
    }));
  }
  for (auto& same : all) CHECK(same.get());
}

TEST_CASE("cairo: a picture has the paper's size and ink where it is drawn", "[paint]") {
  DisplayList list = paper(20.0, 10.0);
  list.box({2.0, 3.0}, {6.0, 5.0}, {}, Ink::wood);
  const Raster picture = paint_raster(list, kDotsPerInch);
  CHECK(picture.width == 200);
  CHECK(picture.height == 100);
  CHECK(dot(picture, 4.0, 4.0) == shade(Ink::wood));
  CHECK(dot(picture, 1.9, 4.0) == shade(Ink::paper));
  CHECK(dot(picture, 6.05, 4.0) == shade(Ink::paper));
  CHECK(dot(picture, 4.0, 2.9) == shade(Ink::paper));
}

TEST_CASE("cairo: an arc bends as it is told", "[paint]") {
  DisplayList list = paper(10.0, 10.0);
  list.arc({5, 5}, 3.0, 0.25 * std::numbers::pi, 0.5 * std::numbers::pi, Pen{Ink::line, 0.6});
  const Raster picture = paint_raster(list, kDotsPerInch);
  CHECK(dot(picture, 5.0, 2.0) == shade(Ink::line));   // over the centre
  CHECK(dot(picture, 5.0, 8.0) == shade(Ink::paper));  // under it
  CHECK(dot(picture, 8.0, 5.0) == shade(Ink::paper));
}

TEST_CASE("cairo: dashes leave gaps", "[paint]") {
  DisplayList list = paper(30.0, 4.0);
  list.line({1.0, 2.0}, {29.0, 2.0}, {Ink::line, 0.4, Dash::chain});
  const Raster picture = paint_raster(list, kDotsPerInch);
  CHECK(dot(picture, 3.0, 2.0) == shade(Ink::line));
  CHECK(dot(picture, 7.6, 2.0) == shade(Ink::paper));
}

TEST_CASE("cairo: letters take the width that the layout reckons with", "[paint]") {
  for (const std::string words : {"HHHHHHHHHH", "mould loft 123", "12'-4 3/16\" ± 3°"}) {
    DisplayList list = paper(120.0, 12.0);
    list.text({{10.0, 9.0}, words, 5.0});
    const auto [from, to] = inked_columns(paint_raster(list, kDotsPerInch));
    CAPTURE(words, from, to);
    CHECK(from == Approx(10.0).margin(1.2));  // bearings at either end
    CHECK(to == Approx(10.0 + letter(words, 5.0).width).margin(1.6));
  }
}

TEST_CASE("cairo: letters stand on their baseline, turned with the text", "[paint]") {
  DisplayList list = paper(12.0, 60.0);
  list.text({{9.0, 50.0}, "HHHHHHHH", 5.0, Anchor::start, Ink::line, 0.5 * std::numbers::pi});
  const auto [from, to] = inked_columns(paint_raster(list, kDotsPerInch));
  CHECK(from == Approx(4.0).margin(0.6));  // a capital of 5 mm, read from the right
  CHECK(to == Approx(9.0).margin(0.6));
}

TEST_CASE("cairo: letters that the lettering lacks are set in another face", "[paint]") {
  const Typeface typeface;
  const std::string words = "pipe \u03c6 33";
  const std::vector<FaceRun> runs = typeface.runs(words);
  std::string together;
  for (const FaceRun& run : runs) together += run.words;
  CHECK(together == words);
  CHECK(runs.front().face == typeface.lettering());
  CHECK(typeface.runs("plain words 9'-4\"").size() == 1);
}

TEST_CASE("cairo: broken UTF-8 is refused, not read past", "[paint]") {
  DisplayList list = paper(30.0, 10.0);
  list.text({{2.0, 8.0}, "ab\xE2", 3.0});
  CHECK_THROWS_AS(paint_raster(list, 100.0), std::runtime_error);
  CHECK_THROWS_AS(paint_pdf({&list, 1}), std::runtime_error);
}

TEST_CASE("pdf: a page for each sheet, at true size, the same bytes each time", "[paint]") {
  std::vector<DisplayList> sheets{paper(420.0, 297.0), paper(215.9, 279.4)};
  sheets[0].text({{20.0, 20.0}, "Side view", 5.0});
  const std::string pdf = paint_pdf(sheets);
  CHECK(pdf.rfind("%PDF-", 0) == 0);
  CHECK_THAT(pdf, Contains("/MediaBox [ 0 0 1190.551") && Contains("/MediaBox [ 0 0 612 792 ]"));
  CHECK_THAT(pdf, Contains("/Count 2"));
  CHECK_THAT(pdf, !Contains("/CreationDate"));
  CHECK(pdf == paint_pdf(sheets));
}

TEST_CASE("png: written as one file of the stated size", "[paint]") {
  const std::string png = paint_png(paper(25.4, 12.7), 100.0);
  REQUIRE(png.size() > 24);
  CHECK(png.substr(1, 3) == "PNG");
  const auto big_endian = [&](std::size_t at) {
    return static_cast<unsigned char>(png[at + 2]) * 256 + static_cast<unsigned char>(png[at + 3]);
  };
  CHECK(big_endian(16) == 100);
  CHECK(big_endian(20) == 50);
}

TEST_CASE("png: a picture too large to draw is refused", "[paint]") {
  CHECK_THROWS_AS(paint_png(paper(1e6, 10.0)), std::invalid_argument);
  CHECK_THROWS_AS(paint_png(paper(0.0, 10.0)), std::invalid_argument);
  CHECK_THROWS_AS(paint_png(paper(std::numeric_limits<double>::quiet_NaN(), 10.0)), std::invalid_argument);
}

TEST_CASE("cairo: a sheet laid on another is shifted, and cut off at its edges", "[paint]") {
  DisplayList inner = paper(8.0, 4.0), list = paper(20.0, 10.0);
  inner.box({4.0, -50.0}, {50.0, 50.0}, {}, Ink::wood);
  list.lay(inner, {5.0, 3.0});
  list.box({1.0, 1.0}, {2.0, 2.0}, {}, Ink::wall);
  const Raster picture = paint_raster(list, kDotsPerInch);
  CHECK(picture.width == 200);
  CHECK(dot(picture, 10.0, 5.0) == shade(Ink::wood));
  for (const Vec2 outside : {Vec2{8.8, 5.0}, Vec2{13.2, 5.0}, Vec2{10.0, 2.8}, Vec2{10.0, 7.2}})
    CHECK(dot(picture, outside.x, outside.y) == shade(Ink::paper));
  CHECK(dot(picture, 1.5, 1.5) == shade(Ink::wall));  // after it, in its old place
}
