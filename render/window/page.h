#pragma once

#include <memory>
#include <vector>

#include "render/window/desk.h"

namespace stowpath {

/// One page of the notes beside the picture.
class Page {
 public:
  Page() = default;
  virtual ~Page() = default;
  Page(const Page&) = delete;
  Page& operator=(const Page&) = delete;

  virtual const char* name() const = 0;  ///< on its tab and over it
  virtual int key() const = 0;           ///< the digit that opens it
  virtual void show(Desk& desk) = 0;     ///< its widgets, within a frame of Dear ImGui
  virtual bool rehearses() const { return false; }  ///< the picture beside it is that of the rehearsal
};

/// The moves as numbered slips, running through them, and where the stair stands.
std::unique_ptr<Page> work_page();
/// What was proven to meet, and its cures.
std::unique_ptr<Page> findings_page();
/// Every number of the scene, to be changed in place.
std::unique_ptr<Page> measures_page();
/// The physics of the procedure, run and meddled with.
std::unique_ptr<Page> rehearsal_page();
/// What is shown, writing it out, and the keys.
std::unique_ptr<Page> view_page();

/// All of them, in the order of their tabs.
std::vector<std::unique_ptr<Page>> all_pages();

}  // namespace stowpath
