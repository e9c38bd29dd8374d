#include "sim/loads/hardware.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/trade/figure.h"

namespace stowpath {

namespace {

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return out;
}

template <class Matches>
const Rating* least_rating(const Scene& scene, Matches matches) {
  const Rating* least = nullptr;
  for (const Rating& rating : scene.ratings)
    if (matches(lower(rating.what)) && (!least || rating.force < least->force)) least = &rating;
  return least;
}

// A rating that says one of these exactly is meant for that piece alone.
bool is_piece(const std::string& what) {
  for (const char* piece : {"fold line", "caster plate", "lock pin", "winch screws", "lead block", "lead sheave"})
    if (what == piece) return true;
  return false;
}

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

const Rating* rating_of(const Scene& scene, std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names) {
    const Rating* exact = least_rating(scene, [&](const std::string& what) { return what == name; });
    if (exact != nullptr) return exact;
  }
  for (const std::string_view name : names) {
    const Rating* part = least_rating(
        scene, [&](const std::string& what) { return !is_piece(what) && what.find(name) != std::string::npos; });
    if (part != nullptr) return part;
  }
  return nullptr;
}

void rate(HardwareItem& item, const Rating& rating) {
  item.resistance = rating.force;
  item.reserve = rating.reserve;
  item.basis = "rated in the scene file";
}

HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names) {
  HardwareItem item;
  item.name = name;
  item.load = load;
  item.where = where;
  if (const Rating* rating = rating_of(scene, names))
    rate(item, *rating);
  else
    item.note = "no rating given: compare the load with the maker's";
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
  for (const HoistState& state : inputs.hoist->states) {
    const bool by_accident = state.doing == HoistDoing::snagged;
    by_accident ? pieces.look_ultimate(hoist_items(inputs, state)) : pieces.look(hoist_items(inputs, state));
  }
  if (!inputs.hoist->drive) pieces.look({unsaid_drive(*inputs.hoist)});
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
