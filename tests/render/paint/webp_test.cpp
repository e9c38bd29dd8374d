#include "render/paint/webp.h"

#include <catch2/catch.hpp>
#include <stdexcept>

#include <webp/decode.h>
#include <webp/demux.h>

#include "render/report/rehearsal_film.h"
#include "render/sheet/lettering.h"
#include "tests/support/sample_recording.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

Raster plain(int width, int height, std::uint32_t colour) {
  return {width, height, std::vector<std::uint32_t>(static_cast<std::size_t>(width * height), colour)};
}

WebPData data_of(const std::string& bytes) {
  return {reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()};
}

/// What a player finds in a file.
struct Played {
  int pictures = 0, milliseconds = 0, width = 0, height = 0;
  std::uint32_t last_corner = 0;  // 0xAABBGGRR
};

Played play(const std::string& bytes) {
  const WebPData data = data_of(bytes);
  WebPAnimDecoderOptions options;
  WebPAnimDecoderOptionsInit(&options);
  WebPAnimDecoder* decoder = WebPAnimDecoderNew(&data, &options);
  REQUIRE(decoder != nullptr);
  WebPAnimInfo info;
  WebPAnimDecoderGetInfo(decoder, &info);
  Played out;
  out.pictures = static_cast<int>(info.frame_count);
  out.width = static_cast<int>(info.canvas_width);
  out.height = static_cast<int>(info.canvas_height);
  while (WebPAnimDecoderHasMoreFrames(decoder)) {
    std::uint8_t* pixels = nullptr;
    REQUIRE(WebPAnimDecoderGetNext(decoder, &pixels, &out.milliseconds) != 0);
    out.last_corner = *reinterpret_cast<std::uint32_t*>(pixels);
  }
  WebPAnimDecoderDelete(decoder);
  return out;
}

}  // namespace

TEST_CASE("webp: what is put in comes out again, to the colour and the millisecond", "[paint]") {
  WebpAnimation film(32, 20);
  film.add(plain(32, 20, 0xFFFF0000U), 120);
  film.add(plain(32, 20, 0xFF00FF00U), 80);
  film.add(plain(32, 20, 0xFF1020F0U), 300);
  const Played played = play(film.finish());
  CHECK(played.pictures == 3);
  CHECK(played.milliseconds == 500);
  CHECK(played.width == 32);
  CHECK(played.height == 20);
  CHECK(played.last_corner == 0xFFF02010U);
}

TEST_CASE("webp: pictures of another size, none at all, or for no time are refused", "[paint]") {
  CHECK_THROWS_AS(WebpAnimation(0, 20), std::invalid_argument);
  CHECK_THROWS_AS(WebpAnimation(20, 20'000), std::invalid_argument);
  WebpAnimation film(32, 20);
  CHECK_THROWS_AS(film.finish(), std::logic_error);
  CHECK_THROWS_AS(film.add(plain(31, 20, 0), 100), std::invalid_argument);
  CHECK_THROWS_AS(film.add(plain(32, 20, 0), 0), std::invalid_argument);
}

TEST_CASE("rehearsal film: a short run plays in real time and gives the same bytes again", "[report]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  Recording recording = testing::sample_recording();
  recording.frames.resize(13);  // 0.6 s
  const RecordingSubject subject{scene, model, recording, DisplayUnits::metric};
  const std::string film = rehearsal_film(subject);
  const Played played = play(film);
  CHECK(played.pictures == 6);
  CHECK(played.milliseconds == 5 * 120 + 2000);
  CHECK(film == rehearsal_film(subject));
}

TEST_CASE("rehearsal film: every picture says what is wrong, how good the numbers are, and what was granted",
          "[report]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  Recording recording = testing::sample_recording();
  recording.account = testing::sample_account();
  const RecordingSubject subject{scene, model, recording, DisplayUnits::metric};
  for (const std::size_t frame : {std::size_t{0}, std::size_t{40}}) {
    const DisplayList picture = make_rehearsal_picture(subject, frame, 1);
    std::string all;
    for (const Item& item : picture.items) {
      const Text* text = std::get_if<Text>(&item);
      if (!text) continue;
      all += text->words + " ";
      CHECK(text_box(*text).greatest.y < picture.height);
    }
    CHECK_THAT(all, Catch::Contains("TROUBLE: 2 pairs of parts touch") && Catch::Contains("Step 1/960 s") &&
                        Catch::Contains("at most 0.23 J") && Catch::Contains("half the step") &&
                        Catch::Contains("The rope is a guess") && Catch::Contains("Keep people out"));
  }
}

TEST_CASE("rehearsal film: a line is drawn as it is pulled, with what it is pulled by", "[report]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  Recording recording = testing::sample_recording();
  const auto said = [&] {
    std::string all;
    for (const Item& item : make_rehearsal_picture({scene, model, recording, DisplayUnits::metric}, 5, 1).items)
      if (const Text* text = std::get_if<Text>(&item)) all += text->words + "|";
    return all;
  };
  recording.frames[5].hoist = {true, 234.0, 6.0, 0.0};
  CHECK_THAT(said(), Catch::StartsWith("234 N|"));
  recording.frames[5].hoist = {true, 0.0, 6.0, 0.3};
  CHECK_THAT(said(), Catch::StartsWith("slack 300 mm|"));
}

TEST_CASE("rehearsal film: every picture says how fast it plays, and that it proves nothing", "[report]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  Recording recording = testing::sample_recording();
  const RecordingSubject subject{scene, model, recording, DisplayUnits::metric};
  const auto said = [&](std::size_t frame, int faster) {
    std::string all;
    for (const Item& item : make_rehearsal_picture(subject, frame, faster).items) {
      if (const Text* text = std::get_if<Text>(&item)) all += text->words + " ";
    }
    return all;
  };
  CHECK_THAT(said(40, 3), Catch::Contains("3 times as fast") && Catch::Contains("proves no clearance"));
  recording.events.push_back({7.5, RecordedEventKind::touch, "shoe", "beam", 3.5, 60.0});  // after the last frame
  CHECK_THAT(said(40, 1), Catch::Contains("7.50 s  shoe meets beam"));
  CHECK_THAT(said(39, 1), !Catch::Contains("shoe meets beam"));
  CHECK_THAT(said(39, 1),
             Catch::Contains("1.95 s") && Catch::Contains("truing \"bench\"") && !Catch::Contains("times as fast"));
}
