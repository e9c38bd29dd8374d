#include "tests/support/random_rig.h"

namespace stowpath::testing {

namespace {

Rigging random_line(std::mt19937& random, int section, double along) {
  Rigging line;
  line.parts = 1 + static_cast<int>(random() % 6);
  const RopePoint ceiling{
      -1, {draw(random, 2.0, 3.2), draw(random, 4.0, 4.6)}, draw(random, 3.8, 4.2), false, true, "ceiling point"};
  const RopePoint pick{section, {along, draw(random, -0.05, 0.05)}, 0.0, false, true, "pick"};
  for (int i = line.parts; i >= 0; --i) line.points.push_back(i % 2 == 0 ? ceiling : pick);
  line.points.front().sheave = false;
  const int leads = static_cast<int>(random() % 3);
  for (int i = 0; i < leads; ++i)
    line.points.push_back(
        {-1, {draw(random, 0.0, 5.0), draw(random, 2.0, 4.0)}, draw(random, 2.0, 6.0), false, true, "lead"});
  line.points.push_back({-1, {draw(random, 0.0, 5.0), 1.2}, draw(random, 2.0, 6.0), false, false, "hand"});
  line.K = random() % 2 == 0 ? 1.09 : 1.04;
  line.model = random() % 4 == 0 ? SheaveFriction::additive : SheaveFriction::geometric;
  return line;
}

Rigging random_fold_line(std::mt19937& random, const RandomRig& rig) {
  const int last = rig.linkage.sections - 1;
  const auto k = static_cast<std::size_t>(last);
  Rigging line;
  line.points.push_back({last - 1, {draw(random, 0.1, 0.5), draw(random, -0.1, 0.0)}, 0.0, false, false, "tied"});
  line.points.push_back(
      {last, {draw(random, 0.5, 1.0) * rig.linkage.length[k], draw(random, -0.1, 0.0)}, 0.0, false, true, "pulley"});
  if (random() % 2 == 0)
    line.points.push_back({last - 1, {draw(random, 0.1, 0.5), draw(random, -0.1, 0.0)}, 0.0, false, false, "hand"});
  line.points.back().sheave = false;
  line.parts = static_cast<int>(line.points.size()) - 1;
  line.K = 1.09;
  return line;
}

}  // namespace

double draw(std::mt19937& random, double lo, double hi) {
  return std::uniform_real_distribution<double>(lo, hi)(random);
}

RandomRig random_rig(std::mt19937& random) {
  RandomRig rig;
  rig.linkage.pivot = {draw(random, 0.8, 1.1), draw(random, 2.7, 3.0)};
  rig.linkage.sections = 1 + static_cast<int>(random() % 3);
  for (int j = 0; j < rig.linkage.sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    rig.linkage.length[k] = draw(random, 1.0, 2.0);
    rig.masses.push_back(
        {draw(random, 5.0, 30.0), {draw(random, 0.4, 0.6) * rig.linkage.length[k], draw(random, -0.05, 0.05)}});
    rig.rates[k] = draw(random, -1.0, 1.0);
    if (j + 1 == rig.linkage.sections) continue;
    const bool back = random() % 2 == 0;
    rig.linkage.fold_sign[k] = back ? -1.0 : 1.0;
    rig.linkage.hinge_across[k] = (back ? -1.0 : 1.0) * draw(random, 0.0, 0.1);
    rig.pose.folds[k] = draw(random, 0.1, 2.8);
  }
  rig.pose.station = 4.0;
  rig.pose.lean = draw(random, 0.4, 1.4);
  rig.line = random_line(random, 0, draw(random, 0.6, 1.0) * rig.linkage.length[0]);
  if (rig.linkage.sections > 1) rig.fold_line = random_fold_line(random, rig);
  rig.axle = {rig.linkage.length[static_cast<std::size_t>(rig.linkage.sections - 1)] + 0.03, draw(random, -0.03, 0.03)};
  return rig;
}

}  // namespace stowpath::testing
