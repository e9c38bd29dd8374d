#include <imgui.h>

#include <algorithm>
#include <array>

#include "render/report/recording_words.h"
#include "render/report/words.h"
#include "sim/trade/figure.h"
#include "render/window/page.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

constexpr std::array<const char*, kRehearsalSpeeds.size()> kSpeedWords{"1/4", "1/2", "1", "2", "4"};

void transport(RehearsalDesk& desk, const Studio& studio) {
  const bool goes = desk.running() || desk.winding();
  if (ImGui::Button(goes ? "Pause" : desk.live_time() > 0.0 ? "Go on" : "Start")) desk.toggle(studio.on_table());
  beside("Frame");
  if (ImGui::Button("Frame")) desk.step(1);
  beside("Over again");
  if (ImGui::Button("Over again")) desk.start_over(studio.on_table());
  label("speed");
  for (std::size_t k = 0; k < kRehearsalSpeeds.size(); ++k) {
    beside(kSpeedWords[k], true);
    if (ImGui::RadioButton(kSpeedWords[k], desk.speed == kRehearsalSpeeds[k])) desk.speed = kRehearsalSpeeds[k];
  }
}

void time_slider(RehearsalDesk& desk) {
  auto time = static_cast<float>(desk.shown_time());
  const std::string all = "%.2f of " + format_decimal(Nominal{desk.live_time()}, 2) + " s";
  ImGui::SetNextItemWidth(-1.0F);
  if (ImGui::SliderFloat("##time", &time, 0.0F, static_cast<float>(std::max(desk.live_time(), 0.01)), all.c_str()))
    desk.show(static_cast<double>(time));
  if (!desk.wound_back()) return;
  if (ImGui::Button("Take it up from here")) desk.take_up();
  beside("Back to now");
  if (ImGui::Button("Back to now")) desk.show_live();
}

void state(const RehearsalDesk& desk, unsigned edition) {
  if (desk.edition() != edition) {
    words("The scene was changed since: what runs is the scene as it was. Over again, or shift-r, takes up the new one.",
          Ink::red);
  }
  if (desk.winding()) words("Running on ...", Ink::blue);
  if (desk.lags()) words("Slower than asked for: this machine takes longer.", Ink::red);
  if (!desk.message().empty()) words(desk.message(), Ink::blue);
}

void to_move(RehearsalDesk& desk) {
  heading("To a move");
  const Model& model = desk.run().model();
  const int now = desk.shown().frame.move;
  for (std::size_t k = 0; k < model.moves.size(); ++k) {
    const Move& move = model.moves[k];
    if (is_state(move.kind)) continue;
    const auto begins = desk.run().begins(static_cast<int>(k));
    const std::string slip = std::to_string(move.index) + "  " + std::string(move_name(move.kind)) +
                             (begins ? ", from " + time_text(Nominal{*begins}) : "") + "##to" + std::to_string(k);
    if (ImGui::Selectable(slip.c_str(), now == static_cast<int>(k))) desk.go_to_move(static_cast<int>(k));
  }
}

// Taking another pin out begins the run again: it stands without it from the start.
void without_pin(RehearsalDesk& desk, const Studio& studio) {
  const int hinges = studio.model().linkage.sections - 1;
  if (hinges < 1) return;
  label("without pin");
  for (int k = 0; k <= hinges; ++k) {
    const std::string name = k == 0 ? "none" : std::to_string(k);
    beside(name, true);
    if (!ImGui::RadioButton(name.c_str(), desk.without_pin == k)) continue;
    desk.without_pin = k;
    if (desk.begun()) desk.start_over(studio.on_table());
  }
}

void what_if(RehearsalDesk& desk) {
  heading("What if");
  if (ImGui::Button("Let go of the line")) desk.let_go();
  beside("It breaks");
  if (ImGui::Button("It breaks")) desk.break_line();
  const float width = -5.0F * ImGui::GetFontSize();
  ImGui::SetNextItemWidth(width);
  text_field("##push", desk.push_words);
  ImGui::SameLine();
  if (ImGui::Button("Push")) desk.push();
  ImGui::SetNextItemWidth(width);
  text_field("##gust", desk.gust_words);
  ImGui::SameLine();
  if (ImGui::Button("Gust")) desk.gust();
}

void what_happened(RehearsalDesk& desk) {
  heading("What happened");
  const LiveRun& run = desk.run();
  const DisplayUnits units = units_of(run.scene());
  const auto told = told_events(run.report().recording);
  if (told.empty()) words("nothing yet");
  for (std::size_t i = told.size(); i-- > 0;) {  // the latest first
    const bool trouble = is_trouble(told[i]);
    if (ImGui::Selectable((time_text(Nominal{told[i].time}) + "##event" + std::to_string(i)).c_str(), false))
      desk.show(told[i].time);
    ImGui::SameLine(5.0F * ImGui::GetFontSize());
    ImGui::BeginGroup();
    words(event_sentence(told[i], units) + (trouble ? " \xE2\x9C\x97" : ""), trouble ? Ink::red : Ink::line);
    ImGui::EndGroup();
  }
  if (const std::string then = desk.what_then(); !then.empty()) words(then, Ink::red);
}

void keep(RehearsalDesk& desk) {
  heading("Keep it");
  ImGui::SetNextItemWidth(-5.0F * ImGui::GetFontSize());
  text_field("##file", desk.file);
  ImGui::SameLine();
  if (ImGui::Button("Write##run")) desk.write(units_of(desk.run().scene()));
  words(".txt as a recording, .html as a page that runs, .webp as a film, .svg, .pdf or .png as a sheet", Ink::soft);
}

void keys() {
  heading("Keys");
  key_lines({{"r, space", "start, pause"},
             {"shift-r", "over again"},
             {"n, b", "a frame on, back; with shift a second"},
             {"home, end", "the start; as far as it ran"},
             {"+ - 0", "zoom, show all"},
             {"ctrl-arrows", "shift"},
             {"[ ]", "slower, faster"},
             {"t", "take it up from the time shown"},
             {"l, k", "let go of the line, break it"},
             {"p, g", "push, blow"},
             {"w", "write the run"},
             {"drag", "the stair to push it by hand, the gauges to wind back"}});
}

class RehearsalPage : public Page {
 public:
  const char* name() const override { return "Rehearsal"; }
  int key() const override { return 4; }
  bool rehearses() const override { return true; }
  void show(Desk& desk) override {
    RehearsalDesk& rehearsal = desk.rehearsal;
    transport(rehearsal, desk.studio);
    without_pin(rehearsal, desk.studio);
    if (!rehearsal.begun()) {
      if (!rehearsal.message().empty()) words(rehearsal.message(), Ink::red);
      return words(
          "The physics of the procedure, run before your eyes: a crew hooks on, pulls the pin and hauls. Start it with "
          "the "
          "button or with r.",
          Ink::soft);
    }
    time_slider(rehearsal);
    state(rehearsal, desk.studio.edition());
    what_if(rehearsal);
    to_move(rehearsal);
    what_happened(rehearsal);
    keep(rehearsal);
    keys();
  }
};

}  // namespace

std::unique_ptr<Page> rehearsal_page() { return std::make_unique<RehearsalPage>(); }

}  // namespace stowpath
