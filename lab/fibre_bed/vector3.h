#pragma once
// Directions in the bed: x along the fibres, y across them, z down into the bed.
#include <cmath>

namespace strandline::fibre_bed {

struct Vector3 {
  double x = 0, y = 0, z = 0;
  friend Vector3 operator+(Vector3 a, Vector3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend Vector3 operator-(Vector3 a, Vector3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend Vector3 operator*(double s, Vector3 a) { return {s * a.x, s * a.y, s * a.z}; }
  Vector3 operator-() const { return {-x, -y, -z}; }
};

inline double dot(Vector3 a, Vector3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vector3 normalized(Vector3 a) { return 1 / std::sqrt(dot(a, a)) * a; }

}  // namespace strandline::fibre_bed
