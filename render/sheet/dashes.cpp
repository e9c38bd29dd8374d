#include "render/sheet/dashes.h"

namespace stowpath {
namespace {

class Cutter {
 public:
  explicit Cutter(std::span<const double> pattern) : pattern_(pattern), left_(pattern[0]) {}

  void line(Vec2 a, Vec2 b) {
    const double length = norm(b - a);
    double done = 0.0;
    while (length - done > left_) {
      done += left_;
      turn(lerp(a, b, done / length));
    }
    left_ -= length - done;
    if (draws()) strokes_.back().push_back(b);
  }

  void begin(Vec2 at) { strokes_.push_back({at}); }

  std::vector<std::vector<Vec2>> strokes_;

 private:
  bool draws() const { return step_ % 2 == 0; }

  void turn(Vec2 at) {
    if (draws()) strokes_.back().push_back(at);
    step_ = (step_ + 1) % pattern_.size();
    left_ = pattern_[step_];
    if (draws()) begin(at);
  }

  std::span<const double> pattern_;
  std::size_t step_ = 0;
  double left_;
};

}  // namespace

std::span<const double> dash_lengths(Dash dash) {
  if (dash == Dash::hidden) return kHiddenDash;
  if (dash == Dash::chain) return kChainDash;
  return {};
}

std::vector<std::vector<Vec2>> dashes(std::span<const Vec2> points, bool closed, Dash dash) {
  std::vector<Vec2> whole(points.begin(), points.end());
  if (closed && !whole.empty()) whole.push_back(whole.front());
  if (dash == Dash::solid || whole.size() < 2) return {whole};
  Cutter cutter(dash_lengths(dash));
  cutter.begin(whole.front());
  for (std::size_t i = 0; i + 1 < whole.size(); ++i) cutter.line(whole[i], whole[i + 1]);
  return std::move(cutter.strokes_);
}

}  // namespace stowpath
