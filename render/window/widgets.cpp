#include "render/window/widgets.h"

#include <SFML/OpenGL.hpp>
#include <SFML/Window/Clipboard.hpp>
#include <algorithm>
#include <array>
#include <fstream>
#include <initializer_list>
#include <string>
#include <utility>

#include <imgui.h>
#include <imgui/backends/imgui_impl_opengl2.h>

#include "render/paint/font.h"
#include "render/window/shade.h"

namespace stowpath {
namespace {

constexpr int kLeaving = 3;  // frames until a field that was left no longer wants what is typed
constexpr float kTextSize = 15.0F, kHeadingSize = 19.0F;  // [pixels at scale 1]

// Primes, fraction slash, minus, tick and cross beside what Latin text needs.
constexpr std::array<ImWchar, 13> kLetters{0x0020, 0x017F, 0x2010, 0x2044, 0x2150, 0x215F, 0x2190,
                                           0x2193, 0x2212, 0x2212, 0x2713, 0x2717, 0};

constexpr std::array<std::pair<int, sf::Keyboard::Key>, 22> kKeys{{{ImGuiKey_Tab, sf::Keyboard::Tab},
                                                                   {ImGuiKey_LeftArrow, sf::Keyboard::Left},
                                                                   {ImGuiKey_RightArrow, sf::Keyboard::Right},
                                                                   {ImGuiKey_UpArrow, sf::Keyboard::Up},
                                                                   {ImGuiKey_DownArrow, sf::Keyboard::Down},
                                                                   {ImGuiKey_PageUp, sf::Keyboard::PageUp},
                                                                   {ImGuiKey_PageDown, sf::Keyboard::PageDown},
                                                                   {ImGuiKey_Home, sf::Keyboard::Home},
                                                                   {ImGuiKey_End, sf::Keyboard::End},
                                                                   {ImGuiKey_Insert, sf::Keyboard::Insert},
                                                                   {ImGuiKey_Delete, sf::Keyboard::Delete},
                                                                   {ImGuiKey_Backspace, sf::Keyboard::Backspace},
                                                                   {ImGuiKey_Space, sf::Keyboard::Space},
                                                                   {ImGuiKey_Enter, sf::Keyboard::Enter},
                                                                   {ImGuiKey_KeyPadEnter, sf::Keyboard::Enter},
                                                                   {ImGuiKey_Escape, sf::Keyboard::Escape},
                                                                   {ImGuiKey_A, sf::Keyboard::A},
                                                                   {ImGuiKey_C, sf::Keyboard::C},
                                                                   {ImGuiKey_V, sf::Keyboard::V},
                                                                   {ImGuiKey_X, sf::Keyboard::X},
                                                                   {ImGuiKey_Y, sf::Keyboard::Y},
                                                                   {ImGuiKey_Z, sf::Keyboard::Z}}};

// Every colour is set, so that nothing is left of how the library comes.
void paint_style(ImGuiStyle& style) {
  for (ImVec4& colour : style.Colors) colour = shade(Ink::line, 0.0F);
  const auto set = [&](std::initializer_list<ImGuiCol> which, const ImVec4& colour) {
    for (const ImGuiCol k : which) style.Colors[k] = colour;
  };
  set({ImGuiCol_Text, ImGuiCol_CheckMark, ImGuiCol_SliderGrab, ImGuiCol_SliderGrabActive, ImGuiCol_ScrollbarGrabActive},
      shade(Ink::line));
  set({ImGuiCol_TextDisabled, ImGuiCol_ScrollbarGrabHovered}, shade(Ink::soft));
  set({ImGuiCol_WindowBg, ImGuiCol_ChildBg, ImGuiCol_PopupBg, ImGuiCol_TableRowBg}, shade(Ink::paper));
  set({ImGuiCol_Border, ImGuiCol_Separator, ImGuiCol_ScrollbarGrab, ImGuiCol_TableBorderLight}, shade(Ink::faint));
  set({ImGuiCol_FrameBg, ImGuiCol_Button, ImGuiCol_HeaderHovered}, shade(Ink::wall));
  set({ImGuiCol_FrameBgHovered, ImGuiCol_FrameBgActive, ImGuiCol_ButtonHovered, ImGuiCol_ButtonActive, ImGuiCol_Header,
       ImGuiCol_HeaderActive},
      shade(Ink::wood));
  set({ImGuiCol_NavHighlight}, shade(Ink::blue));
  set({ImGuiCol_TextSelectedBg}, shade(Ink::blue, 0.35F));
}

ImFont* add_file(const char* file, float size) {
  return ImGui::GetIO().Fonts->AddFontFromFileTTF(file, size, nullptr, kLetters.data());
}

ImFont* add_lettering(float size) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  const auto bytes = lettering_font();
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(bytes.data()),
                                                    static_cast<int>(bytes.size()), size, &config, kLetters.data());
}

bool file_exists(const char* file) { return std::ifstream(file).good(); }

bool is_letter(sf::Keyboard::Key key) { return key >= sf::Keyboard::A && key <= sf::Keyboard::Z; }

// The library looks once a frame at which keys are down. What is typed reaches it as text besides; what edits and walks
// does not.
bool must_be_seen(const sf::Event::KeyEvent& key) {
  const bool known = std::any_of(kKeys.begin(), kKeys.end(), [&](const auto& pair) { return pair.second == key.code; });
  return known && (key.control || key.alt || !is_letter(key.code));
}

bool leaves_field(sf::Keyboard::Key key) {
  return key == sf::Keyboard::Escape || key == sf::Keyboard::Enter || key == sf::Keyboard::Tab;
}

void put_clipboard(void*, const char* text) {
  const std::string words(text);
  sf::Clipboard::setString(sf::String::fromUtf8(words.begin(), words.end()));
}

const char* get_clipboard(void*) {
  static std::string kept;  // outlives the pointer handed out
  const auto bytes = sf::Clipboard::getString().toUtf8();
  kept.assign(bytes.begin(), bytes.end());
  return kept.c_str();
}

}  // namespace

Widgets::Widgets(sf::RenderWindow& window, float scale) : window_(window) {
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  for (const auto& [widget, key] : kKeys) io.KeyMap[widget] = key;
  io.SetClipboardTextFn = put_clipboard;
  io.GetClipboardTextFn = get_clipboard;
  window_.setActive(true);
  ImGui_ImplOpenGL2_Init();
  rescale(scale);
}

// On a fresh style: its sizes would be scaled again and again.
void Widgets::rescale(float scale) {
  ImGui::GetIO().Fonts->Clear();
  if (file_exists(kTextFont)) {
    add_file(kTextFont, kTextSize * scale);
  } else {
    add_lettering(kTextSize * scale);
  }
  add_lettering(kHeadingSize * scale);
  window_.setActive(true);
  ImGui_ImplOpenGL2_DestroyFontsTexture();
  ImGui_ImplOpenGL2_CreateFontsTexture();
  ImGuiStyle& style = ImGui::GetStyle();
  style = ImGuiStyle();
  style.WindowRounding = style.FrameRounding = style.GrabRounding = style.ScrollbarRounding = 1.0F;
  style.FrameBorderSize = 1.0F;
  style.ScaleAllSizes(scale);
  paint_style(style);
}

Widgets::~Widgets() {
  window_.setActive(true);
  ImGui_ImplOpenGL2_Shutdown();
  ImGui::DestroyContext();
}

bool Widgets::take_key(const sf::Event& event) {
  ImGuiIO& io = ImGui::GetIO();
  const bool pressed = event.type == sf::Event::KeyPressed;
  io.KeyCtrl = event.key.control;
  io.KeyShift = event.key.shift;
  io.KeyAlt = event.key.alt;
  if (event.key.code < 0) return io.WantCaptureKeyboard;
  if (pressed && event.key.code == sf::Keyboard::Tab) walk(true);
  if (pressed && event.key.code == sf::Keyboard::Escape) walk(false);
  io.KeysDown[event.key.code] = pressed;
  if (must_be_seen(event.key)) waits_ = std::max(waits_, pressed && io.WantTextInput && leaves_field(event.key.code) ? kLeaving : 1);
  return io.WantTextInput || walked_;
}

// Arrows and the like belong to the picture until Tab asks for the widgets, and again once the picture is clicked.
void Widgets::walk(bool on) {
  ImGuiIO& io = ImGui::GetIO();
  walked_ = on;
  if (on) io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  if (!on) io.ConfigFlags &= ~ImGuiConfigFlags_NavEnableKeyboard;
}

bool Widgets::take(const sf::Event& event) {
  ImGuiIO& io = ImGui::GetIO();
  switch (event.type) {
    case sf::Event::KeyPressed:
    case sf::Event::KeyReleased:
      return take_key(event);
    case sf::Event::TextEntered:
      if (event.text.unicode >= 32 && event.text.unicode != 127) io.AddInputCharacter(event.text.unicode);
      return io.WantTextInput;
    case sf::Event::MouseMoved:
      io.MousePos = {static_cast<float>(event.mouseMove.x), static_cast<float>(event.mouseMove.y)};
      return io.WantCaptureMouse;
    case sf::Event::MouseButtonPressed:
    case sf::Event::MouseButtonReleased: {
      const auto button = static_cast<std::size_t>(event.mouseButton.button);
      const bool down = event.type == sf::Event::MouseButtonPressed;
      if (button >= kButtons) return false;
      io.MousePos = {static_cast<float>(event.mouseButton.x), static_cast<float>(event.mouseButton.y)};
      held_[button] = down;
      clicked_[button] = clicked_[button] || down;
      if (down && !io.WantCaptureMouse) walk(false);
      return io.WantCaptureMouse;
    }
    case sf::Event::MouseWheelScrolled:
      (event.mouseWheelScroll.wheel == sf::Mouse::VerticalWheel ? io.MouseWheel : io.MouseWheelH) += event.mouseWheelScroll.delta;
      return io.WantCaptureMouse;
    case sf::Event::LostFocus:
      io.AddFocusEvent(false);
      return false;
    default:
      return false;
  }
}

bool Widgets::typing() const { return ImGui::GetIO().WantTextInput; }

void Widgets::begin_frame(float seconds) {
  ImGuiIO& io = ImGui::GetIO();
  const sf::Vector2u size = window_.getSize();
  io.DisplaySize = {static_cast<float>(size.x), static_cast<float>(size.y)};
  io.DeltaTime = std::max(seconds, 1e-4F);
  for (std::size_t k = 0; k < kButtons; ++k) io.MouseDown[k] = held_[k] || clicked_[k];
  clicked_ = {};
  ImGui_ImplOpenGL2_NewFrame();
  ImGui::NewFrame();
  waits_ = std::max(waits_ - 1, 0);
}

// SFML keeps its own idea of the state of OpenGL: it is laid down before the widgets draw, and taken up again after.
void Widgets::end_frame() {
  ImGui::Render();
  window_.setActive(true);
  window_.resetGLStates();
  glBindTexture(GL_TEXTURE_2D, 0);
  window_.pushGLStates();
  ImGui_ImplOpenGL2_RenderDrawData(ImGui::GetDrawData());
  window_.popGLStates();
}

}  // namespace stowpath
