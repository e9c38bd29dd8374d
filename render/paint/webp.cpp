#include "render/paint/webp.h"

#include <algorithm>
#include <stdexcept>

#include <webp/encode.h>
#include <webp/mux.h>

namespace stowpath {
namespace {

constexpr int kMostDots = WEBP_MAX_DIMENSION;
constexpr float kEffort = 40.0F;  // of lossless coding, 0 to 100: line art gains little from more
constexpr int kMethod = 2;        // 0 fast to 6 small

void demand(bool done) {
  if (!done) throw std::runtime_error("drawing: the animation cannot be encoded");
}

WebPConfig lossless() {
  WebPConfig config;
  demand(WebPConfigInit(&config) != 0);
  config.lossless = 1;
  config.quality = kEffort;
  config.method = kMethod;
  return config;
}

/// A picture as libwebp holds it.
class Picture {
 public:
  explicit Picture(const Raster& raster) {
    demand(WebPPictureInit(&picture_) != 0);
    picture_.use_argb = 1;
    picture_.width = raster.width;
    picture_.height = raster.height;
    demand(WebPPictureAlloc(&picture_) != 0);
    for (int row = 0; row < raster.height; ++row) {
      const auto from = raster.pixels.begin() + static_cast<std::ptrdiff_t>(row) * raster.width;
      std::copy(from, from + raster.width, picture_.argb + static_cast<std::ptrdiff_t>(row) * picture_.argb_stride);
    }
  }
  ~Picture() { WebPPictureFree(&picture_); }
  Picture(const Picture&) = delete;
  Picture& operator=(const Picture&) = delete;

  WebPPicture* get() { return &picture_; }

 private:
  WebPPicture picture_{};
};

struct Delete {
  void operator()(WebPAnimEncoder* encoder) const { WebPAnimEncoderDelete(encoder); }
};

}  // namespace

struct WebpAnimation::Encoder {
  std::unique_ptr<WebPAnimEncoder, Delete> webp;
  int width = 0, height = 0;
  int milliseconds = 0;  // so far
};

WebpAnimation::WebpAnimation(int width, int height) {
  if (width < 1 || height < 1 || width > kMostDots || height > kMostDots)
    throw std::invalid_argument("animation: its sides must be 1 to 16383 dots");
  WebPAnimEncoderOptions options;
  demand(WebPAnimEncoderOptionsInit(&options) != 0);
  options.anim_params.loop_count = 0;  // for ever
  encoder_ = std::make_unique<Encoder>();
  encoder_->webp.reset(WebPAnimEncoderNew(width, height, &options));
  demand(encoder_->webp != nullptr);
  encoder_->width = width;
  encoder_->height = height;
}

WebpAnimation::~WebpAnimation() = default;
WebpAnimation::WebpAnimation(WebpAnimation&&) noexcept = default;
WebpAnimation& WebpAnimation::operator=(WebpAnimation&&) noexcept = default;

void WebpAnimation::add(const Raster& picture, int milliseconds) {
  if (picture.width != encoder_->width || picture.height != encoder_->height || milliseconds < 1)
    throw std::invalid_argument("animation: a picture of another size, or for no time");
  Picture copied(picture);
  const WebPConfig config = lossless();
  demand(WebPAnimEncoderAdd(encoder_->webp.get(), copied.get(), encoder_->milliseconds, &config) != 0);
  encoder_->milliseconds += milliseconds;
}

std::string WebpAnimation::finish() {
  if (encoder_->milliseconds == 0) throw std::logic_error("animation: it has no picture");
  demand(WebPAnimEncoderAdd(encoder_->webp.get(), nullptr, encoder_->milliseconds, nullptr) != 0);
  WebPData data;
  WebPDataInit(&data);
  demand(WebPAnimEncoderAssemble(encoder_->webp.get(), &data) != 0);
  const std::string bytes(reinterpret_cast<const char*>(data.bytes), data.size);
  WebPDataClear(&data);
  return bytes;
}

}  // namespace stowpath
