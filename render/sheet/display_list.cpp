#include "render/sheet/display_list.h"

#include <algorithm>
#include <utility>

namespace stowpath {

// Built in place: GCC 12 warns falsely of uninitialised members where a variant is moved into a vector.

void DisplayList::path(std::vector<Vec2> points, bool closed, std::optional<Pen> pen, std::optional<Ink> fill) {
  if (points.size() < 2) return;
  Path& item = std::get<Path>(items.emplace_back(std::in_place_type<Path>));
  item.points = std::move(points);
  item.closed = closed;
  item.pen = pen;
  item.fill = fill;
}

void DisplayList::box(Vec2 least, Vec2 greatest, std::optional<Pen> pen, std::optional<Ink> fill) {
  path({least, {greatest.x, least.y}, greatest, {least.x, greatest.y}}, true, pen, fill);
}

void DisplayList::circle(Vec2 centre, double radius, std::optional<Pen> pen, std::optional<Ink> fill) {
  Arc& item = std::get<Arc>(items.emplace_back(std::in_place_type<Arc>));
  item.centre = centre;
  item.radius = radius;
  item.pen = pen;
  item.fill = fill;
}

void DisplayList::arc(Vec2 centre, double radius, double from, double sweep, const Pen& pen) {
  Arc& item = std::get<Arc>(items.emplace_back(std::in_place_type<Arc>));
  item.centre = centre;
  item.radius = radius;
  item.from = from;
  item.sweep = sweep;
  item.pen = pen;
}

void DisplayList::text(Text lettering) { items.emplace_back(std::in_place_type<Text>, std::move(lettering)); }

void DisplayList::open(std::string id, std::string says) {
  Group& item = std::get<Group>(items.emplace_back(std::in_place_type<Group>));
  item.id = std::move(id);
  item.title = std::move(says);
}

void DisplayList::close() { std::get<Group>(items.emplace_back(std::in_place_type<Group>)).opens = false; }

void DisplayList::lay(const DisplayList& sheet, Vec2 corner) {
  const Vec2 size{sheet.width, sheet.height};
  width = std::max(width, corner.x + size.x);
  height = std::max(height, corner.y + size.y);
  open("", sheet.title);
  items.emplace_back(std::in_place_type<Inset>, Inset{corner, size, true});
  items.insert(items.end(), sheet.items.begin(), sheet.items.end());
  items.emplace_back(std::in_place_type<Inset>, Inset{corner, size, false});
  close();
}

DisplayList on_one_sheet(std::vector<LaidSheet> sheets) {
  if (sheets.size() == 1) return std::move(sheets.front().sheet);
  DisplayList out;
  for (const auto& [sheet, corner] : sheets) {
    if (out.title.empty()) out.title = sheet.title;
    out.description += (out.description.empty() ? "" : "; ") + sheet.description;
    out.lay(sheet, corner);
  }
  return out;
}

}  // namespace stowpath
