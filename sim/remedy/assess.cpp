#include "sim/remedy/assess.h"

#include "sim/loads/sag.h"

namespace stowpath {

Assessment assess(const Scene& scene, const AssessOptions& options) {
  Assessment out;
  out.model = build_model(scene);
  if (options.sagged) out.model = sagged(scene, out.model);
  out.fit = dry_fit(out.model, options.fit);
  return out;
}

}  // namespace stowpath
