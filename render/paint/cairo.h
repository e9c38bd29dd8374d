#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "render/sheet/display_list.h"

namespace stowpath {

/// Sheets as one PDF file, a page each, at true size: for the printer, so the paper is left white. Text stays text.
/// The same lists give the same bytes.
/// @throws std::runtime_error where cairo fails, or a text is not UTF-8
std::string paint_pdf(std::span<const DisplayList> sheets);

/// A sheet as a PNG file on warm paper.
/// @throws std::invalid_argument where the picture would be more than 16384 dots wide or high, or less than one;
///         std::runtime_error as paint_pdf
std::string paint_png(const DisplayList& sheet, double dots_per_inch = 150.0);

/// A picture in memory.
struct Raster {
  int width = 0, height = 0;
  std::vector<std::uint32_t> pixels;  ///< rows from the top; 0xAARRGGBB, opaque
};

/// A sheet as a picture. @throws as paint_png
Raster paint_raster(const DisplayList& sheet, double dots_per_inch);

}  // namespace stowpath
