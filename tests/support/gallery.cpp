#include "tests/support/gallery.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "sim/scene/reader.h"

namespace stowpath::testing {

namespace {

std::ifstream opened(const std::string& folder, const std::string& name) {
  return std::ifstream(std::string(STOWPATH_SOURCE_DIR) + folder + name + ".yaml", std::ios::binary);
}

std::string text_of(std::ifstream in, const std::string& name) {
  if (!in) throw std::logic_error("no scene " + name + " in the gallery");
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

std::string gallery_text(const std::string& name) { return text_of(opened("/scenes/", name), name); }

std::string rig_text(const std::string& name) {
  std::ifstream rig = opened("/tests/support/rigs/", name);
  return rig ? text_of(std::move(rig), name) : gallery_text(name);
}

std::string changed(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos || text.find(from, at + 1) != std::string::npos) {
    throw std::logic_error("not exactly one \"" + std::string(from) + "\"");
  }
  return text.replace(at, from.size(), to);
}

Model model_of(const std::string& text) { return build_model(parse_scene(text, "test.yaml")); }

DryFit dry_fit_of(const std::string& text) { return dry_fit(model_of(text)); }

const Finding* find(const DryFit& fit, FindingKind kind, std::string_view stair, std::string_view room) {
  const auto same = [&](const Finding& f) {
    const bool besides = std::find(f.also.begin(), f.also.end(), stair) != f.also.end();
    return f.kind == kind && (f.parts[0] == stair || besides) && f.parts[1] == room;
  };
  const auto it = std::find_if(fit.findings.begin(), fit.findings.end(), same);
  return it == fit.findings.end() ? nullptr : &*it;
}

std::string told(const DryFit& fit) {
  static const char* const kKinds[] = {"interference", "margin", "seat", "zone", "undecided", "build"};
  std::string out;
  for (const Finding& f : fit.findings) {
    out += std::string(kKinds[static_cast<int>(f.kind)]) + " " + f.parts[0] + " / " + f.parts[1] + " " + f.note + "\n";
  }
  return out;
}

const MoveResult& result_of(const DryFit& fit, MoveKind kind) {
  const auto it = std::find_if(fit.moves.begin(), fit.moves.end(), [&](const MoveResult& r) { return r.kind == kind; });
  if (it == fit.moves.end()) throw std::logic_error("no such move");
  return *it;
}

}  // namespace stowpath::testing
