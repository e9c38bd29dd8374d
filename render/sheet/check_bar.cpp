#include "render/sheet/check_bar.h"

namespace stowpath {

std::string check_bar_length(DisplayUnits units) { return units == DisplayUnits::metric ? "100 mm" : "4 in"; }

void draw_check_bar(DisplayList& list, Labels& labels, Vec2 at, DisplayUnits units, const std::string& first,
                    const std::string& second) {
  const bool metric = units == DisplayUnits::metric;
  const double length = metric ? 100.0 : 101.6;
  const int divisions = metric ? 10 : 4;
  list.open("check-bar", "Bar to check the size by");
  for (int k = 0; k < divisions; ++k) {
    const double a = at.x + length * k / divisions, b = at.x + length * (k + 1) / divisions;
    list.box({a, at.y}, {b, at.y + 3.0}, Pen{Ink::line, kThin}, k % 2 == 0 ? Ink::line : Ink::paper);
  }
  labels.fix(list, {{at.x, at.y + 8.2}, first, kFigures});
  labels.fix(list, {{at.x, at.y + 13.4}, second, kNotes});
  list.close();
}

}  // namespace stowpath
