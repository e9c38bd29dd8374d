#pragma once

#include <cstddef>
#include <memory>
#include <optional>
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

  /// Has what they say noted as plain text when they are shown next, the open page as a whole: for those to whom it has
  /// to be sent or read out.
  void take_down() { taking_down_ = true; }
  /// What was taken down since it was asked last; none where nothing was.
  std::optional<std::string> taken_down() { return std::exchange(taken_down_, std::nullopt); }

 private:
  void question(Desk& desk);
  void naming(Desk& desk);
  void tabs(float width);
  void begin_taking_down() const;
  void end_taking_down();

  std::vector<std::unique_ptr<Page>> pages_;
  std::size_t open_ = 0;
  std::string new_name_;      // typed, to save under
  bool naming_begun_ = false;
  bool taking_down_ = false;
  std::optional<std::string> taken_down_;
};

}  // namespace stowpath
