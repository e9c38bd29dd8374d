// How long the window takes for a frame while it is worked with and the proof runs beside it, again and again.
//
// stowpath_window_bench SCENE, with DISPLAY set; LIBGL_ALWAYS_SOFTWARE=1 for drawing without a graphics card. Prints the
// median and the 99th percentile for each thing that a hand does, in milliseconds.

#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/window/viewer.h"

namespace {

using namespace stowpath;
using Clock = std::chrono::steady_clock;

constexpr int kFrames = 240;  // of each phase
constexpr int kWarm = 20;     // frames before it that do not count

sf::Event pressed(sf::Keyboard::Key key) {
  sf::Event event{};
  event.type = sf::Event::KeyPressed;
  event.key.code = key;
  return event;
}

sf::Event moved(int x, int y) {
  sf::Event event{};
  event.type = sf::Event::MouseMoved;
  event.mouseMove = {x, y};
  return event;
}

sf::Event button(sf::Event::EventType type, sf::Mouse::Button which, int x, int y) {
  sf::Event event{};
  event.type = type;
  event.mouseButton = {which, x, y};
  return event;
}

sf::Event wheeled(float delta, int x, int y) {
  sf::Event event{};
  event.type = sf::Event::MouseWheelScrolled;
  event.mouseWheelScroll = {sf::Mouse::VerticalWheel, delta, x, y};
  return event;
}

class Bench {
 public:
  Bench(Studio& studio, Viewer& viewer, std::string text, std::string name)
      : studio_(studio), viewer_(viewer), text_(std::move(text)), name_(std::move(name)) {}

  /// @param act  what the hand does before frame k
  void phase(const char* what, const std::function<void(int)>& act) {
    std::vector<double> times;
    int proofs = 0;
    for (int k = -kWarm; k < kFrames; ++k) {
      if (!studio_.proving()) studio_.open(text_, name_), ++proofs;
      const auto start = Clock::now();
      act(k + kWarm);
      viewer_.frame();
      if (k >= 0) times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
    }
    std::sort(times.begin(), times.end());
    all_.insert(all_.end(), times.begin(), times.end());
    print(what, times, proofs);
  }

  void print_all() {
    std::sort(all_.begin(), all_.end());
    print("all of it", all_, 0);
  }

 private:
  static void print(const char* what, const std::vector<double>& sorted, int proofs) {
    const auto at = [&](double share) { return sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))]; };
    std::printf("%-28s median %6.1f ms   99th %6.1f ms   most %6.1f ms", what, at(0.5), at(0.99), sorted.back());
    if (proofs > 0) std::printf("   proofs %d", proofs);
    std::printf("\n");
  }

  Studio& studio_;
  Viewer& viewer_;
  std::string text_, name_;
  std::vector<double> all_;
};

void measure(Bench& bench, Viewer& viewer) {
  const auto send = [&viewer](const sf::Event& event) { viewer.handle_event(event); };
  const int x = 300, y = 250;
  bench.phase("standing still", [](int) {});
  bench.phase("pointer moving", [&](int k) { send(moved(x + k % 200, y + k % 90)); });
  bench.phase("move shown by itself", [&](int k) {
    if (k % 60 == 0) send(pressed(k % 120 == 0 ? sf::Keyboard::Home : sf::Keyboard::N)), send(pressed(sf::Keyboard::N));
    if (k % 60 == 1) send(pressed(sf::Keyboard::B)), send(pressed(sf::Keyboard::Space));
  });
  bench.phase("stair leaned by hand", [&](int k) { send(pressed(k % 80 < 40 ? sf::Keyboard::Up : sf::Keyboard::Down)); });
  bench.phase("stair rolled by hand", [&](int k) { send(pressed(k % 80 < 40 ? sf::Keyboard::Right : sf::Keyboard::Left)); });
  bench.phase("paper shifted", [&](int k) {
    if (k % 60 == 0) send(button(sf::Event::MouseButtonPressed, sf::Mouse::Right, x, y));
    send(moved(x + k % 60, y + k % 60 / 2));
    if (k % 60 == 59) send(button(sf::Event::MouseButtonReleased, sf::Mouse::Right, x, y));
  });
  send(pressed(sf::Keyboard::Num0));
  bench.phase("zoomed in and out", [&](int k) { send(wheeled(k % 24 < 12 ? 1.0F : -1.0F, x, y)); });
  send(pressed(sf::Keyboard::Num0));
  send(pressed(sf::Keyboard::D));
  bench.phase("hook, full size, leaning", [&](int k) { send(pressed(k % 80 < 40 ? sf::Keyboard::Up : sf::Keyboard::Down)); });
  send(pressed(sf::Keyboard::D));
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 2) {
    std::fprintf(stderr, "stowpath_window_bench SCENE\n");
    return 2;
  }
  std::istringstream none;
  const std::string name = argv[1], text = read_text(name, none);
  Studio studio;
  Worktable table(studio, {text, "", name}, "");  // of no file, and with nowhere to keep unsaved work
  ViewerOptions options;
  options.most_frames = 0;
  Viewer viewer(table, options);
  Bench bench(studio, viewer, text, name);
  std::printf("window of %u by %u, %d frames a phase\n", viewer.size().x, viewer.size().y, kFrames);
  measure(bench, viewer);
  bench.print_all();
  return 0;
} catch (const FileFault& fault) {
  std::fprintf(stderr, "%s: %s\n", fault.file.c_str(), fault.what());
  return 3;
} catch (const std::exception& fault) {
  std::fprintf(stderr, "%s\n", fault.what());
  return 70;
}
