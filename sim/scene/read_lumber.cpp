#include <limits>
#include <optional>
#include <string>

#include "sim/scene/scene_parts.h"
#include "sim/scene/suggest.h"
#include "sim/trade/lumber.h"

namespace stowpath {

BoardSize read_lumber(const Setting& lumber) {
  constexpr double kRefused = std::numeric_limits<double>::quiet_NaN();
  if (!lumber.given() || lumber.is_map() || lumber.is_list()) return {kRefused, kRefused};
  if (const std::optional<DressedSize> size = dressed_size(lumber.text())) return {size->thickness, size->width};
  lumber.fault(quoted_text(lumber.text()) + " is not a nominal lumber size known here",
               "known are " + join_words(lumber_names(), "and"));
  return {kRefused, kRefused};
}

BoardSize read_board(const Setting& of, const char* lumber, const std::string& what) {
  const Setting name = of.at(lumber), size = of.at("size");
  if (of.is_map() && name.given() == size.given()) {
    of.fault(what + (name.given() ? " both " + std::string(lumber) + " and size" : " no size"),
             "give " + std::string(lumber) + ": 2x6, or size: [thickness, width]");
  }
  const std::vector<double> measured = size.numbers();
  return measured.size() == 2 ? BoardSize{measured[0], measured[1]} : read_lumber(name);
}

Screws read_screws(const Setting& screws) {
  Screws read;
  read.count = screws.at("count").count();
  read.diameter = screws.at("diameter").number();
  read.thread = screws.at("thread").number();
  read.lag = screws.at("kind").word() == "lag";
  if (screws.at("species").given()) read.species = read_species(screws.at("species"));
  return read;
}

std::string read_species(const Setting& species) {
  if (species.is_map() || species.is_list()) return "";
  if (const Species* known = find_species(species.text())) return std::string(known->name);
  species.fault(quoted_text(species.text()) + " is not a species group known here",
                "known are " + join_words(species_names(), "and"));
  return "";
}

}  // namespace stowpath
