#include "sim/loads/hardware.h"

#include <algorithm>

#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

/// Over before not said before within: what is known to fail tells most, and unknown is not good.
int grade(const HardwareItem& item) {
  if (!item.resistance) return 1;
  return *item.ratio() < 1.0 ? 0 : 2;
}

bool worse(const HardwareItem& a, const HardwareItem& b) {
  if (grade(a) != grade(b)) return grade(a) < grade(b);
  return a.resistance ? *a.ratio() < *b.ratio() : a.load > b.load;
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

const Species& wood_of(const Screws& screws, const ClimberReport& climber) {
  const Species* given = find_species(screws.species);
  return given != nullptr ? *given : *climber.wood.species;
}

std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood) {
  return std::to_string(screws.count) + (screws.lag ? " lag" : " wood") + (screws.count == 1 ? " screw " : " screws ") +
         say_length(scene, Nominal{screws.diameter}) + " thick, " + say_length(scene, Nominal{screws.thread}) +
         " of thread in " + std::string(wood.name);
}

void Pieces::look(HardwareItem item) {
  const auto known = std::find_if(items_.begin(), items_.end(),
                                  [&](const HardwareItem& piece) { return piece.name == item.name; });
  if (known == items_.end())
    items_.push_back(std::move(item));
  else if (worse(item, *known))
    *known = std::move(item);
}

std::vector<HardwareItem> Pieces::weakest_first() const {
  std::vector<HardwareItem> items = items_;
  std::stable_sort(items.begin(), items.end(), weaker);
  return items;
}

std::vector<HardwareItem> hoist_hardware_list(const HardwareInputs& inputs) {
  if (!inputs.hoist || !inputs.scene.hoist) return {};
  Pieces pieces;
  std::vector<HardwareItem> items;
  for (const HoistState& state : inputs.hoist->states) {
    items.clear();
    add_hoist_items(inputs, state, items);
    for (HardwareItem& item : items) pieces.look(std::move(item));
  }
  items.clear();
  add_unsaid_of_hoist(*inputs.hoist, items);
  for (HardwareItem& item : items) pieces.look(std::move(item));
  return pieces.weakest_first();
}

std::vector<HardwareItem> hardware_list(const HardwareInputs& inputs) {
  std::vector<HardwareItem> items = hoist_hardware_list(inputs);
  add_rail_items(inputs, items);
  add_stair_items(inputs, items);
  std::stable_sort(items.begin(), items.end(), weaker);
  return items;
}

}  // namespace stowpath
