#pragma once

#include <map>
#include <set>
#include <utility>
#include <vector>

#include <box2d/box2d.h>

#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// World units a metre.
inline constexpr double kWorldUnits = 10.0;

using PartPair = std::pair<int, int>;  ///< the lesser first

/// Who may touch whom, and who does: the engine asks and tells, fixture by fixture; here it is kept part by part.
class WorldContacts : public b2ContactFilter, public b2ContactListener {
 public:
  explicit WorldContacts(const std::vector<WorldPart>& parts) : parts_(parts) {}

  bool ShouldCollide(b2Fixture* a, b2Fixture* b) override;
  void BeginContact(b2Contact* contact) override;
  void EndContact(b2Contact* contact) override;
  void PreSolve(b2Contact* contact, const b2Manifold* old) override;
  void PostSolve(b2Contact* contact, const b2ContactImpulse* impulse) override;

  /// Before each step: where the sections stand.
  void look(const SectionPoses& X_W, const std::vector<double>& turns);
  /// Pairs that overlap now are set aside, until they part; touches so far are forgotten.
  /// @param pushing  pairs that pushed each other before their bodies were put in anew: they go on
  void set_aside_overlaps(const std::set<PartPair>& pushing);
  /// Pairs that push each other now.
  std::set<PartPair> pushing() const;
  /// Lets those be met again that have parted.
  bool take_back_parted();
  bool may_touch(int a, int b) const;
  /// Whether they are ends that butt, at the fold that they have now.
  bool butted(int a, int b) const;

  bool hooks_on_pipe = true;
  std::vector<WorldTouch> begun;     ///< in this step
  std::map<PartPair, int> touching;  ///< and by how many fixtures
  std::set<PartPair> aside;

 private:
  double closing_speed(b2Contact* contact) const;
  void begin(int a, int b);

  const std::vector<WorldPart>& parts_;
  SectionPoses X_W_{};
  std::vector<double> turns_;
};

}  // namespace stowpath
