#pragma once

namespace stowpath {

/// What a cross-section brings to bending about one axis. Derived in closed form.
struct Section {
  double area = 0.0;             ///< [m2]
  double second_moment = 0.0;    ///< I about the bending axis [m4]
  double modulus = 0.0;          ///< elastic, S = I / farthest fibre [m3]
  double plastic_modulus = 0.0;  ///< Z [m3]
  double gyration = 0.0;         ///< radius of gyration [m]
};

/// A solid rectangle; `depth` lies in the plane of bending. A side rail on edge has its width as depth. All in metres.
/// @throws std::invalid_argument if a side is not positive and finite.
Section rectangle_section(double breadth, double depth);

/// A round tube. In metres. @throws std::invalid_argument unless 0 < wall <= outside_diameter / 2, all finite.
Section tube_section(double outside_diameter, double wall);

}  // namespace stowpath
