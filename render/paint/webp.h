#pragma once

#include <memory>
#include <string>

#include "render/paint/cairo.h"

namespace stowpath {

/// Pictures of one size, one after the other, as an animated WebP file without loss. The same pictures give the same
/// bytes.
class WebpAnimation {
 public:
  /// @throws std::invalid_argument where a side is not within 1 to 16383 dots; std::runtime_error where libwebp fails
  WebpAnimation(int width, int height);
  ~WebpAnimation();
  WebpAnimation(WebpAnimation&&) noexcept;
  WebpAnimation& operator=(WebpAnimation&&) noexcept;

  /// @param milliseconds  how long it stands
  /// @throws std::invalid_argument where it is of another size or stands for no time; std::runtime_error
  void add(const Raster& picture, int milliseconds);

  /// The file's bytes. It plays over and over. @throws std::logic_error without a picture; std::runtime_error
  std::string finish();

 private:
  struct Encoder;
  std::unique_ptr<Encoder> encoder_;
};

}  // namespace stowpath
