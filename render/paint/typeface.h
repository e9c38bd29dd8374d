#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include <cairo/cairo.h>

namespace stowpath {

/// Letters of one run that one face has.
struct FaceRun {
  cairo_font_face_t* face = nullptr;  ///< owned by the typeface
  std::string_view words;
};

/// The lettering for cairo, straight from the font's bytes: no font configuration of the machine is asked, so the same
/// drawing has the same letters everywhere. Letters that it lacks come from DejaVu Sans where that is installed.
/// Each thread needs one of its own.
class Typeface {
 public:
  Typeface();  ///< @throws std::runtime_error where FreeType fails
  ~Typeface();
  Typeface(const Typeface&) = delete;
  Typeface& operator=(const Typeface&) = delete;

  cairo_font_face_t* lettering() const;
  /// Cuts a text where the face changes.
  std::vector<FaceRun> runs(std::string_view utf8) const;

 private:
  struct Faces;
  std::unique_ptr<Faces> faces_;
};

}  // namespace stowpath
