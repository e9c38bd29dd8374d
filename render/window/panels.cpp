#include <imgui.h>

#include <algorithm>

#include "render/report/words.h"
#include "render/report/wrap.h"
#include "render/window/shade.h"
#include "render/window/viewer.h"

namespace stowpath {
namespace {

// Broken as the reports are, so that no number is parted from its unit.
void words(const std::string& text) {
  const float width = ImGui::GetContentRegionAvail().x;
  std::string line;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = next_break(text, start);
    const std::string word = text.substr(start, end - start), longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && ImGui::CalcTextSize(longer.c_str()).x > width) {
      ImGui::TextUnformatted(line.c_str());
      line = word;
    } else {
      line = longer;
    }
    start = end + 1;
  }
  ImGui::TextUnformatted(line.c_str());
}

void words(const std::string& text, Ink ink) {
  ImGui::PushStyleColor(ImGuiCol_Text, shade(ink));
  words(text);
  ImGui::PopStyleColor();
}

void heading(const char* text) {
  ImGui::Spacing();
  ImGui::PushFont(ImGui::GetIO().Fonts->Fonts[1]);
  ImGui::TextUnformatted(text);
  ImGui::PopFont();
  ImGui::Separator();
}

const char* mark(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return "\xE2\x9C\x93";
    case Verdict::interference:
      return "\xE2\x9C\x97";
    case Verdict::undecided:
      return "?";
  }
  return "";
}

std::string slip(const Model& model, const DryFit& fit, std::size_t k) {
  const Move& move = model.moves[k];
  std::string out = is_state(move.kind) ? "" : std::to_string(move.index) + "  ";
  out += std::string(move_name(move.kind));
  if (k < fit.moves.size()) {
    const MoveResult& r = fit.moves[k];
    out += std::string("  ") + mark(r.verdict);
  }
  return out + "##move" + std::to_string(k);
}

}  // namespace

void Viewer::panel() {
  const sf::Vector2u size = window_.getSize();
  const auto width = static_cast<float>(panel_width());
  ImGui::SetNextWindowPos({static_cast<float>(size.x) - width, 0.0F});
  ImGui::SetNextWindowSize({width, static_cast<float>(size.y)});
  constexpr ImGuiWindowFlags kFixed = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                                      ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoBringToFrontOnFocus;
  ImGui::Begin("notes", nullptr, kFixed);
  panel_verdict();
  panel_moves();
  panel_transport();
  panel_pose();
  panel_findings();
  panel_out();
  ImGui::End();
}

void Viewer::panel_verdict() {
  ImGui::PushFont(ImGui::GetIO().Fonts->Fonts[1]);
  if (studio_.proving()) {
    words("PROVING ...");
  } else {
    const Verdict verdict = studio_.fit().verdict;
    words(std::string(verdict_word(verdict)), verdict == Verdict::clear ? Ink::line : Ink::red);
  }
  ImGui::PopFont();
  words(studio_.model().name, Ink::soft);
  for (const Diagnostic& fault : studio_.faults())
    words("line " + std::to_string(fault.at.line) + ": " + fault.problem, Ink::red);
}

void Viewer::panel_moves() {
  heading("Order of work");
  const Model& model = studio_.model();
  for (std::size_t k = 0; k < model.moves.size(); ++k) {
    const bool here = studio_.place().move == k;
    if (ImGui::Selectable(slip(model, studio_.fit(), k).c_str(), here)) {
      running_ = false;
      studio_.go({k, is_state(model.moves[k].kind) ? 0.0 : 1.0});
    }
  }
}

void Viewer::panel_transport() {
  if (ImGui::Button("Back")) running_ = false, studio_.back();
  ImGui::SameLine();
  if (ImGui::Button(running_ ? "Pause" : "Run")) running_ = !running_;
  ImGui::SameLine();
  if (ImGui::Button("Forward")) running_ = false, studio_.forward();
  ImGui::SameLine();
  ImGui::SetNextItemWidth(-1.0F);
  ImGui::SliderFloat("##speed", &speed_, -2.0F, 2.0F, "speed %.1f");
  auto progress = static_cast<float>(studio_.place().progress);
  ImGui::SetNextItemWidth(-1.0F);
  if (ImGui::SliderFloat("##progress", &progress, 0.0F, 1.0F, "through the move: %.2f")) {
    running_ = false;
    studio_.go({studio_.place().move, static_cast<double>(std::clamp(progress, 0.0F, 1.0F))});
  }
}

void Viewer::panel_pose() {
  heading("Here");
  const Configuration& pose = studio_.pose();
  words("station " + place_text(pose.station, studio_.units()) + ", " +
        poses_text(studio_.model().linkage, pose, pose) + (studio_.on_procedure() ? "" : " (by hand)"));
  if (const auto& near = studio_.news().closest) {
    const std::string size = format_small_length(std::abs(near->clearance), studio_.units());
    words(near->parts[0] + " to " + near->parts[1] + ": " + (near->clearance < 0.0 ? size + " deep" : size),
          near->clearance < near->needed ? Ink::red : Ink::line);
  }
  for (const PoseMeeting& met : studio_.news().met) {
    if (met.kinds[1] == PartKind::zone) words(met.parts[0] + " in keep-clear zone " + met.parts[1], Ink::red);
  }
  ImGui::Checkbox("Hold at touch", &studio_.hold_at_touch);
  if (studio_.held_by())
    words("held: " + studio_.held_by()->parts[0] + " touches " + studio_.held_by()->parts[1], Ink::red);
  const std::string under_pointer =
      on_side(pointer_)
          ? part_at(studio_.model(), pose, under(frame_, pointer_), 0.001 * frame_.scale.ratio)
          : std::string();
  words(under_pointer.empty() ? "Pointer: on nothing" : "Pointer: " + under_pointer, Ink::soft);
}

void Viewer::panel_findings() {
  heading("Findings");
  const DryFit& fit = studio_.fit();
  if (fit.findings.empty()) words(studio_.proving() ? "..." : "none");
  for (std::size_t i = 0; i < fit.findings.size(); ++i) {
    const Finding& finding = fit.findings[i];
    const bool chosen = studio_.chosen_finding() == i;
    if (ImGui::Selectable((finding.id + "##finding").c_str(), chosen)) studio_.choose(i);
    ImGui::SameLine(42.0F * static_cast<float>(options_.scale));
    ImGui::BeginGroup();
    words(finding_sentence(finding, studio_.units()), chosen ? Ink::red : Ink::line);
    ImGui::EndGroup();
  }
}

void Viewer::panel_out() {
  heading("View");
  if (ImGui::Button("Fit")) fit_view();
  ImGui::SameLine();
  if (ImGui::Button("Write it out")) export_side();
  ImGui::Checkbox("Sweep", &show_sweep_);
  ImGui::SameLine();
  ImGui::Checkbox("Findings", &show_findings_);
  ImGui::SameLine();
  ImGui::Checkbox("Names", &show_names_);
  if (!message_.empty()) words(message_, Ink::blue);
  words("Keys: n next, b back, space run, home, end. Arrows lean and roll, shift with up and down folds. h holds at "
        "touch, f next finding, + - 0 zoom, e writes out, ctrl-q closes. Tab walks through these notes, escape back to the picture.",
        Ink::soft);
  words("What is shown is the geometry as described. It approves no structure.", Ink::soft);
}

}  // namespace stowpath
