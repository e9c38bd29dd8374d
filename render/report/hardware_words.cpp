#include "render/report/hardware_words.h"

#include <algorithm>

#include "render/report/hoist_words.h"
#include "render/report/words.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kPsi = 6894.757293168;  // [Pa]
constexpr double kManyTimes = 100.0;     // beyond this a ratio says nothing

std::string status_words(const HardwareItem& item) {
  if (!item.judged) return "not ours";
  if (!item.resistance) return "none known";
  return item.status ? status_text(item.status) : "given";
}

std::string_view kind_unit(LoadKind kind) {
  switch (kind) {
    case LoadKind::force:
      return "N";
    case LoadKind::moment:
      return "N m";
    case LoadKind::stress:
      return "Pa";
    case LoadKind::length:
      break;
  }
  return "m";
}

std::string explained(const HardwareItem& item) {
  std::string text = item.basis;
  if (!item.note.empty()) text += (item.basis.empty() ? "" : "; ") + item.note;
  if (item.ultimate) text += "; held against what breaks it";
  if (item.dynamic != 1.0) text += "; load times " + format_decimal(Nominal{item.dynamic}, 2) + " for a moving line";
  return text + ".";
}

// Pieces of which there is the same to say, in the order of the first.
struct Explained {
  std::string pieces, text;
};

std::vector<Explained> explanations(const std::vector<HardwareItem>& items) {
  std::vector<Explained> all;
  for (const HardwareItem& item : items) {
    const std::string text = explained(item);
    const auto same = std::find_if(all.begin(), all.end(), [&](const Explained& e) { return e.text == text; });
    if (same == all.end()) {
      all.push_back({item.name, text});
    } else {
      same->pieces += ", " + item.name;
    }
  }
  return all;
}

/// What nothing is known of, and the least that it has to be rated for: of the most loaded first.
std::string unknown_text(const std::vector<HardwareItem>& items, long long count, DisplayUnits units) {
  const auto unsaid = [](const HardwareItem& item) { return item.judged && !item.resistance; };
  const auto first = std::find_if(items.begin(), items.end(), unsaid);
  return counted(count, "piece has", "pieces have") + " no resistance known, first " + first->name + ", which needs " +
         load_text(first->kind, AtMost{first->load}, units);
}

/// Of how many pieces what they bear rests on figures that nobody has read.
std::string memory_text(const std::vector<HardwareItem>& items) {
  const auto recalled = [](const HardwareItem& item) {
    return item.judged && item.resistance && item.status == SourceStatus::memory;
  };
  const long long count = std::count_if(items.begin(), items.end(), recalled);
  return count == 0 ? "" : "; what " + counted(count, "piece bears", "pieces bear") + " rests on figures from memory";
}

std::string bears_text(const HardwareItem& item, DisplayUnits units) {
  if (item.resistance) return load_text(item.kind, AtLeast{*item.resistance}, units);
  if (!item.judged) return "";
  const std::string breaks =
      item.not_to_break > 0.0 ? ", to break past " + load_text(item.kind, AtMost{item.not_to_break}, units) : "";
  return "needs " + load_text(item.kind, AtMost{item.load}, units) + breaks;
}

std::string answer_of(const HardwareItem& item) {
  if (!item.judged) return "";
  if (!item.resistance) return "NOT SAID";
  return *item.ratio() < 1.0 ? "OVER" : "";
}

}  // namespace

std::string times_text(const HardwareItem& item) {
  const auto ratio = item.ratio();
  if (!ratio) return "?";
  return *ratio > kManyTimes ? "over 100" : format_decimal(AtLeast{*ratio}, 2);
}

std::string stress_text(Figure pascals, DisplayUnits units) {
  return units == DisplayUnits::imperial ? format_decimal(pascals.in(kPsi), 0) + " psi"
                                         : format_decimal(pascals.in(1e6), 1) + " MPa";
}

std::string load_text(LoadKind kind, Figure load, DisplayUnits units) {
  if (kind == LoadKind::moment) return torque_text(load, units);
  if (kind == LoadKind::length) return format_small_length(load, units);
  return kind == LoadKind::stress ? stress_text(load, units) : force_text(load, units);
}

HardwareCount count_hardware(const std::vector<HardwareItem>& items) {
  HardwareCount count;
  for (const HardwareItem& item : items) {
    if (!item.judged) continue;
    const auto ratio = item.ratio();
    ++(ratio ? count.known : count.unknown);
    if (ratio && *ratio < 1.0) ++count.too_weak;
  }
  return count;
}

HardwareVerdict hardware_verdict(const std::vector<HardwareItem>& items) {
  const HardwareCount count = count_hardware(items);
  if (count.too_weak > 0) return HardwareVerdict::over;
  return count.unknown > 0 ? HardwareVerdict::not_said : HardwareVerdict::within;
}

std::string_view verdict_word(HardwareVerdict verdict) {
  if (verdict == HardwareVerdict::over) return "OVER";
  return verdict == HardwareVerdict::within ? "WITHIN" : "NOT SAID";
}

std::string_view verdict_key(HardwareVerdict verdict) {
  if (verdict == HardwareVerdict::over) return "over";
  return verdict == HardwareVerdict::within ? "within" : "not said";
}

std::string hardware_sentence(const std::vector<HardwareItem>& items, DisplayUnits units) {
  const HardwareCount count = count_hardware(items);
  const std::string unknown =
      (count.unknown == 0 ? "" : "; " + unknown_text(items, count.unknown, units)) + memory_text(items);
  if (count.known == 0) return "no piece has a known resistance" + unknown;
  const HardwareItem& weakest = items.front();
  const std::string first = weakest.name + " bears " + times_text(weakest) + " times its " +
                            load_text(weakest.kind, AtMost{weakest.load}, units) + ", " + weakest.where;
  const std::string pieces = counted(count.known, "piece", "pieces");
  if (count.too_weak == 0) return "every one of " + pieces + " bears what it gets; the weakest, " + first + unknown;
  return std::to_string(count.too_weak) + " of " + pieces +
         (count.too_weak == 1 ? " bears less than it gets" : " bear less than they get") + ": the weakest, " + first +
         unknown;
}

void write_hardware(ReportPage& page, const std::vector<HardwareItem>& items, DisplayUnits units) {
  if (items.empty()) return;
  Table table;
  for (const std::size_t column : {0U, 2U, 3U}) table.figures(column);
  table.row({"times", "piece", "gets", "bears", "", "status", "worst"});
  for (const HardwareItem& item : items) {
    table.row({times_text(item), item.name, load_text(item.kind, AtMost{item.load}, units), bears_text(item, units),
               answer_of(item), status_words(item), item.where});
  }
  page.table("HARDWARE, the weakest first", table);
  page.heading("WHAT THE PIECES BEAR BY");
  for (const Explained& e : explanations(items)) page.paragraph(e.pieces + ": " + e.text);
}

Json hardware_json(const std::vector<HardwareItem>& items) {
  Json out = Json::array();
  for (const HardwareItem& item : items) {
    const auto ratio = item.ratio();
    out.push_back({{"piece", item.name},
                   {"unit", kind_unit(item.kind)},
                   {"load", json_number(item.load)},
                   {"resistance", json_number(item.resistance)},
                   {"ratio", json_number(ratio)},
                   {"worst", item.where},
                   {"basis", item.basis},
                   {"status", status_words(item)},
                   {"dynamic", json_number(item.dynamic)},
                   {"at_breaking", item.ultimate},
                   {"not_to_break", json_number(item.not_to_break)},
                   {"judged", item.judged},
                   {"note", item.note}});
  }
  return out;
}

}  // namespace stowpath
