#include <imgui.h>

#include "render/report/words.h"
#include "render/window/page.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

void finding(Desk& desk, std::size_t number) {
  Studio& studio = desk.studio;
  const Finding& found = studio.fit().findings[number];
  const bool chosen = studio.chosen_finding() == number;
  if (ImGui::Selectable((found.id + "##finding").c_str(), chosen)) studio.choose(number);
  ImGui::SameLine(42.0F * static_cast<float>(desk.scale));
  ImGui::BeginGroup();
  words(finding_sentence(found, studio.units()), chosen ? Ink::red : Ink::line);
  ImGui::EndGroup();
}

class FindingsPage : public Page {
 public:
  const char* name() const override { return "Findings"; }
  int key() const override { return 2; }
  void show(Desk& desk) override {
    const DryFit& fit = desk.studio.fit();
    if (fit.findings.empty()) words(desk.studio.proving() ? "..." : "none");
    for (std::size_t i = 0; i < fit.findings.size(); ++i) finding(desk, i);
  }
};

}  // namespace

std::unique_ptr<Page> findings_page() { return std::make_unique<FindingsPage>(); }

}  // namespace stowpath
