#include "render/report/film.h"

#include <algorithm>
#include <cmath>

#include "render/paint/webp.h"

namespace stowpath {
namespace {

constexpr double kDotsPerInch = 120.0;
constexpr double kLongest = 20.0;      // of the film [s]
constexpr double kPicture = 0.12;      // from one picture to the next [s]
constexpr int kLastPicture = 2000;     // it stands before the film begins again [ms]

}  // namespace

int film_speed(double lasts) { return std::max(1, static_cast<int>(std::ceil(lasts / kLongest))); }

std::string make_film(double begins, double lasts, const FilmPicture& picture) {
  const int faster = film_speed(lasts);
  const auto pictures = static_cast<std::size_t>(std::ceil(lasts / (faster * kPicture)));
  const auto painted = [&](double time) { return paint_raster(picture(time, faster), kDotsPerInch); };
  const Raster last = painted(begins + lasts);
  WebpAnimation film(last.width, last.height);
  for (std::size_t i = 0; i < pictures; ++i)
    film.add(painted(begins + static_cast<double>(i) * faster * kPicture), static_cast<int>(1000.0 * kPicture));
  film.add(last, kLastPicture);
  return film.finish();
}

}  // namespace stowpath
