#include "render/sheet/loads_sheet.h"

#include <algorithm>
#include <array>

#include "render/report/hardware_words.h"
#include "render/sheet/plot.h"
#include "render/sheet/plot_sheet.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kKsi = 6894757.293168;   // [Pa]
constexpr double kUnderPlot = 15.0;       // for figures and title under each [mm]
constexpr double kBetweenPlots = 8.0;     // for the next one's title [mm]
constexpr double kLegendLine = 4.6;       // [mm]
constexpr std::size_t kMostWeakest = 18;  // hardware listed in the notes

const std::array<Pen, 4> kPens{Pen{Ink::line, kHeavy}, Pen{Ink::blue, kMedium}, Pen{Ink::blue, kMedium, Dash::hidden},
                               Pen{Ink::soft, kMedium, Dash::hidden}};

class Sheet {
 public:
  explicit Sheet(const LoadsSubject& subject)
      : subject_(subject),
        sheet_(subject.units, "Loads", subject.model.name, answer(subject), all_bear(subject)),
        metric_(subject.units == DisplayUnits::metric),
        rails_(lasting(subject.loads.rails)) {}

  DisplayList drawn() {
    notes();
    if (!rails_.empty()) plots();
    return std::move(sheet_).drawn();
  }

 private:
  // Against what is allowed for good; what must not break the stair is told of in the notes.
  static std::vector<RailCase> lasting(const std::vector<RailCase>& rails) {
    std::vector<RailCase> shown = telling_rails(rails);
    shown.erase(std::remove_if(shown.begin(), shown.end(), [](const RailCase& r) { return r.forces.ultimate; }),
                shown.end());
    return shown;
  }

  // The scene's name stands in the title block.
  static std::string answer(const LoadsSubject& subject) {
    const std::string line = loads_line(subject);
    return line.substr(0, line.size() - subject.model.name.size() - 1);
  }

  double station(double metres) const { return metric_ ? metres : metres / kFoot; }
  double stress(double pascals) const { return metric_ ? pascals / 1e6 : pascals / kKsi; }
  double sag(double metres) const { return metric_ ? metres * 1e3 : metres / kInch; }

  void plots() {
    const PaperBox room = sheet_.plots();
    const double legend = kLegendLine * static_cast<double>(rails_.size()) + 2.0;
    const double height = room.greatest.y - room.least.y - legend - kBetweenPlots - 6.0 - 2.0 * kUnderPlot;
    const double left = room.least.x + 13.0, right = room.greatest.x - 3.0, top = room.least.y + 6.0;
    const double middle = top + 0.5 * height;
    stress_plot({{left, top}, {right, middle}});
    const double second = middle + kUnderPlot + kBetweenPlots;
    sag_plot({{left, second}, {right, second + 0.5 * height}});
    legend_at({left, second + 0.5 * height + kUnderPlot + 2.0});
  }

  PlotAxis stations() const {
    Interval span = rails_.front().forces.stations;
    for (const RailCase& rail : rails_) span = hull(span, rail.forces.stations);
    const Interval wide = span.hi - span.lo < 0.1 ? Interval{span.lo - 0.1, span.hi + 0.1} : span;
    return round_axis(station(wide.lo), station(wide.hi), 10,
                      metric_ ? "station of the stair's middle, m (triangles: brackets)"
                              : "station of the stair's middle, ft (triangles: brackets)");
  }

  void stress_plot(const PaperBox& box) {
    double most = stress(subject_.loads.pipe.allowable);
    for (const RailCase& rail : rails_) most = std::max(most, stress(rail.stress));
    const Plot plot{
        box, stations(),
        round_axis(0.0, 1.1 * most, 6,
                   metric_ ? "greatest bending stress in the pipe, MPa" : "greatest bending stress in the pipe, ksi")};
    DisplayList& list = sheet_.list();
    list.open("stress", "Bending stress of the pipe against station");
    draw_axes(list, sheet_.labels(), plot);
    brackets(plot);
    curves(plot, [&](const RailPlace& place) { return stress(place.stress); });
    draw_level(list, sheet_.labels(), plot, stress(subject_.loads.pipe.allowable),
               "allowable, " + stress_text(AtLeast{subject_.loads.pipe.allowable}, subject_.units),
               {Ink::red, kThin, Dash::chain});
    list.close();
  }

  void sag_plot(const PaperBox& box) {
    double most = metric_ ? 0.5 : 0.02;
    for (const RailCase& rail : rails_)
      for (const RailPlace& place : rail.places) most = std::max(most, sag(place.most_sag));
    const Plot plot{
        box, stations(),
        round_axis(0.0, 1.1 * most, 6,
                   metric_ ? "greatest deflection of the pipe, mm" : "greatest deflection of the pipe, in")};
    DisplayList& list = sheet_.list();
    list.open("deflection", "Deflection of the pipe against station");
    draw_axes(list, sheet_.labels(), plot);
    brackets(plot);
    curves(plot, [&](const RailPlace& place) { return sag(place.most_sag); });
    list.close();
  }

  // A small triangle on the frame's lower edge at each bracket.
  void brackets(const Plot& plot) {
    for (const double at : subject_.scene.rail.brackets.stations) {
      const double x = station(at);
      if (x < plot.x.lo || x > plot.x.hi) continue;
      const Vec2 tip = plot(x, plot.y.lo);
      sheet_.list().path({tip, tip + Vec2{1.3, -2.2}, tip + Vec2{-1.3, -2.2}}, true, Pen{Ink::line, kThin}, Ink::wood);
    }
  }

  template <class Value>
  void curves(const Plot& plot, Value value) {
    for (std::size_t i = 0; i < rails_.size(); ++i) {
      const std::vector<RailPlace>& places = rails_[i].places;
      if (places.empty()) continue;
      std::vector<Vec2> values;
      for (const RailPlace& place : places) values.push_back({station(place.station), value(place)});
      if (values.back().x - values.front().x < 1e-6) {
        draw_mark(sheet_.list(), sheet_.labels(), plot, values.front(), "", kPens[i % kPens.size()].ink);
      } else {
        draw_curve(sheet_.list(), plot, values, kPens[i % kPens.size()]);
      }
    }
  }

  void legend_at(Vec2 at) {
    for (std::size_t i = 0; i < rails_.size(); ++i) {
      const std::array<LegendEntry, 1> entry{
          LegendEntry{rail_name(subject_.scene, rails_[i].forces), kPens[i % kPens.size()]}};
      draw_legend(sheet_.list(), sheet_.labels(), at, entry);
      at.y += kLegendLine;
    }
  }

  void notes() {
    sheet_.cautions(loads_cautions());
    sheet_.note_heading("Hardware, the weakest first");
    const std::vector<HardwareItem>& items = subject_.loads.hardware;
    for (std::size_t i = 0; i < std::min(items.size(), kMostWeakest); ++i) note_item(items[i]);
    if (items.size() > kMostWeakest) {
      sheet_.note("and " + std::to_string(items.size() - kMostWeakest) + " more in the report", Ink::soft);
    }
  }

  void note_item(const HardwareItem& item) {
    const auto ratio = item.ratio();
    sheet_.note(
        times_text(item) + "  " + item.name + ", gets " + load_text(item.kind, AtMost{item.load}, subject_.units),
        ratio && *ratio < 1.0 ? Ink::red : Ink::line);
  }

  const LoadsSubject& subject_;
  PlotSheet sheet_;
  bool metric_ = true;
  std::vector<RailCase> rails_;
};

}  // namespace

DisplayList make_loads_sheet(const LoadsSubject& subject) { return Sheet(subject).drawn(); }

}  // namespace stowpath
