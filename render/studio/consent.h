#pragma once

#include <algorithm>

namespace stowpath {

inline constexpr double kConsentLasts = 8.0;  // long enough to read what is asked [s]

/// The yes to what cannot be taken back: it is given by asking a second time, soon and with nothing else in between.
class Consent {
 public:
  /// It was asked for. @returns whether that was the second time
  bool asked() {
    const bool given = waits();
    left_ = given ? 0.0 : kConsentLasts;
    return given;
  }
  bool waits() const { return left_ > 0.0; }  ///< for the second time
  void pass(double seconds) { left_ = std::max(0.0, left_ - seconds); }
  void withdraw() { left_ = 0.0; }

 private:
  double left_ = 0.0;  // in which the second time counts [s]
};

}  // namespace stowpath
