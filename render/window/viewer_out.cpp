#include <chrono>
#include <exception>
#include <filesystem>
#include <utility>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/command/moves_file.h"
#include "render/command/sheet_file.h"
#include "render/window/viewer.h"

namespace stowpath {
namespace {

/// A scene's moves with all that they are drawn from: the window goes on meanwhile.
struct MovesJob {
  std::string name;
  Scene scene;
  Model model;
  DryFit fit;
  DisplayUnits units;

  std::string operator()() const {
    try {
      write_moves(name, {scene, model, fit, units});
      return "Written: " + name;
    } catch (const std::exception& fault) {
      return name + ": " + fault.what();
    }
  }
};

bool is_picture_name(const std::string& name) {
  return ends_with(name, ".svg") || ends_with(name, ".pdf") || ends_with(name, ".png");
}

}  // namespace

// Beside the one that the command line may have named.
void Viewer::export_notes() {
  const std::string name = std::filesystem::path(desk_.out_name).replace_extension(".txt").string();
  if (!may_write(name)) return;
  notes_file_ = name;
  notes_.take_down();
}

void Viewer::write_notes(const std::string& said) {
  try {
    write_whole(notes_file_, said);
    out_files_.wrote(notes_file_);
    desk_.message = "Written: " + notes_file_;
  } catch (const FileFault& fault) {
    desk_.message = fault.file + ": " + fault.what();
  }
}

bool Viewer::may_write(const std::string& name) {
  if (out_files_.may_write(name)) return true;
  desk_.message = name + " is there already, and was not written from this window. Ask once more to write over it.";
  return false;
}

void Viewer::write_out() {
  const std::string& name = desk_.out_name;
  if (!is_picture_name(name) && !is_moves_name(name)) {
    desk_.message = name + ": a picture is written as .svg, .pdf or .png, the moves as .webp or .html.";
  } else if (!may_write(name)) {
    return;
  } else if (is_moves_name(name)) {
    write_moves_beside();
  } else {
    write_picture(name);
  }
}

DisplayList Viewer::rehearsal_picture() const {
  return on_one_sheet({{rehearsal_.side_picture(), {}}, {rehearsal_.gauges_picture(), {0.0, rehearsal_side().y}}});
}

void Viewer::write_picture(const std::string& name) {
  try {
    write_sheet(name, rehearses() ? rehearsal_picture() : board_picture(wish(), board_));
    out_files_.wrote(name);
    desk_.message = "Written: " + name;
  } catch (const std::exception& fault) {
    desk_.message = name + ": " + fault.what();
  }
}

// Each picture of a film is drawn and packed: seconds, in which nothing waits.
void Viewer::write_moves_beside() {
  if (writing_.valid()) {
    desk_.message = "The moves are still being written.";
    return;
  }
  if (studio_.proving()) {
    desk_.message = "The moves are written with their verdict: ask again when the proof is there.";
    return;
  }
  desk_.message = "Writing " + desk_.out_name + " ...";
  out_files_.wrote(desk_.out_name);
  writing_ = std::async(std::launch::async,
                        MovesJob{desk_.out_name, studio_.scene(), studio_.model(), studio_.fit(), studio_.units()});
}

void Viewer::look_at_writing() {
  if (writing_.valid() && writing_.wait_for(std::chrono::seconds(0)) == std::future_status::ready)
    desk_.message = writing_.get();
}

}  // namespace stowpath
