#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "render/window/page.h"

namespace stowpath {

/// The notes beside the picture: the verdict and the last message always in view, between them one page at a time.
class Notes {
 public:
  Notes();

  /// @param left, width, height  of the strip they lie on [pixels]
  void show(Desk& desk, float left, float width, float height);

  /// Opens the page of a digit. @returns whether there is one
  bool open(int digit);

  /// Whether the picture beside the open page is that of the rehearsal.
  bool rehearses() const { return pages_[open_]->rehearses(); }

  /// Writes what they say, the open page as a whole, as plain text when they are shown next: for those to whom it has to be sent or read out.
  void write_next(std::string file) { file_ = std::move(file); }

 private:
  void question(Desk& desk);
  void naming(Desk& desk);
  void tabs(float width);
  void begin_writing() const;
  void end_writing(Desk& desk);

  std::vector<std::unique_ptr<Page>> pages_;
  std::size_t open_ = 0;
  std::string new_name_;      // typed, to save under
  bool naming_begun_ = false;
  std::string file_;  // to write what they say to; empty: none
};

}  // namespace stowpath
