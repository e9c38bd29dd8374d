#include "render/report/rehearsal_page.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "render/paint/base64.h"
#include "tests/support/sample_recording.h"
#include "tests/support/sample_scene.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using Catch::Contains;
using stowpath::testing::sample_recording;
using stowpath::testing::sample_scene;

namespace {

std::string page(const Recording& recording) {
  const Scene scene = sample_scene();
  const Model model = build_model(scene);
  return rehearsal_page({scene, model, recording, DisplayUnits::metric});
}

std::string between(const std::string& text, const std::string& from, const std::string& to) {
  const std::size_t begin = text.find(from) + from.size();
  return text.substr(begin, text.find(to, begin) - begin);
}

nlohmann::json run_of(const std::string& html) { return nlohmann::json::parse(between(html, "const run=", ";\n")); }

}  // namespace

TEST_CASE("rehearsal page: it allows no network and asks nothing of one", "[report]") {
  const std::string html = page(sample_recording());
  CHECK_THAT(html, Contains("default-src 'none'"));
  for (const char* reach : {"http:", "https:", "src=", "@import", "<link", "fetch(", "XMLHttpRequest", "eval("})
    CHECK_THAT(html, !Contains(reach));
  // The one address in it is the font's own bytes.
  CHECK(html.find("url(") == html.rfind("url("));
  CHECK_THAT(html, Contains("url(data:font/ttf;base64,"));
}

TEST_CASE("rehearsal page: the drawings are well-formed, and no id stands twice", "[report]") {
  const std::string html = page(sample_recording());
  CHECK(testing::xml_fault("<main>" + between(html, "<main>", "</main>") + "</main>") == "");
}

TEST_CASE("rehearsal page: the script's frames are the recording's, in the drawing's millimetres", "[report]") {
  const Recording recording = sample_recording();
  const nlohmann::json run = run_of(page(recording));
  const auto& frames = run["frames"];
  REQUIRE(frames.size() > 5);
  CHECK(frames.size() <= recording.frames.size());
  CHECK(frames.front()[0].get<double>() == Approx(recording.frames.front().time));
  CHECK(frames.back()[0].get<double>() == Approx(recording.frames.back().time));
  const double metres = run["metres"].get<double>();
  for (const auto& frame : frames) {
    REQUIRE(frame.size() == 4 + 3 * 2 + 4);
    // The hinge is the first section's length away from the pivot, whatever the turn.
    const double dx = frame[7].get<double>() - frame[4].get<double>();
    const double dy = frame[8].get<double>() - frame[5].get<double>();
    CHECK(std::hypot(dx, dy) * metres == Approx(1.78).epsilon(1e-3));
    // On paper y runs down and turns go the other way round.
    CHECK(std::atan2(dy, dx) == Approx(frame[6].get<double>()).margin(1e-3));
  }
  CHECK(run["events"].size() == recording.events.size());
}

TEST_CASE("rehearsal page: a stair that is rolled is shown from above too, one that is not is not", "[report]") {
  Recording recording = sample_recording();
  CHECK(page(recording).find("id=\"above\"") == std::string::npos);
  for (RecordedFrame& frame : recording.frames) frame.station += 0.5 * frame.time;
  const std::string html = page(recording);
  CHECK(html.find("id=\"above\"") != std::string::npos);
  const nlohmann::json run = run_of(html);
  const auto& first = run["frames"].front();
  const auto& last = run["frames"].back();
  // Half a metre a second for two seconds, in the millimetres of the view from above.
  const double gone = (last[10].get<double>() - first[10].get<double>()) * run["planMetres"].get<double>();
  CHECK(gone == Approx(1.0).epsilon(1e-3));
  CHECK(testing::xml_fault("<main>" + between(html, "<main>", "</main>") + "</main>") == "");
}

TEST_CASE("rehearsal page: a stair that is brought elsewhere is put there, and the last thing is reached", "[report]") {
  Recording recording = sample_recording();
  CHECK(run_of(page(recording))["brought"].empty());
  for (RecordedFrame& frame : recording.frames) frame.station = frame.time < 1.2 ? 4.34 : 2.0;
  recording.events.insert(recording.events.end() - 2, {1.2, RecordedEventKind::brought, "", "", 2.0, 0.0});
  recording.events.push_back({7.5, RecordedEventKind::at_rest, "", "", 0.0, 0.0});
  const nlohmann::json run = run_of(page(recording));
  REQUIRE(run["brought"].size() == 1);
  const std::size_t at = run["brought"][0].get<std::size_t>();
  CHECK(run["frames"][at][0].get<double>() == Approx(1.2));
  CHECK(run["frames"][at - 1][0].get<double>() == Approx(1.15));
  CHECK(run["ends"].get<double>() == Approx(7.5));
}

TEST_CASE("rehearsal page: it says what is wrong, how good the numbers are and what was granted", "[report]") {
  Recording recording = sample_recording();
  recording.account = testing::sample_account();
  const std::string html = page(recording);
  CHECK_THAT(html, Contains("TROUBLE: 2 pairs of parts touch"));
  CHECK_THAT(html, Contains("<h2>How good the numbers are</h2>\n<p>Step 1/960 s. Energy from nowhere: at most 0.23 J"));
  CHECK_THAT(html, Contains("half the step") && Contains("<h2>Taken for granted</h2>\n<p>The rope is a guess.</p>"));
}

TEST_CASE("rehearsal page: the script draws a rope as hard as it is pulled", "[report]") {
  const nlohmann::json run = run_of(page(sample_recording()));
  CHECK(run["strongest"][0].get<double>() > 100.0);
  CHECK(run["frames"][0][2].get<double>() == Approx(180.0));
  CHECK(run["frames"][0][4 + 3 * 2 + 3].get<double>() == 0.0);  // the fold line's
}

TEST_CASE("rehearsal page: a name cannot break out of it", "[report]") {
  Recording recording = sample_recording();
  recording.options = "</script><script>alert(1)</script>";
  recording.events[2].other = "</script><b>&\"'";
  const std::string html = page(recording);
  CHECK(html.find("</script>") == html.rfind("</script>"));
  CHECK_THAT(html, !Contains("<b>"));
  CHECK(run_of(html)["events"][2][1].get<std::string>().find("</script><b>&\"'") != std::string::npos);
}

TEST_CASE("rehearsal page: every event can be jumped to, and trouble is marked by more than its colour", "[report]") {
  const std::string html = page(sample_recording());
  for (const char* id : {"event-0", "event-3", "section-0", "section-1", "slide", "play", "now"})
    CHECK_THAT(html, Contains("id=\"" + std::string(id) + "\""));
  CHECK_THAT(between(html, "id=\"event-2\"", "</li>"), Contains("✗"));
  CHECK_THAT(between(html, "id=\"event-0\"", "</li>"), !Contains("✗"));
}

// RFC 4648, section 10.
TEST_CASE("base64: the vectors of its standard", "[paint][published]") {
  const auto letters = [](const std::string& text) {
    const std::vector<unsigned char> bytes(text.begin(), text.end());
    return base64(bytes);
  };
  CHECK(letters("") == "");
  CHECK(letters("f") == "Zg==");
  CHECK(letters("fo") == "Zm8=");
  CHECK(letters("foo") == "Zm9v");
  CHECK(letters("foob") == "Zm9vYg==");
  CHECK(letters("fooba") == "Zm9vYmE=");
  CHECK(letters("foobar") == "Zm9vYmFy");
}
