#include "render/command/recording_file.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "render/command/faults.h"
#include "render/command/scene_source.h"
#include "render/report/recording_report.h"
#include "sim/rehearsal/recording_text.h"
#include "tests/support/sample_recording.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using stowpath::testing::sample_recording;
using stowpath::testing::sample_scene;
using stowpath::testing::ScratchFolder;
using stowpath::testing::content;

namespace {

Recording of(const Model& model) {
  Recording recording = sample_recording();
  recording.scene = model.name;
  return recording;
}

}  // namespace

TEST_CASE("recording file: the name's ending says how it is drawn", "[command]") {
  const ScratchFolder folder;
  const Scene scene = sample_scene();
  const Model model = build_model(scene);
  Recording recording = of(model);
  recording.frames.resize(4);
  const RecordingSubject subject{scene, model, recording, DisplayUnits::metric};
  const std::vector<std::pair<std::string, std::string>> begins{
      {"a.svg", "<?xml"}, {"a.pdf", "%PDF"}, {"a.png", "\x89PNG"}, {"a.html", "<!DOCTYPE html>"}, {"a.webp", "RIFF"}};
  for (const auto& [name, head] : begins) {
    CHECK_NOTHROW(check_drawing_name(name));
    write_drawing(folder.file(name), subject);
    CHECK_THAT(content(folder.file(name)), StartsWith(head));
  }
  for (const char* name : {"run", "run.gif", ".html", "run.svg.txt"})
    CHECK_THROWS_AS(check_drawing_name(name), UsageFault);
}

TEST_CASE("recording file: what was kept is read again, of that scene alone", "[command]") {
  const ScratchFolder folder;
  const Model model = build_model(sample_scene());
  const Recording recording = of(model);
  const auto read = [&](const std::string& name, const std::string& input = "") {
    std::istringstream in(input);
    return read_recording_file(name, model, in);
  };
  write_recording_file(folder.file("run.txt"), recording);
  CHECK(write_recording(read(folder.file("run.txt"))) == write_recording(recording));
  CHECK(write_recording(read("-", write_recording(recording))) == write_recording(recording));
  Recording other = recording;
  other.scene = "elsewhere";
  write_recording_file(folder.file("other.txt"), other);
  CHECK_THROWS_WITH(read(folder.file("other.txt")), Contains("of another scene, \"elsewhere\""));
  std::ofstream(folder.file("broken.txt")) << "stowpath-recording 1\nscene a\n";
  CHECK_THROWS_AS(read(folder.file("broken.txt")), SceneFault);
  CHECK_THROWS_AS(read(folder.file("none.txt")), FileFault);
}

TEST_CASE("recording report: it tells what was recorded, and that it proves nothing", "[report]") {
  const Scene scene = sample_scene();
  const Model model = build_model(scene);
  const Recording recording = of(model);
  const RecordingSubject subject{scene, model, recording, DisplayUnits::metric};
  const std::string text = recording_text(subject, {});
  CHECK_THAT(text, StartsWith("REHEARSED: the procedure with --let-go 1s"));
  CHECK_THAT(text, Contains("1.95 s  caster meets truing \"bench\" at 1.25 m/s, 14 J"));
  CHECK(text.find("safe") == std::string::npos);
  CHECK_THAT(recording_json(subject), Contains("\"kind\": \"let-go\"") && Contains("stowpath.recording/1"));
}
