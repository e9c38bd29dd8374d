#include "render/report/measure_text.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <vector>

#include "render/report/words.h"

namespace stowpath {
namespace {

constexpr std::size_t kPlaces = 4;        // on the terminal
constexpr std::size_t kMeasurements = 3;  // of each
constexpr double kDegree = std::numbers::pi / 180.0;

/// Hundredths with a sign: "+0.99".
std::string signed_rate(double rate) {
  char text[32];
  std::snprintf(text, sizeof text, "%+.2f", rate);
  return text;
}

const char* unit(DisplayUnits units) { return units == DisplayUnits::imperial ? "in" : "mm"; }

/// "+0.99 mm", "-24.07 mm per 1°"; both sides where they differ.
std::string rate_words(const Sensitivity& by, DisplayUnits units) {
  const double per_degree = kDegree * 1e3 / (units == DisplayUnits::imperial ? 25.4 : 1.0);
  const double scale = by.angle ? per_degree : 1.0;
  const std::string per = std::string(" ") + unit(units) + (by.angle ? " per 1°" : "");
  if (by.smooth()) return signed_rate(scale * by.rate()) + per;
  const auto side = [&](double rate) { return std::isnan(rate) ? "unknown" : signed_rate(scale * rate); };
  return side(by.more) + ", if less " + side(-by.less) + per;
}

/// What the clearance loses with the measurement off by the tolerance, whichever way is the worse; angles have none.
double loss(const Sensitivity& by, double tolerance) {
  if (by.angle) return 0.0;
  const double rate = std::fmax(-by.more, by.less);
  return std::isnan(rate) ? 0.0 : tolerance * std::max(0.0, rate);
}

double loss_of_all(const TightPlace& place, double tolerance) {
  double sum = 0.0;
  for (const Sensitivity& by : place.by) sum += loss(by, tolerance);
  return sum;
}

std::string loss_words(const TightPlace& place, const Sensitivity& by, double tolerance, DisplayUnits units) {
  const double takes = loss(by, tolerance);
  if (by.angle || takes <= 0.0) return "";
  const bool too_much = place.to_spare() >= 0.0 && takes > place.to_spare();
  return format_small_length(AtMost{takes}, units) + (too_much ? ", too much" : "");
}

/// "F2  side rail, strip light: 50 mm short of its margin".
std::string title_of(const TightPlace& place, DisplayUnits units) {
  const std::string id = place.findings.empty() ? "  " : padded(place.findings.front(), 4);
  const double spare = place.to_spare();
  const Figure shown = spare < 0.0 ? Figure(-AtLeast{spare}) : AtLeast{spare};
  return id + place.parts[0] + ", " + place.parts[1] + ": " + format_small_length(shown, units) +
         (spare < 0.0 ? " short of the margin" : " to spare");
}

/// Findings first, in their order, then what is clear, the tightest first; those without measurements left out.
std::vector<const TightPlace*> chosen(const MeasureTwice& twice) {
  std::vector<const TightPlace*> out;
  for (const TightPlace& place : twice.places) {
    if (!place.by.empty()) out.push_back(&place);
  }
  std::stable_sort(out.begin(), out.end(), [](const TightPlace* a, const TightPlace* b) {
    if (a->findings.empty() != b->findings.empty()) return b->findings.empty();
    return a->findings.empty() && a->to_spare() < b->to_spare();
  });
  if (out.size() > kPlaces) out.resize(kPlaces);
  return out;
}

void write_place(ReportPage& page, const TightPlace& place, double tolerance, DisplayUnits units) {
  constexpr std::size_t kWords = 38, kRate = 30;  // columns
  page.raw(title_of(place, units) + "\n");
  for (std::size_t i = 0; i < std::min(kMeasurements, place.by.size()); ++i) {
    const Sensitivity& by = place.by[i];
    std::string line = "    " + padded(by.words, kWords) + "  " + padded(rate_words(by, units), kRate) + "  " +
                       loss_words(place, by, tolerance, units);
    page.raw(line.erase(line.find_last_not_of(' ') + 1) + "\n");
  }
}

/// The tightest place that is clear, with all its measurements off together.
void write_worst_case(ReportPage& page, const std::vector<const TightPlace*>& places, double tolerance,
                      DisplayUnits units) {
  for (const TightPlace* place : places) {
    if (place->to_spare() < 0.0) continue;
    const double takes = loss_of_all(*place, tolerance);
    page.paragraph("With every length that counts " + format_small_length(Nominal{tolerance}, units) +
                   " off the wrong way at once, " + place->parts[0] + " and " + place->parts[1] + " would lose " +
                   format_small_length(AtMost{takes}, units) + " of the " +
                   format_small_length(AtLeast{place->to_spare()}, units) + " to spare.");
    return;
  }
}

Json by_json(const Sensitivity& by) {
  const double scale = by.angle ? kDegree : 1.0;
  const char* per = by.angle ? "m_per_deg" : "m_per_m";
  Json out{{"key", by.key}, {"words", by.words}};
  if (by.smooth()) {
    out[per] = json_number(scale * by.rate());
  } else {
    out[std::string("larger_") + per] = json_number(scale * by.more);
    out[std::string("smaller_") + per] = json_number(-scale * by.less);
  }
  return out;
}

Json place_json(const Model& model, const TightPlace& place, double tolerance) {
  Json out{{"parts", place.parts}, {"findings", place.findings}, {"moves", Json::array()}};
  for (const int move : place.moves) {
    const Move& of = model.moves.at(static_cast<std::size_t>(move));
    out["moves"].push_back({{"index", of.index}, {"kind", json_move(of.kind)}});
  }
  out["at"] = json_placed_pose(model.linkage, place.at);
  out["clearance_m"] = json_number(place.clearance);
  out["to_spare_m"] = json_number(place.to_spare());
  out["all_off_m"] = json_number(loss_of_all(place, tolerance));
  out["measurements"] = Json::array();
  for (const Sensitivity& by : place.by) out["measurements"].push_back(by_json(by));
  return out;
}

}  // namespace

void write_measure_twice(ReportPage& page, const MeasureTwice& twice, DisplayUnits units) {
  const std::vector<const TightPlace*> places = chosen(twice);
  if (places.empty()) return;
  page.heading(std::string("MEASURE TWICE: what 1 ") + unit(units) + " more gives, and what being off by " +
               format_small_length(Nominal{twice.tolerance}, units) + " takes");
  for (const TightPlace* place : places) write_place(page, *place, twice.tolerance, units);
  write_worst_case(page, places, twice.tolerance, units);
}

Json measure_twice_json(const Model& model, const MeasureTwice& twice) {
  Json out{{"tolerance_m", json_number(twice.tolerance)}, {"places", Json::array()}};
  for (const TightPlace& place : twice.places) out["places"].push_back(place_json(model, place, twice.tolerance));
  return out;
}

}  // namespace stowpath
