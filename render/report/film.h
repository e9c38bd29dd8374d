#pragma once

#include <functional>
#include <string>

#include "render/sheet/display_list.h"

namespace stowpath {

/// A film's picture at a time. @param faster  how many times as fast it plays: to be said in it
using FilmPicture = std::function<DisplayList(double time, int faster)>;

/// How many times as fast a motion is to be played so that it lasts no more than 20 s.
int film_speed(double lasts);

/// Pictures of one size as an animated WebP, the last of them standing a while before it begins again.
/// @param begins, lasts  the motion's time [s]
/// @throws std::runtime_error where it cannot be painted
std::string make_film(double begins, double lasts, const FilmPicture& picture);

}  // namespace stowpath
