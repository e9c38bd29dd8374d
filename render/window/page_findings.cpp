#include <imgui.h>

#include <optional>

#include "render/report/remedy_words.h"
#include "render/report/words.h"
#include "render/window/page.h"
#include "render/window/words_on_notes.h"

namespace stowpath {
namespace {

// As the report says them, each with a button that makes the change.
void cures(Desk& desk, const Finding& found) {
  const Studio& studio = desk.studio;
  const Cures* of = cures_of(studio.cures(), found);
  if (of == nullptr) {
    if (studio.curing() && !studio.proving()) words("looking for cures ...", Ink::soft);
    return;
  }
  words(cures_heading(*of), Ink::soft);
  std::optional<Remedy> chosen;  // a copy: once done, the cures of the scene before are gone
  for (const Remedy& remedy : of->remedies) {
    if (ImGui::Button(("Do " + remedy.id).c_str())) chosen = remedy;
    words(remedy_sentence(remedy, found, studio.units()));
  }
  if (chosen) desk.apply(*chosen);
}

void finding(Desk& desk, std::size_t number) {
  Studio& studio = desk.studio;
  const Finding& found = studio.fit().findings[number];
  const bool chosen = studio.chosen_finding() == number;
  if (ImGui::Selectable((found.id + "##finding").c_str(), chosen)) studio.choose(number);
  ImGui::SameLine(42.0F * static_cast<float>(desk.scale));
  ImGui::BeginGroup();
  words(finding_sentence(found, studio.units()), chosen ? Ink::red : Ink::line);
  cures(desk, found);
  ImGui::EndGroup();
}

class FindingsPage : public Page {
 public:
  const char* name() const override { return "Findings"; }
  int key() const override { return 2; }
  void show(Desk& desk) override {
    const Studio& studio = desk.studio;
    if (studio.proving()) words("Of the scene before, while this one is proven:", Ink::blue);
    if (studio.fit().findings.empty()) words(studio.proving() ? "..." : "none");
    for (std::size_t i = 0; i < studio.fit().findings.size(); ++i) finding(desk, i);
  }
};

}  // namespace

std::unique_ptr<Page> findings_page() { return std::make_unique<FindingsPage>(); }

}  // namespace stowpath
