#include "render/paint/cairo.h"

#include <cmath>
#include <memory>
#include <stdexcept>

#include <cairo/cairo-pdf.h>

#include "render/paint/palette.h"
#include "render/paint/typeface.h"
#include "render/sheet/dashes.h"
#include "render/sheet/lettering.h"

namespace stowpath {
namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kPointsPerMillimetre = 72.0 / kMillimetresPerInch;
constexpr double kMostDots = 16384.0;

using Palette = Colour (*)(Ink);

struct Destroy {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
using Context = std::unique_ptr<cairo_t, Destroy>;
using Surface = std::unique_ptr<cairo_surface_t, Destroy>;

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(std::string("drawing: ") + cairo_status_to_string(status));
}

void no_hinting(cairo_t* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_set_font_options(context, options);
  cairo_font_options_destroy(options);
}

// Draws a list on a context whose unit is a millimetre of paper, y down.
class CairoPainter {
 public:
  CairoPainter(cairo_t* context, const Typeface& typeface, Palette palette)
      : c_(context), typeface_(typeface), palette_(palette) {
    cairo_set_line_cap(c_, CAIRO_LINE_CAP_ROUND);
    cairo_set_line_join(c_, CAIRO_LINE_JOIN_ROUND);
    no_hinting(c_);
  }

  void operator()(const Group&) {}

  void operator()(const Inset& inset) {
    if (!inset.opens) return cairo_restore(c_);
    cairo_save(c_);
    cairo_translate(c_, inset.corner.x, inset.corner.y);
    cairo_rectangle(c_, 0.0, 0.0, inset.size.x, inset.size.y);
    cairo_clip(c_);
  }

  void operator()(const Path& path) {
    cairo_new_path(c_);
    for (const Vec2& point : path.points) cairo_line_to(c_, point.x, point.y);
    if (path.closed) cairo_close_path(c_);
    fill_and_stroke(path.pen, path.fill);
  }

  void operator()(const Arc& arc) {
    cairo_new_path(c_);
    // The list's angles grow counter-clockwise as seen, cairo's with y down grow clockwise.
    if (arc.sweep < 0.0) {
      cairo_arc(c_, arc.centre.x, arc.centre.y, arc.radius, -arc.from, -arc.from - arc.sweep);
    } else {
      cairo_arc_negative(c_, arc.centre.x, arc.centre.y, arc.radius, -arc.from, -arc.from - arc.sweep);
    }
    if (arc.whole()) cairo_close_path(c_);
    fill_and_stroke(arc.pen, arc.fill);
  }

  void operator()(const Text& text) {
    const Lettering line = letter(text.words, text.size);
    const double start = line_start(text.anchor, line.width);
    cairo_save(c_);
    cairo_translate(c_, text.at.x, text.at.y);
    cairo_rotate(c_, -text.turn);
    if (text.halo) halo(start, line.width, text.size);
    ink(text.ink);
    for (const LetterRun& run : line.runs) set(run, start);
    cairo_restore(c_);
  }

 private:
  void ink(Ink which) {
    const Colour colour = palette_(which);
    cairo_set_source_rgba(c_, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0, colour.opacity);
  }

  void fill_and_stroke(const std::optional<Pen>& pen, const std::optional<Ink>& fill) {
    if (fill) ink(*fill), cairo_fill_preserve(c_);
    if (pen) stroke(*pen);
    cairo_new_path(c_);
  }

  void stroke(const Pen& pen) {
    const std::span<const double> dash = dash_lengths(pen.dash);
    cairo_set_line_width(c_, pen.width);
    cairo_set_dash(c_, dash.data(), static_cast<int>(dash.size()), 0.0);
    ink(pen.ink);
    cairo_stroke_preserve(c_);
  }

  void halo(double start, double width, double size) {
    const double margin = kHaloMargin * size;
    ink(Ink::paper);
    cairo_rectangle(c_, start - margin, -size - margin, width + 2 * margin, size + 2 * margin);
    cairo_fill(c_);
  }

  void set(const LetterRun& run, double start) {
    double x = start + run.x;
    for (const FaceRun& part : typeface_.runs(run.words)) {
      cairo_set_font_face(c_, part.face);
      cairo_set_font_size(c_, run.size * kBodyPerCapital);
      cairo_move_to(c_, x, -run.rise);
      const std::string words(part.words);
      cairo_text_extents_t extents;
      cairo_text_extents(c_, words.c_str(), &extents);
      cairo_show_text(c_, words.c_str());
      x += extents.x_advance;
    }
  }

  cairo_t* c_;
  const Typeface& typeface_;
  Palette palette_;
};

void paint(cairo_t* context, const DisplayList& sheet, const Typeface& typeface, Palette palette) {
  CairoPainter painter(context, typeface, palette);
  for (const Item& item : sheet.items) std::visit(painter, item);
  check(cairo_status(context));
}

cairo_status_t append(void* text, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

Surface picture(const DisplayList& sheet, double dots_per_inch, const Typeface& typeface) {
  const double scale = dots_per_inch / kMillimetresPerInch;
  const double width = std::ceil(sheet.width * scale), height = std::ceil(sheet.height * scale);
  if (!(width >= 1.0 && height >= 1.0 && width <= kMostDots && height <= kMostDots))
    throw std::invalid_argument("a picture of that many dots cannot be drawn");
  Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
  check(cairo_surface_status(surface.get()));
  const Context context(cairo_create(surface.get()));
  const Colour paper = paper_colour(Ink::paper);
  cairo_set_source_rgb(context.get(), paper.red / 255.0, paper.green / 255.0, paper.blue / 255.0);
  cairo_paint(context.get());
  cairo_scale(context.get(), scale, scale);
  paint(context.get(), sheet, typeface, paper_colour);
  cairo_surface_flush(surface.get());
  return surface;
}

void add_page(cairo_surface_t* surface, const DisplayList& sheet, const Typeface& typeface) {
  cairo_pdf_surface_set_size(surface, sheet.width * kPointsPerMillimetre, sheet.height * kPointsPerMillimetre);
  const Context context(cairo_create(surface));
  cairo_scale(context.get(), kPointsPerMillimetre, kPointsPerMillimetre);
  paint(context.get(), sheet, typeface, print_colour);
  cairo_show_page(context.get());
  check(cairo_status(context.get()));
}

}  // namespace

std::string paint_pdf(std::span<const DisplayList> sheets) {
  const Typeface typeface;
  std::string out;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &out, 1.0, 1.0));
  if (!sheets.empty()) {
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, sheets.front().title.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_SUBJECT, sheets.front().description.c_str());
  }
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Stowpath");
  // A sheet says nothing that depends on the day, so neither does its file: an empty date leaves the entry out.
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "");
  for (const DisplayList& sheet : sheets) add_page(surface.get(), sheet, typeface);
  cairo_surface_finish(surface.get());
  check(cairo_surface_status(surface.get()));
  return out;
}

std::string paint_png(const DisplayList& sheet, double dots_per_inch) {
  const Typeface typeface;
  const Surface surface = picture(sheet, dots_per_inch, typeface);
  std::string out;
  check(cairo_surface_write_to_png_stream(surface.get(), append, &out));
  return out;
}

// A film asks for a picture after the other: the faces are opened once.
Raster paint_raster(const DisplayList& sheet, double dots_per_inch) {
  thread_local const Typeface typeface;
  const Surface surface = picture(sheet, dots_per_inch, typeface);
  Raster out{cairo_image_surface_get_width(surface.get()), cairo_image_surface_get_height(surface.get()), {}};
  const auto* row = cairo_image_surface_get_data(surface.get());
  for (int y = 0; y < out.height; ++y, row += cairo_image_surface_get_stride(surface.get())) {
    const auto* pixel = reinterpret_cast<const std::uint32_t*>(row);
    for (int x = 0; x < out.width; ++x) out.pixels.push_back(pixel[x] | 0xFF000000U);
  }
  return out;
}

}  // namespace stowpath
