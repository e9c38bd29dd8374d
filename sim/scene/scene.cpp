#include "sim/scene/scene.h"

namespace stowpath {

SourcePos place_of(const Scene& scene, const std::string& key) {
  std::string path = key;
  while (true) {
    const auto found = scene.where.find(path);
    if (found != scene.where.end()) return found->second;
    if (path.empty()) return {};
    const auto end = path.find_last_of(".[");
    path.erase(end == std::string::npos ? 0 : end);
  }
}

}  // namespace stowpath
