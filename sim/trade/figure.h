#pragma once

#include <cstdint>
#include <string>

namespace stowpath {

// What a number is, so that writing it with few digits cannot make it greener than it is. Nothing that writes numbers
// takes a bare double: whoever wants a text has to say which of the three it is.

/// Proven or known from below: a least clearance, a reach, a resistance, what is left of a rating. Written, it may only
/// become less.
struct AtLeast {
  double value;
};

/// Known from above, or needed: a depth, a load, a pull, a time, an error. Written, it may only become more.
struct AtMost {
  double value;
};

/// Neither: what a scene or a source gives, echoed; the place or moment of something that is looked at. Written to the
/// nearest digit.
struct Nominal {
  double value;
};

/// A depth is a clearance below zero: what is known of the one from below is known of the other from above.
constexpr AtMost operator-(AtLeast figure) { return {-figure.value}; }
constexpr AtLeast operator-(AtMost figure) { return {-figure.value}; }

/// A number on its way to become a text; made from one of the three above and from nothing else.
class Figure {
 public:
  constexpr Figure(AtLeast figure) : value_(figure.value), rounding_(Rounding::down) {}
  constexpr Figure(AtMost figure) : value_(figure.value), rounding_(Rounding::up) {}
  constexpr Figure(Nominal figure) : value_(figure.value), rounding_(Rounding::nearest) {}

  constexpr double value() const { return value_; }

  /// The same number in another unit. @param unit  of it, in what the value counts now, greater than 0
  constexpr Figure in(double unit) const { return {value_ / unit, rounding_}; }

  /// How many steps of `step` the number is, in whole ones: down to -infinity, up, or to the nearest, halves away from
  /// zero. What is only `slack` beyond a whole step counts as on it: numbers come back from a proof or from another
  /// unit a little off, and 12 mm that were proven as 11.999999 mm are 12 mm.
  /// @param step, slack  in the value's own unit; the nearest counts a millionth of a step as none instead
  double steps(double step, double slack) const;

 private:
  enum class Rounding { down, up, nearest };
  constexpr Figure(double value, Rounding rounding) : value_(value), rounding_(rounding) {}

  double value_;
  Rounding rounding_;
};

/// "12.30": a point whatever the locale, no exponent, no "-0". What is not finite or passes 1e15 gives "unbounded". A
/// millionth of the last digit counts as none.
/// @throws std::invalid_argument if decimals is not 0 to 9.
std::string format_decimal(Figure figure, int decimals);

}  // namespace stowpath
