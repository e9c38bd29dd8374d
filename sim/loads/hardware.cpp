#include "sim/loads/hardware.h"

#include <algorithm>
#include <utility>

#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/trade/figure.h"

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

double screw_reserve(const Screws& screws) { return screws.lag ? 4.5 : 5.5; }

void Pieces::look(std::vector<HardwareItem> state) {
  for (HardwareItem& item : state) {
    const auto [place, is_new] = place_.try_emplace(item.name, items_.size());
    if (is_new) {
      items_.push_back(std::move(item));
      continue;
    }
    HardwareItem& kept = items_[place->second];
    const double not_to_break = std::max(kept.not_to_break, item.not_to_break);
    if (worse(item, kept)) kept = std::move(item);
    kept.not_to_break = not_to_break;
  }
}

void Pieces::look_ultimate(std::vector<HardwareItem> state) {
  const auto feels = [](const HardwareItem& item) { return item.kind == LoadKind::length; };
  state.erase(std::remove_if(state.begin(), state.end(), feels), state.end());
  for (HardwareItem& item : state) {
    if (!item.resistance) {
      item.not_to_break = std::exchange(item.load, 0.0);
      continue;
    }
    item.ultimate = true;
    *item.resistance *= item.reserve;
    item.basis += item.reserve > 1.0 ? ", and " + format_decimal(AtLeast{item.reserve}, 2) + " times that to break it"
                                     : ", of which no more is known to break it";
  }
  look(std::move(state));
}

std::vector<HardwareItem> Pieces::weakest_first() const {
  std::vector<HardwareItem> items = items_;
  std::stable_sort(items.begin(), items.end(), weaker);
  return items;
}

std::vector<HardwareItem> hoist_hardware_list(const HardwareInputs& inputs) {
  Pieces pieces;
  if (!inputs.hoist || !inputs.scene.hoist) return {};
  std::vector<HardwareItem> items;
  for (const HoistState& state : inputs.hoist->states) {
    items.clear();
    add_hoist_items(inputs, state, items);
    const bool by_accident = state.doing == HoistDoing::snagged;
    by_accident ? pieces.look_ultimate(std::move(items)) : pieces.look(std::move(items));
  }
  items.clear();
  add_unsaid_of_hoist(*inputs.hoist, items);
  pieces.look(std::move(items));
  return pieces.weakest_first();
}

std::vector<HardwareItem> hardware_list(const HardwareInputs& inputs) {
  Pieces pieces;
  pieces.look(hoist_hardware_list(inputs));
  for (const RailCase& rail : inputs.rails)
    rail.forces.ultimate ? pieces.look_ultimate(rail_items(inputs, rail)) : pieces.look(rail_items(inputs, rail));
  for (const StandingState& state : inputs.climber.states)
    state.ultimate ? pieces.look_ultimate(standing_items(inputs, state)) : pieces.look(standing_items(inputs, state));
  if (inputs.hoist)
    for (const HoistState& state : inputs.hoist->states)
      if (state.doing != HoistDoing::snagged) pieces.look(hoisted_stair_items(inputs, state));
  return pieces.weakest_first();
}

}  // namespace stowpath
