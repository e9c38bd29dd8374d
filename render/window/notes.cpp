#include "render/window/notes.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "render/report/words.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

constexpr const char* kCaution = "What is shown is the geometry as described. It approves no structure.";

constexpr float kLeastLines = 4.0F;    // of a page, whatever stands over and under it
constexpr float kFaultsShare = 0.25F;  // of the height, at most

constexpr ImGuiWindowFlags kFixed = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                                    ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoBringToFrontOnFocus |
                                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;

// Of the scene's file. However many: what stands under them stays in sight.
void faults(const Studio& studio) {
  std::vector<std::string> all;
  float height = 0.0F;
  for (const Diagnostic& fault : studio.faults()) {
    all.push_back("line " + std::to_string(fault.at.line) + ": " + (fault.key.empty() ? "" : fault.key + ": ") +
                  fault.problem);
    height += height_of(all.back());
  }
  const float most = kFaultsShare * ImGui::GetWindowHeight();
  if (height > most) {
    words(std::to_string(all.size()) + " faults, more than have room here: the list goes on further down.", Ink::red);
    ImGui::BeginChild("faults", {0.0F, most});
  }
  for (const std::string& fault : all) words(fault, Ink::red);
  if (height > most) ImGui::EndChild();
}

void verdict(const Desk& desk) {
  const Studio& studio = desk.studio;
  if (studio.proving()) {
    large_words("PROVING ...", Ink::line);
  } else {
    const Verdict found = studio.fit().verdict;
    large_words(std::string(verdict_word(found)), found == Verdict::clear ? Ink::line : Ink::red);
  }
  words(studio.model().name + (desk.table.sheet().unsaved() ? " (not saved)" : ""), Ink::soft);
  faults(studio);
}

void foot(const Desk& desk) {
  ImGui::Separator();
  if (!desk.message.empty()) words(desk.message, Ink::blue);
  words(kCaution, Ink::soft);
}

float foot_height(const Desk& desk) {
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  return gap + height_of(kCaution) + (desk.message.empty() ? 0.0F : height_of(desk.message));
}

}  // namespace

std::vector<std::unique_ptr<Page>> all_pages() {
  std::vector<std::unique_ptr<Page>> out;
  out.push_back(work_page());
  out.push_back(findings_page());
  out.push_back(measures_page());
  out.push_back(rehearsal_page());
  out.push_back(view_page());
  return out;
}

Notes::Notes() : pages_(all_pages()) {}

bool Notes::open(int digit) {
  for (std::size_t k = 0; k < pages_.size(); ++k) {
    if (pages_[k]->key() == digit) return open_ = k, true;
  }
  return false;
}

void Notes::question(Desk& desk) {
  const auto& asked = desk.table.question();
  if (!asked) return;
  words(asked->words, Ink::blue);
  const Question ways = *asked;
  if (ImGui::Button((ways.first + " (ctrl-enter)").c_str())) desk.table.answer(true);
  if (ImGui::Button((ways.second + " (ctrl-delete)").c_str())) desk.table.answer(false);
}

void Notes::naming(Desk& desk) {
  if (desk.naming && !naming_begun_) new_name_ = desk.table.file().empty() ? "scene.yaml" : desk.table.file();
  if (desk.naming) {
    words("Save under the name", Ink::blue);
    ImGui::SetNextItemWidth(-1.0F);
    if (!naming_begun_) ImGui::SetKeyboardFocusHere();
    const bool done = text_field("##name", new_name_, ImGuiInputTextFlags_EnterReturnsTrue);
    if (naming_begun_ && ImGui::IsItemDeactivated() && !done) desk.naming = false;
    if (done) {
      desk.table.save_as(new_name_);
      desk.naming = false;
    }
  }
  naming_begun_ = desk.naming;
}

// The open page has its name over it as well. No tooltip while what they say is written: a window that ends ends the log.
void Notes::tabs(float width) {
  float lettering = 0.0F;
  for (const auto& page : pages_) lettering += ImGui::CalcTextSize(page->name()).x;
  const float spare = (width - lettering) / static_cast<float>(pages_.size());
  const bool one_row = spare > 0.0F;
  const ImVec2 padding = ImGui::GetStyle().FramePadding;
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {one_row ? 0.0F : padding.x, padding.y});
  for (std::size_t k = 0; k < pages_.size(); ++k) {
    const char* name = pages_[k]->name();
    if (k > 0 && one_row) ImGui::SameLine(0.0F, 0.0F);
    if (k > 0 && !one_row) beside(name);
    ImGui::PushStyleColor(ImGuiCol_Button, shade(k == open_ ? Ink::wood : Ink::wall));
    if (ImGui::Button(name, {one_row ? ImGui::CalcTextSize(name).x + spare : 0.0F, 0.0F})) open_ = k;
    ImGui::PopStyleColor();
    if (!taking_down_ && ImGui::IsItemHovered()) ImGui::SetTooltip("Key %d", pages_[k]->key());
  }
  ImGui::PopStyleVar();
}

// The library writes down what its widgets say, those out of sight too.
void Notes::begin_taking_down() const {
  if (taking_down_) ImGui::LogToBuffer();
}

// Its buffer is empty once it has finished.
void Notes::end_taking_down() {
  if (!std::exchange(taking_down_, false)) return;
  taken_down_ = ImGui::GetCurrentContext()->LogBuffer.c_str();
  ImGui::LogFinish();
}

void Notes::show(Desk& desk, float left, float width, float height) {
  ImGui::SetNextWindowPos({left, 0.0F});
  ImGui::SetNextWindowSize({width, height});
  ImGui::Begin("notes", nullptr, kFixed);
  begin_taking_down();
  verdict(desk);
  question(desk);
  naming(desk);
  tabs(ImGui::GetContentRegionAvail().x);
  const float room = ImGui::GetContentRegionAvail().y - foot_height(desk);
  ImGui::BeginChild(pages_[open_]->name(), {0.0F, std::max(room, kLeastLines * ImGui::GetTextLineHeightWithSpacing())});
  heading(pages_[open_]->name());
  pages_[open_]->show(desk);
  ImGui::EndChild();
  foot(desk);
  end_taking_down();
  ImGui::End();
}

}  // namespace stowpath
