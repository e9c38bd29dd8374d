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

std::string read_species(const Setting& species) {
  if (species.is_map() || species.is_list()) return "";
  if (const Species* known = find_species(species.text())) return std::string(known->name);
  species.fault(quoted_text(species.text()) + " is not a species group known here",
                "known are " + join_words(species_names(), "and"));
  return "";
}

}  // namespace stowpath
