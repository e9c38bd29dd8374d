#include "render/paint/svg.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "render/paint/number.h"
#include "render/paint/palette.h"
#include "render/sheet/dashes.h"
#include "render/sheet/lettering.h"

namespace stowpath {
namespace {

constexpr std::array<const char*, kInks> kInkNames{"paper", "line", "soft", "faint", "red",
                                                   "wash",  "blue", "wood", "wall"};
const char* name(Ink ink) { return kInkNames.at(static_cast<std::size_t>(ink)); }

std::string number(double value) { return drawing_number(value); }

std::string hex(const Colour& colour) {
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "#%02x%02x%02x", unsigned{colour.red}, unsigned{colour.green},
                unsigned{colour.blue});
  return text.data();
}

std::string dash_text(Dash dash) {
  std::string text;
  for (const double length : dash_lengths(dash)) text += (text.empty() ? "" : " ") + number(length);
  return text;
}

}  // namespace

std::string svg_style() {
  std::string css =
      "text{font-family:'Routed Gothic','DejaVu Sans Condensed','DejaVu Sans',sans-serif}"
      "path,circle,rect{fill:none;stroke-linecap:round;stroke-linejoin:round}"
      ".hidden{stroke-dasharray:" +
      dash_text(Dash::hidden) + "}.chain{stroke-dasharray:" + dash_text(Dash::chain) + "}";
  for (int i = 0; i < kInks; ++i) {
    const Ink ink = static_cast<Ink>(i);
    const Colour colour = paper_colour(ink);
    const std::string opacity = colour.opacity < 1.0 ? ";fill-opacity:" + number(colour.opacity) : "";
    css += std::string(".s-") + name(ink) + "{stroke:" + hex(colour) + "}.f-" + name(ink) + "{fill:" + hex(colour) +
           opacity + "}";
  }
  return css;
}

namespace {

class SvgPainter {
 public:
  void operator()(const Group& group) {
    if (!group.opens) {
      out_ += "</g>\n";
      return;
    }
    out_ += "<g" + (group.id.empty() ? "" : " id=\"" + xml_escaped(group.id) + "\"") + ">";
    if (!group.title.empty()) out_ += "<title>" + xml_escaped(group.title) + "</title>";
    out_ += "\n";
  }

  void operator()(const Inset& inset) {
    if (!inset.opens) {
      out_ += "</svg>\n";
      return;
    }
    out_ += "<svg overflow=\"hidden\" x=\"" + number(inset.corner.x) + "\" y=\"" + number(inset.corner.y) + "\" width=\"" +
            number(inset.size.x) + "\" height=\"" + number(inset.size.y) + "\">\n";
  }

  void operator()(const Path& path) {
    std::string data;
    for (const Vec2& point : path.points) {
      data += (data.empty() ? "M" : "L") + number(point.x) + " " + number(point.y);
    }
    out_ += "<path" + look(path.pen, path.fill) + " d=\"" + data + (path.closed ? "Z" : "") + "\"/>\n";
  }

  void operator()(const Arc& arc) {
    const std::string radius = number(arc.radius);
    if (arc.whole()) {
      out_ += "<circle" + look(arc.pen, arc.fill) + " cx=\"" + number(arc.centre.x) + "\" cy=\"" +
              number(arc.centre.y) + "\" r=\"" + radius + "\"/>\n";
      return;
    }
    const Vec2 a = end_of(arc, arc.from), b = end_of(arc, arc.from + arc.sweep);
    const char* large = std::abs(arc.sweep) > std::numbers::pi ? " 0 1 " : " 0 0 ";
    out_ += "<path" + look(arc.pen, arc.fill) + " d=\"M" + number(a.x) + " " + number(a.y) + "A" + radius + " " +
            radius + large + (arc.sweep > 0 ? "0 " : "1 ") + number(b.x) + " " + number(b.y) + "\"/>\n";
  }

  void operator()(const Text& text) {
    const Lettering line = letter(text.words, text.size);
    const double start = line_start(text.anchor, line.width);
    out_ += "<g transform=\"translate(" + number(text.at.x) + " " + number(text.at.y) + ")";
    if (text.turn != 0.0) out_ += " rotate(" + number(-text.turn * 180.0 / std::numbers::pi) + ")";
    out_ += "\">";
    if (text.halo) halo(start, line.width, text.size);
    out_ += std::string("<text class=\"f-") + name(text.ink) + "\"";
    if (line.runs.size() > 1) out_ += " aria-label=\"" + xml_escaped(text.words) + "\"";
    out_ += ">";
    for (const LetterRun& run : line.runs) span(run, start);
    out_ += "</text></g>\n";
  }

  std::string out_;

 private:
  static Vec2 end_of(const Arc& arc, double angle) {
    return {arc.centre.x + arc.radius * std::cos(angle), arc.centre.y - arc.radius * std::sin(angle)};
  }

  static std::string look(const std::optional<Pen>& pen, const std::optional<Ink>& fill) {
    std::string classes;
    if (pen) classes += std::string("s-") + name(pen->ink);
    if (pen && pen->dash == Dash::hidden) classes += " hidden";
    if (pen && pen->dash == Dash::chain) classes += " chain";
    if (fill) classes += (classes.empty() ? "f-" : " f-") + std::string(name(*fill));
    return " class=\"" + classes + "\"" + (pen ? " stroke-width=\"" + number(pen->width) + "\"" : "");
  }

  void halo(double start, double width, double size) {
    const double margin = kHaloMargin * size;
    out_ += "<rect class=\"f-paper\" x=\"" + number(start - margin) + "\" y=\"" + number(-size - margin) +
            "\" width=\"" + number(width + 2 * margin) + "\" height=\"" + number(size + 2 * margin) + "\"/>";
  }

  // The length is stated so that a viewer without the lettering font keeps the layout.
  void span(const LetterRun& run, double start) {
    out_ += "<tspan x=\"" + number(start + run.x) + "\" y=\"" + number(-run.rise) + "\" font-size=\"" +
            number(run.size * kBodyPerCapital) + "\"";
    if (run.width > 0.0) out_ += " textLength=\"" + number(run.width) + "\" lengthAdjust=\"spacingAndGlyphs\"";
    out_ += ">" + xml_escaped(run.words) + "</tspan>";
  }
};

}  // namespace

std::string svg_items(std::span<const Item> items) {
  SvgPainter painter;
  for (const Item& item : items) std::visit(painter, item);
  return painter.out_;
}

std::string paint_svg(const DisplayList& sheet) {
  const std::string width = number(sheet.width), height = number(sheet.height);
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width +
         "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height +
         "\" role=\"img\" style=\"max-width:100%;height:auto\">\n<title>" + xml_escaped(sheet.title) +
         "</title>\n<desc>" + xml_escaped(sheet.description) + "</desc>\n<style>" + svg_style() +
         "</style>\n<rect class=\"f-paper\" width=\"" + width + "\" height=\"" + height + "\"/>\n" +
         svg_items(sheet.items) + "</svg>\n";
}

}  // namespace stowpath
