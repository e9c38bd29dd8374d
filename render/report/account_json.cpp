#include "render/report/account_json.h"

#include <string>

#include "render/report/account_words.h"
#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

Json bounds_json(const RehearsalBounds& bounds) {
  Json out{{"step_s", json_number(bounds.step)},
           {"energy_gain_j", json_number(bounds.energy_gain)},
           {"energy_scale_j", json_number(bounds.energy_scale)},
           {"touch_distance_m", json_number(bounds.touch_gap)},
           {"world_skin_m", json_number(kWorldSkin)}};
  out["half_step"] = bounds.compared
                         ? Json{{"pull_n", json_number(bounds.pull)},         {"lean_deg", json_degrees(bounds.lean)},
                                {"push_n", json_number(bounds.push)},         {"swing_deg", json_degrees(bounds.swing)},
                                {"top_speed_m_s", json_number(bounds.speed)}, {"only_at_this_step", bounds.only_here},
                                {"only_at_half_the_step", bounds.only_finer}}
                         : Json(nullptr);
  out["half_step_refused"] = bounds.too_swift_again;
  return out;
}

Json troubles_json(const std::vector<Trouble>& troubles, DisplayUnits units) {
  Json out = Json::array();
  for (const Trouble& trouble : troubles)
    out.push_back({{"kind", trouble_word(trouble.kind)},
                   {"what", trouble.what},
                   {"other", trouble.other},
                   {"value", json_number(trouble.value)},
                   {"also", json_number(trouble.also)},
                   {"text", trouble_text(trouble, units)}});
  return out;
}

}  // namespace stowpath
