#include "sim/rehearsal/span_check.h"

#include <cmath>
#include <stdexcept>
#include <string>

namespace stowpath {
namespace {

constexpr double kLongestStep = 1.0 / 60.0;  // [s]
constexpr double kMostCoordinate = 100.0;    // [m]

void demand(bool holds, const char* what) {
  if (!holds) throw std::invalid_argument(std::string("span world: ") + what);
}

bool place(double value) { return std::abs(value) <= kMostCoordinate; }
bool place(Interval stretch) { return place(stretch.lo) && place(stretch.hi) && stretch.lo <= stretch.hi; }

void check_stair(const SpanStair& stair) {
  demand(stair.mass > 0.0 && stair.inertia > 0.0 && std::isfinite(stair.mass) && std::isfinite(stair.inertia),
         "mass and inertia must be positive");
  demand(!stair.hooks.empty(), "the stair hangs on no hook");
  demand(stair.hook_rod > 1e-3 && stair.pipe_radius > 1e-3, "the rod and the pipe must be over a millimetre");
  demand(stair.play() > 2.0 * kSpanSkin, "the hooks' play must be over 0.2 mm");
  demand(place(stair.centre.x) && place(stair.centre.y) && place(stair.hook_inside) && place(stair.hook_rod),
         "a coordinate is over 100 m");
  for (const SpanHook& hook : stair.hooks) demand(place(hook.x) && hook.load >= 0.0, "a hook's place or load");
  for (const SpanCaster& caster : stair.casters)
    demand(place(caster.at.x) && place(caster.at.y) && caster.load >= 0.0, "a caster's place or load");
}

void check_site(const SpanSite& site) {
  demand(place(site.pipe) && site.pipe.length() > 1e-3, "the pipe's ends");
  for (const SpanBump& bump : site.bumps)
    demand(place(bump.moving) && place(bump.fixed) && place(bump.out), "a bump's stretches");
}

void check_friction(const SpanFriction& friction) {
  demand(friction.hook >= 0.0 && friction.floor >= 0.0 && friction.rolling_arm >= 0.0 && friction.hook < 10.0 &&
             friction.floor < 10.0 && friction.rolling_arm < 1.0,
         "friction must be from 0 to 10, a rolling arm under a metre");
}

}  // namespace

void check_span(const SpanStair& stair, const SpanSite& site, const SpanFriction& friction, double station,
                double step) {
  check_stair(stair);
  check_site(site);
  check_friction(friction);
  demand(place(station), "the station is over 100 m");
  demand(step > 0.0 && step <= kLongestStep, "the step must be over 0 and at most 1/60 s");
}

}  // namespace stowpath
