#include "sim/loads/load_case.h"

#include <algorithm>

#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr Source kConcentrated{"S-IRC-live", "IRC Table R301.5, stairs: 300 lb on 4 square inches",
                               SourceStatus::verified};
constexpr Source kFootfall{"S-DYN-foot", "footfalls reach about 1.5 times a person's weight on stairs",
                           SourceStatus::memory};
constexpr Source kPush{"S-HUM-60lb", "an average man pulls about 60 lb level on a rope", SourceStatus::verified};
constexpr Source kLeaning{"S-AN-reach", "a body beyond its foot by about half a reach", SourceStatus::judgement};
constexpr Source kFiveTimes{"S-OSHA-25b6",
                            "29 CFR 1910.25(b)(6): five times the usual load, 1,000 lb at least, anywhere",
                            SourceStatus::verified};

}  // namespace

std::vector<LoadCase> load_cases(const Climber& climber) {
  constexpr double kLeastAnywhere = 1000 * kPound, kUsualLoads = 5.0;
  const double broken_by = std::max(kLeastAnywhere, kUsualLoads * climber.usual);
  return {
      {"one person", climber.mass, climber.aside, 0.0, 0.0, false, false, kConcentrated},
      {"climbing", climber.usual * climber.footfall, climber.aside, 0.0, 0.0, false, false, kFootfall},
      {"stepping off the top", climber.usual, climber.aside, 0.0, climber.push, true, false, kPush},
      {"leaning out", climber.usual, climber.aside, climber.leans_out, 0.0, false, false, kLeaning},
      {"what must not break it", broken_by, 0.0, 0.0, 0.0, false, true, kFiveTimes},
  };
}

}  // namespace stowpath
