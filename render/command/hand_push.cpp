#include "render/command/hand_push.h"

#include "sim/trade/length.h"
#include "sim/trade/measure.h"

namespace stowpath {

std::optional<HandPush> read_hand_push(const std::string& text) {
  const auto at = text.find(" at ");
  if (at == std::string::npos) return std::nullopt;
  const bool against = text.front() == '-';
  const std::size_t from = against ? 1 : 0;
  const Measure force = parse_force(text.substr(from, at - from));
  const Measure height = parse_length(text.substr(at + 4), LengthUnit::none);
  if (!force.value || !height.value) return std::nullopt;
  return HandPush{*force.value, against, *height.value};
}

}  // namespace stowpath
