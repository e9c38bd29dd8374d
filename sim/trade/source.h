#pragma once

#include <string_view>

namespace stowpath {

/// How far a number in one of the trade tables can be trusted.
enum class SourceStatus {
  verified,  ///< read at the source named beside it
  derived,   ///< computed from numbers named beside it
  memory,    ///< recalled, not read: say so where it is shown, and let the user override it
  judgement  ///< ours, with no source at all: say so where it is shown, and let the user override it
};

constexpr std::string_view status_text(SourceStatus status) {
  switch (status) {
    case SourceStatus::verified:
      return "verified";
    case SourceStatus::derived:
      return "derived";
    case SourceStatus::memory:
      return "from memory";
    case SourceStatus::judgement:
      break;
  }
  return "our judgement";
}

/// Where a figure comes from. The ids are those of docs/sources.md.
struct Source {
  std::string_view id;     ///< "S-TKL-geo"
  std::string_view title;  ///< a book, a page or a rule, short enough for a report
  SourceStatus status = SourceStatus::memory;
};

}  // namespace stowpath
