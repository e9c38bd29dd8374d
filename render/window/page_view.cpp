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
    key_lines({{"1 to 5", "a page of these notes; with alt from within a field too"},
               {"F1", "this page"},
               {"n, b", "next, back"},
               {"space", "run through the moves, pause"},
               {"home, end", "to the first, to the last"},
               {"arrows", "lean and roll; with shift, up and down fold"},
               {"page keys", "page up and page down fold the third section"},
               {"h", "hold at touch"},
               {"f", "next finding; with shift the one before"},
               {"a", "make its first cure's change"},
               {"r", "rehearse"},
               {"v, d", "next view, the hook at full size"},
               {"+ - 0", "zoom, show all"},
               {"ctrl-arrows", "shift the drawing"},
               {"o", "zoom and shift the other drawing"},
               {"ctrl + -", "size of all lettering"},
               {"e, shift-e", "write the picture out, the page as text"},
               {"ctrl-f", "find a measure"},
               {"ctrl-z, -y", "take back, do again"},
               {"ctrl-s", "save; with shift under another name"},
               {"ctrl-q", "close"},
               {"tab", "walk through these notes; escape back to the picture"}});
  }
};

}  // namespace

std::unique_ptr<Page> view_page() { return std::make_unique<ViewPage>(); }

}  // namespace stowpath
