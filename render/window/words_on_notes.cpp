#include "render/window/words_on_notes.h"

#include <imgui.h>
#include <imgui_stdlib.h>

#include <utility>
#include <vector>

#include "render/report/wrap.h"

namespace stowpath {
namespace {

std::vector<std::string> lines_of(const std::string& text, float width) {
  std::vector<std::string> out;
  std::string line;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = next_break(text, start);
    const std::string word = text.substr(start, end - start), longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && ImGui::CalcTextSize(longer.c_str()).x > width) {
      out.push_back(std::exchange(line, word));
    } else {
      line = longer;
    }
    start = end + 1;
  }
  out.push_back(line);
  return out;
}

constexpr float kKeysColumn = 5.5F;  // [letter heights]

ImFont* large() { return ImGui::GetIO().Fonts->Fonts[1]; }

}  // namespace

void words(const std::string& text) {
  for (const std::string& line : lines_of(text, ImGui::GetContentRegionAvail().x)) ImGui::TextUnformatted(line.c_str());
}

void words(const std::string& text, Ink ink) {
  ImGui::PushStyleColor(ImGuiCol_Text, shade(ink));
  words(text);
  ImGui::PopStyleColor();
}

void large_words(const std::string& text, Ink ink) {
  ImGui::PushFont(large());
  words(text, ink);
  ImGui::PopFont();
}

float height_of(const std::string& text) {
  const std::size_t lines = lines_of(text, ImGui::GetContentRegionAvail().x).size();
  return static_cast<float>(lines) * ImGui::GetTextLineHeightWithSpacing();
}

bool text_field(const char* id, std::string& text, int flags) { return ImGui::InputText(id, &text, flags); }

void label(const char* text) {
  ImGui::AlignTextToFramePadding();
  words(text, Ink::soft);
}

void beside(const std::string& name, bool round) {
  const ImGuiStyle& style = ImGui::GetStyle();
  const float frame = round ? ImGui::GetFrameHeight() + style.ItemInnerSpacing.x : 2.0F * style.FramePadding.x;
  const float end = ImGui::GetItemRectMax().x + style.ItemSpacing.x + frame + ImGui::CalcTextSize(name.c_str()).x;
  if (end <= ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x) ImGui::SameLine();
}

void key_lines(const std::vector<std::pair<std::string, std::string>>& lines) {
  for (const auto& [keys, does] : lines) {
    ImGui::TextUnformatted(keys.c_str());
    ImGui::SameLine(kKeysColumn * ImGui::GetFontSize());
    ImGui::BeginGroup();
    words(does, Ink::soft);
    ImGui::EndGroup();
  }
}

void heading(const char* text) {
  ImGui::Spacing();
  ImGui::PushFont(large());
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

}  // namespace stowpath
