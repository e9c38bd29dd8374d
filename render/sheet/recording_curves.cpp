#include "render/sheet/recording_curves.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/report/recording_words.h"

namespace stowpath {
namespace {

Vec2 end_of(const Model& model, const RecordedFrame& frame, int section) {
  const auto j = static_cast<std::size_t>(section);
  const RecordedPose& pose = frame.sections.at(j);
  return make_pose(pose.origin, pose.turn) * Vec2{model.linkage.length.at(j), 0.0};
}

// How far the stair went from one frame to the next: the greatest way of any section's end or of the hooks.
double way(const Model& model, const Recording& recording, std::size_t to) {
  const RecordedFrame &a = recording.frames[to - 1], &b = recording.frames[to];
  double most = norm(b.sections[0].origin - a.sections[0].origin);
  for (int j = 0; j < recording.sections; ++j) most = std::max(most, norm(end_of(model, b, j) - end_of(model, a, j)));
  return most;
}

constexpr std::size_t kLongestRun = 240;  // frames left out one after the other, at most

// The frame that straight lines between two others would show at its time.
RecordedFrame between(const RecordedFrame& a, const RecordedFrame& b, double time, int sections) {
  const double u = b.time > a.time ? (time - a.time) / (b.time - a.time) : 0.0;
  RecordedFrame out = a;
  out.station += u * (b.station - a.station);
  out.yaw += u * (b.yaw - a.yaw);
  for (std::size_t j = 0; j < static_cast<std::size_t>(sections); ++j) {
    out.sections[j].origin = lerp(a.sections[j].origin, b.sections[j].origin, u);
    out.sections[j].turn += u * (b.sections[j].turn - a.sections[j].turn);
  }
  out.hoist.pull += u * (b.hoist.pull - a.hoist.pull);
  return out;
}

struct Likeness {
  double way = 0.0;   // of any section's origin or end [m]
  double pull = 0.0;  // [N]
};

// Yaw moves the farthest section's end most.
bool alike_along(const Model& model, const RecordedFrame& a, const RecordedFrame& b, int sections, double within) {
  const double out = std::abs(end_of(model, a, sections - 1).x - model.linkage.pivot.x);
  return std::abs(a.station - b.station) <= within && out * std::abs(a.yaw - b.yaw) <= within;
}

bool alike(const Model& model, const RecordedFrame& a, const RecordedFrame& b, int sections, const Likeness& within) {
  if (!alike_along(model, a, b, sections, within.way)) return false;
  for (int j = 0; j < sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    if (norm(a.sections[k].origin - b.sections[k].origin) > within.way) return false;
    if (norm(end_of(model, a, j) - end_of(model, b, j)) > within.way) return false;
  }
  return std::abs(a.hoist.pull - b.hoist.pull) <= within.pull;
}

// Whether all frames between two can be left out.
bool straight(const Model& model, const Recording& recording, std::size_t from, std::size_t to,
              const Likeness& within) {
  const RecordedFrame &a = recording.frames[from], &b = recording.frames[to];
  for (std::size_t i = from + 1; i < to; ++i) {
    const RecordedFrame& was = recording.frames[i];
    if (was.hoist.on != a.hoist.on || was.move != a.move) return false;
    if (!alike(model, between(a, b, was.time, recording.sections), was, recording.sections, within)) return false;
  }
  return true;
}

// Between two frames that are not of one time.
double foot_speed(const Model& model, const Recording& recording, const RecordedFrame& a, const RecordedFrame& b) {
  const double fell = norm(recorded_foot(model, recording, b) - recorded_foot(model, recording, a));
  return std::hypot(fell, b.station - a.station) / (b.time - a.time);
}

}  // namespace

SectionPoses recorded_poses(const RecordedFrame& frame, int sections) {
  SectionPoses poses;
  for (std::size_t j = 0; j < static_cast<std::size_t>(sections); ++j) {
    poses.at(j) = make_pose(frame.sections.at(j).origin, frame.sections.at(j).turn);
  }
  return poses;
}

double recorded_lean(const RecordedFrame& frame, int section) {
  return frame.sections.at(static_cast<std::size_t>(section)).turn + 0.5 * std::numbers::pi;
}

Vec2 recorded_foot(const Model& model, const Recording& recording, const RecordedFrame& frame) {
  return end_of(model, frame, recording.sections - 1);
}

RecordingCurves curves_of(const Model& model, const Recording& recording) {
  RecordingCurves out{{}, {}, {}, {{}}, {{}}, {}};
  out.leans.resize(static_cast<std::size_t>(recording.sections));
  for (std::size_t i = 0; i < recording.frames.size(); ++i) {
    const RecordedFrame& frame = recording.frames[i];
    const bool broken = brought_before(recording, i);
    if (broken) out.station.emplace_back(), out.speed.emplace_back();
    out.hoist.push_back({frame.time, frame.hoist.pull});
    out.fold.push_back({frame.time, frame.fold.pull});
    out.push.push_back({frame.time, std::abs(frame.push)});
    out.station.back().push_back({frame.time, frame.station});
    for (int j = 0; j < recording.sections; ++j) {
      out.leans[static_cast<std::size_t>(j)].push_back({frame.time, recorded_lean(frame, j)});
    }
    if (i == 0 || broken) continue;
    const RecordedFrame& before = recording.frames[i - 1];
    if (frame.time > before.time)
      out.speed.back().push_back({0.5 * (frame.time + before.time), foot_speed(model, recording, before, frame)});
  }
  return out;
}

std::vector<std::size_t> strip_frames(const Model& model, const Recording& recording, std::size_t most, double until) {
  const std::size_t count = recording.frames.empty() ? 0 : frame_at(recording, until) + 1;
  if (count < 2 || most < 2) return count == 0 ? std::vector<std::size_t>{} : std::vector<std::size_t>{0};
  std::vector<double> gone{0.0};
  for (std::size_t i = 1; i < count; ++i) gone.push_back(gone.back() + way(model, recording, i));
  std::vector<std::size_t> out{0};
  for (std::size_t k = 1; k + 1 < most; ++k) {
    const double wanted = gone.back() * static_cast<double>(k) / static_cast<double>(most - 1);
    const auto at = static_cast<std::size_t>(std::lower_bound(gone.begin(), gone.end(), wanted) - gone.begin());
    if (at > out.back() && at + 1 < count) out.push_back(at);
  }
  out.push_back(count - 1);
  return out;
}

std::vector<std::size_t> motion_frames(const Model& model, const Recording& recording, double tolerance) {
  const Likeness within{tolerance, 0.01 * greatest_pull(recording)};
  std::vector<std::size_t> out;
  if (recording.frames.empty()) return out;
  for (std::size_t from = 0; from + 1 < recording.frames.size();) {
    out.push_back(from);
    std::size_t to = from + 1;
    while (to + 1 < recording.frames.size() && to - from < kLongestRun &&
           straight(model, recording, from, to + 1, within))
      ++to;
    from = to;
  }
  out.push_back(recording.frames.size() - 1);
  return out;
}

}  // namespace stowpath
