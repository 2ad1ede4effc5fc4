// Kubelka–Munk for an infinitely thick layer.
#pragma once
#include <cmath>

namespace strandline {

// K/S of a reflectance, (1 − R)² / 2R. Requires 0 < R ≤ 1. Source: Kubelka and Munk 1931.
inline double k_over_s(double reflectance) { return (1 - reflectance) * (1 - reflectance) / (2 * reflectance); }

// Reflectance of a K/S ≥ 0, in (0, 1]. Written as a quotient: 1 + x − √(x² + 2x) loses all digits for large
// x.
inline double r_infinity(double ks) { return 1 / (1 + ks + std::sqrt(ks * (ks + 2))); }

}  // namespace strandline
