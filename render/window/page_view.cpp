#include <imgui.h>

#include "render/window/page.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

class ViewPage : public Page {
 public:
  const char* name() const override { return "View"; }
  int key() const override { return 5; }
  void show(Desk& desk) override {
    for (int k = 0; k < kBoardViews; ++k) {
      const auto view = static_cast<BoardView>(k);
      if (ImGui::RadioButton(view_name(view).data(), desk.view == view)) desk.view = view;
      if (k % 2 == 0) ImGui::SameLine(0.5F * ImGui::GetWindowWidth());
    }
    ImGui::Checkbox("Dimensions", &desk.show_dimensions);
    ImGui::SameLine(0.5F * ImGui::GetWindowWidth());
    ImGui::Checkbox("Sweep", &desk.show_sweep);
    ImGui::Checkbox("Findings", &desk.show_findings);
    ImGui::SameLine(0.5F * ImGui::GetWindowWidth());
    ImGui::Checkbox("Names", &desk.show_names);
    if (ImGui::Button("Fit")) desk.fit_asked = true;
    heading("Out");
    ImGui::SetNextItemWidth(-1.0F);
    const bool entered = text_field("##out", desk.out_name, ImGuiInputTextFlags_EnterReturnsTrue);
    if (ImGui::Button("Write it out") || entered) desk.write_asked = true;
    words("The picture as .svg, .pdf or .png; all moves as .webp, an animated picture, or .html, a page with a slider.",
          Ink::soft);
    heading("Keys");
    words("1 work, 2 findings, 3 measures, 4 rehearsal, 5 or F1 this page (with alt from within a field too). n next, b back, "
          "space run, home, end. Arrows lean and roll, shift with up and down folds, page up and page down fold the third section. h holds at touch, f next finding, a does its first cure. v next "
          "view, d the hook at full size, + - 0 zoom, ctrl with arrows shifts, o turns these keys to the other drawing, ctrl + and ctrl - for the size of all lettering. e writes the picture out, "
          "shift-e the page as text. Ctrl-f finds a measure, ctrl-z takes back, ctrl-y or ctrl-shift-z does again, ctrl-s saves, "
          "ctrl-shift-s under another name, ctrl-q closes. Tab walks through these notes, escape back to the picture.",
          Ink::soft);
  }
};

}  // namespace

std::unique_ptr<Page> view_page() { return std::make_unique<ViewPage>(); }

}  // namespace stowpath
