#include "tests/reference/fcl_prism.h"

#include <memory>
#include <stdexcept>
#include <vector>

namespace stowpath::testing {
namespace {

using Faces = std::vector<int>;

/// A face is its number of vertices, then the vertices counter-clockwise seen from outside.
void add_face(Faces& faces, const std::vector<int>& vertices) {
  faces.push_back(static_cast<int>(vertices.size()));
  faces.insert(faces.end(), vertices.begin(), vertices.end());
}

/// Vertices 0 to n-1 lie at the low station, n to 2n-1 at the high one.
std::shared_ptr<Faces> prism_faces(int n) {
  auto faces = std::make_shared<Faces>();
  std::vector<int> low, high;
  for (int i = 0; i < n; ++i) {
    low.push_back(n - 1 - i);
    high.push_back(n + i);
    add_face(*faces, {i, (i + 1) % n, n + (i + 1) % n, n + i});
  }
  add_face(*faces, low);
  add_face(*faces, high);
  return faces;
}

}  // namespace

fcl::Convexd fcl_convex(const Prism& prism) {
  auto vertices = std::make_shared<std::vector<fcl::Vector3d>>();
  for (const double z : {prism.stations.lo, prism.stations.hi})
    for (const Vec2 v : prism.outline.core) vertices->emplace_back(v.x, v.y, z);
  const int n = static_cast<int>(prism.outline.core.size());
  return fcl::Convexd(vertices, n + 2, prism_faces(n));
}

fcl::Boxd fcl_box(const Prism& prism) {
  const std::vector<Vec2>& v = prism.outline.core;
  if (v.size() != 4 || v[0].y != v[1].y || v[1].x != v[2].x) throw std::invalid_argument("not an upright box");
  return fcl::Boxd(v[2].x - v[0].x, v[2].y - v[0].y, prism.stations.length());
}

fcl::Transform3d fcl_pose(const Pose2& X_WB) {
  fcl::Transform3d out = fcl::Transform3d::Identity();
  out.linear().topLeftCorner<2, 2>() << X_WB.c, -X_WB.s, X_WB.s, X_WB.c;
  out.translation() << X_WB.p.x, X_WB.p.y, 0.0;
  return out;
}

fcl::Transform3d fcl_box_pose(const Prism& prism) {
  const Vec2 centre = prism.X_WB * (0.5 * (prism.outline.core[0] + prism.outline.core[2]));
  fcl::Transform3d out = fcl_pose(prism.X_WB);
  out.translation() << centre.x, centre.y, prism.stations.middle();
  return out;
}

double fcl_distance(const fcl::ShapeBased& a, const fcl::Transform3d& X_WA, const fcl::ShapeBased& b,
                    const fcl::Transform3d& X_WB, Solver solver, double tolerance) {
  const fcl::DistanceRequestd request(false, false, 0.0, 0.0, tolerance, solver);
  fcl::DistanceResultd result;
  return fcl::distance(&a, X_WA, &b, X_WB, request, result);
}

bool fcl_overlap(const fcl::ShapeBased& a, const fcl::Transform3d& X_WA, const fcl::ShapeBased& b,
                 const fcl::Transform3d& X_WB, Solver solver) {
  fcl::CollisionRequestd request;
  request.gjk_solver_type = solver;
  fcl::CollisionResultd result;
  return fcl::collide(&a, X_WA, &b, X_WB, request, result) > 0;
}

}  // namespace stowpath::testing
