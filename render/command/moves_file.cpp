#include "render/command/moves_file.h"

#include "render/command/files.h"
#include "render/command/sheet_file.h"
#include "render/studio/moves_motion.h"

namespace stowpath {

bool is_moves_name(const std::string& name) { return ends_with(name, ".webp") || ends_with(name, ".html"); }

void write_moves(const std::string& name, const Subject& subject) {
  write_whole(name, ends_with(name, ".html") ? moves_page(subject) : moves_film(subject));
}

}  // namespace stowpath
