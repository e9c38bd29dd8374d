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
    if (ImGui::Button("Fit")) desk.fit_asked = true;
    ImGui::SameLine();
    if (ImGui::Button("Write it out")) desk.write_asked = true;
    ImGui::Checkbox("Sweep", &desk.show_sweep);
    ImGui::SameLine();
    ImGui::Checkbox("Findings", &desk.show_findings);
    ImGui::SameLine();
    ImGui::Checkbox("Names", &desk.show_names);
    heading("Keys");
    words("1 work, 2 findings, 3 measures, 5 this page (with alt from within a field too). n next, b back, space run, home, "
          "end. Arrows lean and roll, shift with up and down folds. h holds at touch, f next finding, a does its first cure, + - "
          "0 zoom, e writes the picture out, shift-e the page as text. Ctrl-f finds a measure, ctrl-z takes back, ctrl-y or "
          "ctrl-shift-z does again, ctrl-s saves, ctrl-shift-s under another name, ctrl-q closes. Tab walks through these "
          "notes, escape back to the picture.",
          Ink::soft);
  }
};

}  // namespace

std::unique_ptr<Page> view_page() { return std::make_unique<ViewPage>(); }

}  // namespace stowpath
