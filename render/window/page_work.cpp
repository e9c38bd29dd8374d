#include <imgui.h>

#include <algorithm>

#include "render/report/words.h"
#include "render/studio/scene_picture.h"
#include "render/window/page.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

std::string slip(const Model& model, const DryFit& fit, bool old, std::size_t k) {
  const Move& move = model.moves[k];
  std::string out = is_state(move.kind) ? "" : std::to_string(move.index) + "  ";
  out += std::string(move_name(move.kind));
  if (k < fit.moves.size()) out += std::string("  ") + mark(fit.moves[k].verdict) + (old ? " before" : "");
  return out + "##move" + std::to_string(k);
}

void slips(Desk& desk) {
  Studio& studio = desk.studio;
  const Model& model = studio.model();
  for (std::size_t k = 0; k < model.moves.size(); ++k) {
    if (!ImGui::Selectable(slip(model, studio.fit(), studio.proving(), k).c_str(), studio.place().move == k)) continue;
    desk.running = false;
    studio.go({k, is_state(model.moves[k].kind) ? 0.0 : 1.0});
  }
}

void transport(Desk& desk) {
  Studio& studio = desk.studio;
  if (ImGui::Button("Back")) desk.running = false, studio.back();
  beside("Pause");
  if (ImGui::Button(desk.running ? "Pause" : "Run")) desk.toggle_running();
  beside("Forward");
  if (ImGui::Button("Forward")) desk.running = false, studio.forward();
  beside("speed -2.0");
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::SliderFloat("##speed", &desk.speed, -2.0F, 2.0F, "speed %.1f");
  auto progress = static_cast<float>(studio.place().progress);
  ImGui::SetNextItemWidth(-1.0F);
  if (!ImGui::SliderFloat("##progress", &progress, 0.0F, 1.0F, "through the move: %.2f")) return;
  desk.running = false;
  studio.go({studio.place().move, static_cast<double>(std::clamp(progress, 0.0F, 1.0F))});
}

void nearest(const Studio& studio) {
  if (const auto& near = studio.news().closest) {
    words(near->parts[0] + " to " + near->parts[1] + ": " + least_distance_text(*near, studio.units()),
          near->clearance < near->needed ? Ink::red : Ink::line);
  }
  for (const PoseMeeting& met : studio.news().met) {
    if (met.kinds[1] == PartKind::zone) words(met.parts[0] + " in keep-clear zone " + met.parts[1], Ink::red);
  }
}

void here(Desk& desk) {
  heading("Here");
  Studio& studio = desk.studio;
  const Configuration& pose = studio.pose();
  words("station " + place_text(Nominal{pose.station}, studio.units()) + ", " +
        pose_text(studio.model().linkage, pose) + (studio.on_procedure() ? "" : " (by hand)"));
  nearest(studio);
  ImGui::Checkbox("Hold at touch", &studio.hold_at_touch);
  if (studio.held_by())
    words("held: " + studio.held_by()->parts[0] + " touches " + studio.held_by()->parts[1], Ink::red);
  words(desk.pointed_at.empty() ? "Pointer: on nothing" : "Pointer: " + desk.pointed_at, Ink::soft);
}

class WorkPage : public Page {
 public:
  const char* name() const override { return "Work"; }
  int key() const override { return 1; }
  void show(Desk& desk) override {
    words("Order of work", Ink::soft);
    slips(desk);
    transport(desk);
    here(desk);
  }
};

}  // namespace

std::unique_ptr<Page> work_page() { return std::make_unique<WorkPage>(); }

}  // namespace stowpath
