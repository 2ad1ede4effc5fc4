#pragma once
// Grey light: L* of a reflectance that is the same at every wavelength, and Kubelka-Munk.
#include <cmath>

namespace strandline::fibre_bed {

// CIELAB L* (ISO/CIE 11664-4) of Y/Yn = r, r >= 0.
inline double lightness(double r) {
  constexpr double epsilon = 216.0 / 24389, kappa = 24389.0 / 27;
  return r > epsilon ? 116 * std::cbrt(r) - 16 : kappa * r;
}

// K/S of an infinitely thick layer of reflectance r in (0, 1], and back.
inline double kubelka_munk(double r) { return (1 - r) * (1 - r) / (2 * r); }
inline double kubelka_munk_reflectance(double x) { return 1 / (1 + x + std::sqrt(x * x + 2 * x)); }

}  // namespace strandline::fibre_bed
