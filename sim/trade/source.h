#pragma once

#include <string_view>

namespace stowpath {

/// How far a number in one of the trade tables can be trusted.
enum class SourceStatus {
  verified,  ///< read at the source named beside it
  derived,   ///< computed from numbers named beside it
  memory     ///< recalled, not read: say so where it is shown, and let the user override it
};

constexpr std::string_view status_text(SourceStatus status) {
  if (status == SourceStatus::verified) return "verified";
  return status == SourceStatus::derived ? "derived" : "from memory";
}

}  // namespace stowpath
