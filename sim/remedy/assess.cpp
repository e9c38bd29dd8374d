#include "sim/remedy/assess.h"

#include <utility>

#include "sim/hoist/seat_findings.h"
#include "sim/loads/sag.h"
#include "sim/remedy/seated.h"

namespace stowpath {

Assessment assess(const Scene& scene, const AssessOptions& options) {
  return assess(scene, build_model(scene), options);
}

Assessment assess(const Scene& scene, Model model, const AssessOptions& options) {
  Assessment out;
  out.model = std::move(model);
  if (options.sagged) out.model = sagged(scene, out.model);
  if (options.seat) {
    out.seat = look_at_seat(scene, out.model, options.seated);
    count_with_seat(out.seat, out.model);
  }
  out.fit = dry_fit(out.model, options.fit);
  if (options.seat) add_findings(seat_findings(out.model, out.seat), out.fit);
  return out;
}

}  // namespace stowpath
