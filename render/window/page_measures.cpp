#include <imgui.h>

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "render/studio/measures.h"
#include "render/window/page.h"
#include "render/window/words_on_notes.h"
#include "sim/trade/measure.h"

namespace stowpath {
namespace {

constexpr float kLabelShare = 0.5F;  // of a line
constexpr int kHelpLines = 6, kLeastLines = 4;
constexpr float kHelpShare = 0.4F;  // of the height, at most

std::string refusal_words(const RefusedEdit& refused, const std::string& stands) {
  const Diagnostic& fault = refused.faults.front();
  std::string out = "Not taken: ";
  if (fault.at.line > 0) out += "line " + std::to_string(fault.at.line) + ": ";
  if (!fault.key.empty()) out += fault.key + ": ";
  out += fault.problem;
  if (!fault.hint.empty()) out += "; " + fault.hint;
  return out + ". " + stands + " stands.";
}

bool pressed(ImGuiKey key) { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key), false); }

class MeasuresPage : public Page {
 public:
  const char* name() const override { return "Measures"; }
  int key() const override { return 3; }
  void show(Desk& desk) override {
    look_again(desk);
    file_buttons(desk);
    search(desk);
    const float room = ImGui::GetContentRegionAvail().y, line = ImGui::GetTextLineHeightWithSpacing();
    const float help = std::min(static_cast<float>(kHelpLines) * line, kHelpShare * room);
    ImGui::BeginChild("lines", {0.0F, std::max(room - help, static_cast<float>(kLeastLines) * line)});
    lines(desk);
    ImGui::EndChild();
    ImGui::Separator();
    if (explained_) words(measure_help(*explained_, bare(desk)), Ink::soft);
  }

 private:
  // A text that was not taken, in its field until it is mended.
  struct Refused {
    std::string text, words;
  };

  static LengthUnit bare(const Desk& desk) {
    return desk.studio.model().units == FileUnits::inches ? LengthUnit::inch : LengthUnit::millimetre;
  }

  // The lines follow the text, whoever changed it.
  void look_again(const Desk& desk) {
    const Worksheet& sheet = desk.table.sheet();
    if (sheet.text() == text_ && sheet.saved() == saved_) return;
    if (sheet.text() != own_text_) refused_.clear();
    text_ = sheet.text();
    saved_ = sheet.saved();
    lines_ = measure_lines(sheet.reading().draft, sheet.saved_draft());
  }

  void file_buttons(Desk& desk) {
    Worktable& table = desk.table;
    if (ImGui::Button("Take back")) table.undo();
    beside("Do again");
    if (ImGui::Button("Do again")) table.redo();
    beside("Save");
    if (ImGui::Button("Save")) desk.save();
    beside("Save as");
    if (ImGui::Button("Save as")) desk.ask_name();
  }

  void search(Desk& desk) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Find");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(-1.0F);
    if (std::exchange(desk.find_asked, false)) ImGui::SetKeyboardFocusHere();
    text_field("##find", search_, ImGuiInputTextFlags_AutoSelectAll);
    // Done with, it hands over to the first field that it found.
    first_asked_ = searching_ && (pressed(ImGuiKey_Tab) || pressed(ImGuiKey_Enter));
    searching_ = ImGui::IsItemActive();
  }

  void lines(Desk& desk) {
    std::string group;
    for (const MeasureLine& line : lines_) {
      // One that is typed in stays: without its field, what is typed next would be taken for commands.
      if (line.key != typed_in_ && !matches(line, search_)) continue;
      if (line.group != group) {
        ImGui::Spacing();
        words(line.group, Ink::blue);
        group = line.group;
      }
      ImGui::PushID(line.key.c_str());
      show_line(desk, line);
      ImGui::PopID();
    }
    if (group.empty()) words("Nothing of that name.", Ink::soft);
  }

  void show_line(Desk& desk, const MeasureLine& line) {
    const float column = kLabelShare * ImGui::GetContentRegionMax().x;
    const std::string label = line.in_file ? line.label : line.label + " (left out)";
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(label.c_str());
    if (ImGui::IsItemHovered()) explained_ = line;
    if (ImGui::CalcTextSize(label.c_str()).x < column) ImGui::SameLine(column);
    ImGui::SetNextItemWidth(-1.0F);
    if (std::exchange(first_asked_, false)) {
      ImGui::SetKeyboardFocusHere();
      desk.await_field();
    }
    if (const auto choices = choices_of(line); !choices.empty()) {
      choose(desk, line, choices);
    } else {
      field(desk, line);
    }
    if (ImGui::IsItemHovered() || ImGui::IsItemActive() || ImGui::IsItemFocused()) explained_ = line;
    if (line.changed()) words((line.saved.empty() ? "was left out" : "was " + line.saved) + ", not saved", Ink::blue);
    if (const auto refused = refused_.find(line.key); refused != refused_.end()) words(refused->second.words, Ink::red);
  }

  void choose(Desk& desk, const MeasureLine& line, const std::vector<std::string>& choices) {
    if (!ImGui::BeginCombo("##value", line.text.c_str())) return;
    for (const std::string& choice : choices) {
      if (ImGui::Selectable(choice.c_str(), choice == line.text)) take(desk, line, choice, false);
    }
    ImGui::EndCombo();
  }

  void field(Desk& desk, const MeasureLine& line) {
    const auto refused = refused_.find(line.key);
    std::string text = typed_in_ == line.key ? typed_ : refused != refused_.end() ? refused->second.text : line.text;
    const bool told = text_field("##value", text, ImGuiInputTextFlags_AutoSelectAll);
    if (typed_in_ == line.key && was_left_out_ && pressed(ImGuiKey_Escape)) {
      leave_out(desk, line);
    } else if (told) {
      take(desk, line, text, true);
    }
    if (ImGui::IsItemActive()) {
      if (typed_in_ != line.key) was_left_out_ = !line.in_file;
      typed_in_ = line.key;
      typed_ = text;
    } else if (typed_in_ == line.key) {
      typed_in_.clear();
      desk.table.end_typing();
    }
  }

  // The field itself goes back to the default's text; as a value of the file that would still be a change.
  void leave_out(Desk& desk, const MeasureLine& line) {
    desk.table.forget_typed(line.key);
    refused_.erase(line.key);
    own_text_ = desk.table.sheet().text();
  }

  void take(Desk& desk, const MeasureLine& line, const std::string& text, bool typing) {
    if (const auto refused = desk.table.set({line.key, trimmed(text)}, typing)) {
      refused_[line.key] = {text, refusal_words(*refused, line.text)};
    } else {
      refused_.erase(line.key);
    }
    own_text_ = desk.table.sheet().text();
  }

  std::vector<MeasureLine> lines_;
  std::string text_, saved_;  // that they are of
  std::string own_text_;      // the text after the last change made here
  std::string search_;
  bool searching_ = false, first_asked_ = false;
  std::string typed_in_, typed_;  // the key of the field that is typed in, and what
  bool was_left_out_ = false;     // by the file, when typing began
  std::map<std::string, Refused> refused_;
  std::optional<MeasureLine> explained_;
};

}  // namespace

std::unique_ptr<Page> measures_page() { return std::make_unique<MeasuresPage>(); }

}  // namespace stowpath
