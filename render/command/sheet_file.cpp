#include "render/command/sheet_file.h"

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/paint/cairo.h"
#include "render/paint/svg.h"

namespace stowpath {
// A name that is its ending and nothing else does not count.
bool ends_with(const std::string& name, std::string_view end) {
  const std::string last = name.substr(name.find_last_of('/') + 1);
  return last.size() > end.size() && last.compare(last.size() - end.size(), end.size(), end) == 0;
}

void check_sheet_name(const std::string& option, const std::string& name) {
  for (const char* end : {".svg", ".pdf", ".png"}) {
    if (ends_with(name, end)) return;
  }
  throw UsageFault(option + " " + name + ": a sheet is written as .svg, .pdf or .png",
                   "give it a name that ends so, as in " + option + " sheet.pdf");
}

void write_sheet(const std::string& name, const DisplayList& sheet) {
  if (ends_with(name, ".pdf")) return write_whole(name, paint_pdf({&sheet, 1}));
  write_whole(name, ends_with(name, ".png") ? paint_png(sheet) : paint_svg(sheet));
}

}  // namespace stowpath
