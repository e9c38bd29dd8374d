#include "sim/remedy/assess.h"

#include "sim/hoist/seat_findings.h"
#include "sim/loads/sag.h"
#include "sim/remedy/seated.h"

namespace stowpath {

Assessment assess(const Scene& scene, const AssessOptions& options) {
  Assessment out;
  out.model = build_model(scene);
  if (options.sagged) out.model = sagged(scene, out.model);
  if (options.seat) {
    out.seat = look_at_seat(scene, out.model, options.seated);
    count_with_seat(scene, out.seat, out.model);
  }
  out.fit = dry_fit(out.model, options.fit);
  if (options.seat) add_findings(seat_findings(out.model, out.seat), out.fit);
  return out;
}

}  // namespace stowpath
