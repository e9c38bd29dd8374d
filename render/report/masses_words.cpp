#include "render/report/masses_words.h"

#include "render/report/hoist_words.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

std::string section_masses(const Weights& weights, DisplayUnits units) {
  std::string text;
  for (std::size_t j = 0; j < weights.sections.size(); ++j) {
    const SectionWeight& section = weights.sections[j];
    text += (j == 0 ? "; section " : ", section ") + std::to_string(j + 1) + " " +
            mass_text(Nominal{section.used.mass}, units);
    if (section.weighed) text += " on the scale (computed: " + mass_text(Nominal{section.computed}, units) + ")";
  }
  return text;
}

std::string left_out_words(const Weights& weights, DisplayUnits units) {
  const double share = weights.stair > 0.0 ? 100.0 * weights.left_out / weights.stair : 0.0;
  return "Left out of it, and of every pull and load: lock pins, hinges and screws, " +
         mass_text(AtMost{weights.left_out}, units) + " by the sizes given, " + format_decimal(AtMost{share}, 1) +
         " % of the stair. Weigh a section with its iron on to have that counted.";
}

}  // namespace

void write_masses(ReportPage& page, const Weights& weights, DisplayUnits units) {
  Table table;
  for (const std::size_t column : {0U, 2U, 3U}) table.figures(column);
  table.row({"no", "what", "each", "all", "on", "status", "from"});
  for (const BillRow& row : weights.rows) {
    table.row(
        {std::to_string(row.count), row.what, mass_text(Nominal{row.each}, units), mass_text(Nominal{row.total}, units),
         row.section < 0 ? "line" : "section " + std::to_string(row.section + 1), status_text(row.status), row.basis});
  }
  page.table("MASSES", table);
  page.paragraph("In all " + mass_text(Nominal{weights.stair}, units) + section_masses(weights, units) + ". " +
                 left_out_words(weights, units));
}

Json masses_json(const Weights& weights, const Model& model) {
  Json rows = Json::array(), sections = Json::array();
  for (const BillRow& row : weights.rows) {
    rows.push_back({{"what", row.what},
                    {"section", row.section < 0 ? Json(nullptr) : Json(row.section + 1)},
                    {"count", row.count},
                    {"each_kg", json_number(row.each)},
                    {"total_kg", json_number(row.total)},
                    {"basis", row.basis},
                    {"status", status_text(row.status)}});
  }
  for (std::size_t j = 0; j < weights.sections.size(); ++j) {
    const SectionWeight& section = weights.sections[j];
    sections.push_back({{"section", j + 1},
                        {"mass_kg", json_number(section.used.mass)},
                        {"computed_kg", json_number(section.computed)},
                        {"weighed", section.weighed},
                        {"centre_m", Json{json_number(section.used.centre.x), json_number(section.used.centre.y)}},
                        {"length_m", json_number(model.linkage.length.at(j))},
                        {"inertia_kg_m2", json_number(section.used.inertia)}});
  }
  return {{"total_kg", json_number(weights.stair)},
          {"left_out_kg", json_number(weights.left_out)},
          {"sections", sections},
          {"bill", rows}};
}

}  // namespace stowpath
