// Light in hair: optical depth of one fibre → reflectance of the tress (M2), and populations seen together (M5).
#pragma once

#include <span>

#include "strandline/spectrum.h"

namespace strandline {

// M2. R(τ) of a thick bed of fibres, sphere geometry, specular included. τ ≥ 0 is the optical depth across one fibre
// diameter; R in [floor, R(0)], decreasing, convex, twice differentiable. Stored as
// 1/(R + c*) = e∞ − Σ αj·max(0, 1 − τ/κj)³ with αj ≥ 0, which is concave: then a blend of populations is convex in the
// dye load (docs/model.md, "The search").
double reflectance(double tau);
Spectrum reflectance(const Spectrum& tau);

// The inverse: τ ≥ 0 with reflectance(τ) = R. R above R(0) gives 0; R at or below the floor gives `tau_at_floor`.
inline constexpr double tau_at_floor = 50;
double optical_depth(double reflectance);
Spectrum optical_depth(const Spectrum& reflectance);

// M5. Stearns–Noechel: per wavelength f(R) = (1 − R)/(M(R − 0.01) + 0.01) on total R, mixed by share.
// `shares` ≥ 0 and add to 1; `m` in (0, 1]. Shares 0 and 1 give the pure populations.
double blend(std::span<const double> shares, std::span<const double> reflectances, double m);
Spectrum blend(std::span<const double> shares, std::span<const Spectrum> reflectances, double m);

// The curve as the fast kernel needs it: 1/(R + c*) = e∞ − Σ max(0, sj − tj·τ)³.
struct CurveCubes {
  static constexpr int max_terms = 8;
  int terms = 0;
  double s[max_terms] = {}, t[max_terms] = {};
  double e_inf = 0, c_star = 0;
};
const CurveCubes& curve_cubes();

}  // namespace strandline
