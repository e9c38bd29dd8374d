#include "render/paint/typeface.h"

#include <algorithm>
#include <mutex>
#include <stdexcept>

#include <cairo/cairo-ft.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include "render/paint/font.h"
#include "render/sheet/lettering.h"

namespace stowpath {
namespace {

// Never closed: cairo keeps faces in its own cache for as long as it likes, and they need their library.
FT_Library library() {
  static const FT_Library opened = [] {
    FT_Library out = nullptr;
    if (FT_Init_FreeType(&out) != 0) throw std::runtime_error("FreeType does not start");
    return out;
  }();
  return opened;
}

// FreeType has each library's faces in one list, without a lock: who opens or closes one has to be alone with it.
std::mutex& opening() {
  static std::mutex one_at_a_time;
  return one_at_a_time;
}

void close_face(void* face) {
  const std::lock_guard alone(opening());
  FT_Done_Face(static_cast<FT_Face>(face));
}

FT_Face open_lettering() {
  const auto bytes = lettering_font();
  const std::lock_guard alone(opening());
  FT_Face face = nullptr;
  if (FT_New_Memory_Face(library(), bytes.data(), static_cast<FT_Long>(bytes.size()), 0, &face) != 0)
    throw std::runtime_error("the lettering's font cannot be opened");
  return face;
}

FT_Face open_other() {
  const std::lock_guard alone(opening());
  FT_Face face = nullptr;
  return FT_New_Face(library(), kTextFont, 0, &face) == 0 ? face : nullptr;
}

// The FreeType face goes when cairo lets go of its own.
cairo_font_face_t* for_cairo(FT_Face face) {
  static const cairo_user_data_key_t key{};
  if (!face) return nullptr;
  cairo_font_face_t* out = cairo_ft_font_face_create_for_ft_face(face, FT_LOAD_NO_HINTING);
  cairo_font_face_set_user_data(out, &key, face, close_face);
  return out;
}

FT_ULong code_point(std::string_view letter) {
  const auto byte = [&](std::size_t i) { return static_cast<FT_ULong>(static_cast<unsigned char>(letter[i])); };
  switch (letter.size()) {
    case 1:
      return byte(0);
    case 2:
      return (byte(0) & 0x1F) << 6 | (byte(1) & 0x3F);
    case 3:
      return (byte(0) & 0x0F) << 12 | (byte(1) & 0x3F) << 6 | (byte(2) & 0x3F);
    default:
      return (byte(0) & 0x07) << 18 | (byte(1) & 0x3F) << 12 | (byte(2) & 0x3F) << 6 | (byte(3) & 0x3F);
  }
}

}  // namespace

struct Typeface::Faces {
  FT_Face letters = nullptr, other = nullptr;
  cairo_font_face_t* lettering = nullptr;
  cairo_font_face_t* fallback = nullptr;

  cairo_font_face_t* face_for(std::string_view letter) const {
    const FT_ULong code = code_point(letter);
    const bool missing = FT_Get_Char_Index(letters, code) == 0;
    return missing && other && FT_Get_Char_Index(other, code) != 0 ? fallback : lettering;
  }

  ~Faces() {
    if (fallback) cairo_font_face_destroy(fallback);
    if (lettering) cairo_font_face_destroy(lettering);
  }
};

Typeface::Typeface() : faces_(std::make_unique<Faces>()) {
  faces_->letters = open_lettering();
  faces_->other = open_other();
  faces_->lettering = for_cairo(faces_->letters);
  faces_->fallback = for_cairo(faces_->other);
}

Typeface::~Typeface() = default;

cairo_font_face_t* Typeface::lettering() const { return faces_->lettering; }

std::vector<FaceRun> Typeface::runs(std::string_view utf8) const {
  std::vector<FaceRun> out;
  for (std::size_t i = 0; i < utf8.size();) {
    const std::size_t bytes = std::min(letter_bytes(static_cast<unsigned char>(utf8[i])), utf8.size() - i);
    cairo_font_face_t* face = faces_->face_for(utf8.substr(i, bytes));
    if (!out.empty() && out.back().face == face) {
      out.back().words = {out.back().words.data(), out.back().words.size() + bytes};
    } else {
      out.push_back({face, utf8.substr(i, bytes)});
    }
    i += bytes;
  }
  return out;
}

}  // namespace stowpath
