#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sim/scene/scene.h"

namespace stowpath {

inline constexpr std::string_view kFramingCaution =
    "a licensed engineer must accept this load on joists, trusses or roof members; we do not judge it";

/// Something that hangs from framing, and what it puts there.
struct FramedPoint {
  std::string name;      ///< "ceiling point", "bracket at station 1160 mm"
  bool ceiling = false;  ///< hangs from the ceiling's framing; else from the loft's
  double out = 0.0;      ///< [m]
  double station = 0.0;  ///< [m]
  double force = 0.0;    ///< worst, dynamic factor in [N]
  std::string where;     ///< in which state
};

/// What one member gets of it.
struct MemberShare {
  double at = 0.0;     ///< the member's middle: a station, or out from the back wall, as it runs [m]
  double force = 0.0;  ///< [N]
};

enum class FramingPlace {
  not_said,        ///< no framing, no spacing, or not where one member is
  on_member,       ///< straight on one: within half its thickness
  between_members  ///< what it is fixed to bridges two
};

/// Where something hangs among the members, and what each gets. Stated, never judged.
struct FramingLoad {
  FramedPoint point;
  FramingPlace place = FramingPlace::not_said;
  double off = 0.0;                  ///< from the middle of the nearest member [m]
  std::vector<MemberShare> members;  ///< nearest first; none where it is not said: one may get all
};

/// Each point among the members of its framing: on one within half its thickness, else between two, which share the
/// force by the lever rule as if a stiff board on both carried it. Trusses are taken as 1 1/2 in thick (a judgement).
std::vector<FramingLoad> framing_loads(const Scene& scene, const std::vector<FramedPoint>& points);

/// The scene's ceiling point, if it has one.
/// @param force  its worst, dynamic factor in [N]
std::vector<FramedPoint> ceiling_framed(const Scene& scene, double force, const std::string& where);

/// The brackets that are on the loft's edge, each with the worst force that any of them gets: none where they are fixed
/// elsewhere, within 2 mm.
/// @param force  [N]
std::vector<FramedPoint> brackets_framed(const Scene& scene, double force, const std::string& where);

/// "bracket at station 1160 mm: between two 2x10, 120 mm off the nearer; 240 N on the one at 1040 mm, ..."
/// @param force_text  how a force is shown
std::string framing_words(const Scene& scene, const FramingLoad& load, std::string (*force_text)(const Scene&, double));

}  // namespace stowpath
