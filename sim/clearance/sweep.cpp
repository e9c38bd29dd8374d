#include "sim/clearance/sweep.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <stdexcept>
#include <vector>

#include "sim/geometry/distance.h"

namespace stowpath {
namespace {

void check(const Motion& motion, double tolerance) {
  const auto bad = [](double limit) { return !(limit >= 0.0) || !std::isfinite(limit); };
  if (!motion.pose) throw std::invalid_argument("sweep: the motion has no pose");
  if (bad(motion.travel_limit) || bad(motion.turn_limit))
    throw std::invalid_argument("sweep: a limit is negative or not finite");
  if (!(tolerance > 0.0)) throw std::invalid_argument("sweep: the tolerance must be greater than 0");
}

struct Part {
  double u0 = 0.0, u1 = 1.0;
  double bound = 0.0;  // proven clearance over the piece [m]
  friend bool operator<(const Part& a, const Part& b) { return a.bound > b.bound; }  // the least bound comes up first
};

class Sweep {
 public:
  Sweep(const RoundedPolygon& body, const Motion& motion, std::span<const RoundedPolygon> obstacles)
      : body_(body), motion_(motion), obstacles_(obstacles.begin(), obstacles.end()) {
    double reach = 0.0;
    for (const Vec2 v : body.core) reach = std::max(reach, norm(v) + body.radius);
    speed_ = motion.travel_limit + reach * motion.turn_limit;
  }

  Part look(double u0, double u1, Clearance& best) {
    const double um = 0.5 * (u0 + u1);
    placed_.place(body_, motion_.pose(um));
    double d = std::numeric_limits<double>::infinity();
    for (const Outline& o : obstacles_) d = std::min(d, signed_distance(placed_, o));
    ++best.poses;
    if (d < best.at_most) best.at_most = d, best.u_closest = um;
    return {u0, u1, d - speed_ * 0.5 * (u1 - u0) - kRoundingGuard};
  }

 private:
  Outline body_, placed_;
  const Motion& motion_;
  std::vector<Outline> obstacles_;
  double speed_ = 0.0;
};

}  // namespace

Clearance sweep_clearance(const RoundedPolygon& body, const Motion& motion, std::span<const RoundedPolygon> obstacles,
                          double tolerance, int max_poses) {
  check(motion, tolerance);
  Sweep sweep(body, motion, obstacles);
  Clearance best;
  best.at_most = std::numeric_limits<double>::infinity();
  std::priority_queue<Part> open;
  open.push(sweep.look(0.0, 1.0, best));
  while (open.top().bound < best.at_most - tolerance && best.poses < max_poses) {
    const Part p = open.top();
    open.pop();
    const double um = 0.5 * (p.u0 + p.u1);
    open.push(sweep.look(p.u0, um, best));
    open.push(sweep.look(um, p.u1, best));
  }
  best.at_least = std::min(open.top().bound, best.at_most);
  if (best.at_most < 0.0) {
    best.verdict = Verdict::interference;
  } else if (best.at_least >= 0.0) {
    best.verdict = Verdict::clear;
  }
  return best;
}

}  // namespace stowpath
