#include "sim/loads/hardware.h"

#include <algorithm>
#include <cctype>

#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return out;
}

template <class Matches>
std::optional<double> least_rating(const Scene& scene, Matches matches) {
  std::optional<double> least;
  for (const Rating& rating : scene.ratings)
    if (matches(lower(rating.what)) && (!least || rating.force < *least)) least = rating.force;
  return least;
}

// A rating that says one of these exactly is meant for that piece alone.
bool is_piece(const std::string& what) {
  for (const char* piece : {"fold line", "caster plate", "lock pin", "winch screws", "lead block", "lead sheave"})
    if (what == piece) return true;
  return false;
}

bool weaker(const HardwareItem& a, const HardwareItem& b) {
  if (a.resistance.has_value() != b.resistance.has_value()) return a.resistance.has_value();
  return a.resistance ? *a.ratio() < *b.ratio() : a.load > b.load;
}

}  // namespace

std::optional<double> HardwareItem::ratio() const {
  constexpr double kUnloaded = 1e9;
  if (!resistance) return std::nullopt;
  return load * kUnloaded > *resistance ? *resistance / load : kUnloaded;
}

std::optional<double> rating_of(const Scene& scene, std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names) {
    const auto exact = least_rating(scene, [&](const std::string& what) { return what == name; });
    if (exact) return exact;
  }
  for (const std::string_view name : names) {
    const auto part = least_rating(
        scene, [&](const std::string& what) { return !is_piece(what) && what.find(name) != std::string::npos; });
    if (part) return part;
  }
  return std::nullopt;
}

HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names) {
  HardwareItem item;
  item.name = name;
  item.load = load;
  item.where = where;
  item.resistance = rating_of(scene, names);
  item.basis = item.resistance ? "rated in the scene file" : "";
  if (!item.resistance) item.note = "no rating given: compare the load with the maker's";
  return item;
}

const Species& wood_of(const Screws& screws, const ClimberReport& climber) {
  const Species* given = find_species(screws.species);
  return given != nullptr ? *given : *climber.wood.species;
}

std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood) {
  return std::to_string(screws.count) + (screws.lag ? " lag" : " wood") + (screws.count == 1 ? " screw " : " screws ") +
         say_length(scene, Nominal{screws.diameter}) + " thick, " + say_length(scene, Nominal{screws.thread}) +
         " of thread in " + std::string(wood.name);
}

std::vector<HardwareItem> hoist_hardware_list(const HardwareInputs& inputs) {
  std::vector<HardwareItem> items;
  if (inputs.hoist && inputs.scene.hoist) add_hoist_items(inputs, items);
  std::stable_sort(items.begin(), items.end(), weaker);
  return items;
}

std::vector<HardwareItem> hardware_list(const HardwareInputs& inputs) {
  std::vector<HardwareItem> items = hoist_hardware_list(inputs);
  add_rail_items(inputs, items);
  add_stair_items(inputs, items);
  std::stable_sort(items.begin(), items.end(), weaker);
  return items;
}

}  // namespace stowpath
