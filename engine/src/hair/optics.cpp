#include "strandline/optics.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "generated/constants.h"
#include "generated/tables.h"

namespace strandline {
namespace {

constexpr double kBlackFloor = 0.01;  // of Stearns–Noechel's law

// c* = 0.01(1 − M*)/M*, the offset for which the curve was fitted concave.
double c_star() { return kBlackFloor * (1 - Constants{}.blend_m_highest) / Constants{}.blend_m_highest; }

double e_of_tau(double tau) {
  double e = Constants{}.reflectance_e_inf;
  for (const auto& [kappa, alpha] : tables::reflectance_cubes) {
    const double left = std::max(0.0, 1 - tau / kappa);
    e -= alpha * left * left * left;
  }
  return e;
}

double slope_of_e(double tau) {
  double slope = 0;
  for (const auto& [kappa, alpha] : tables::reflectance_cubes) {
    const double left = std::max(0.0, 1 - tau / kappa);
    slope += 3 * alpha / kappa * left * left;
  }
  return slope;
}

}  // namespace

double reflectance(double tau) { return 1 / e_of_tau(tau) - c_star(); }

Spectrum reflectance(const Spectrum& tau) {
  Spectrum r;
  std::transform(tau.begin(), tau.end(), r.begin(), [](double t) { return reflectance(t); });
  return r;
}

double optical_depth(double reflectance) {
  const double wanted = 1 / (reflectance + c_star());
  if (wanted <= e_of_tau(0)) return 0;
  if (wanted >= e_of_tau(tau_at_floor)) return tau_at_floor;
  // e is concave and increasing: Newton from the left never overshoots.
  double tau = 0;
  for (int i = 0; i < 200; ++i) {
    const double slope = slope_of_e(tau);
    if (slope <= 0) return tau_at_floor;
    const double step = (wanted - e_of_tau(tau)) / slope;
    tau += step;
    if (step <= 1e-13 * (1 + tau)) break;
  }
  return tau;
}

Spectrum optical_depth(const Spectrum& reflectance) {
  Spectrum tau;
  std::transform(reflectance.begin(), reflectance.end(), tau.begin(), [](double r) { return optical_depth(r); });
  return tau;
}

double blend(std::span<const double> shares, std::span<const double> reflectances, double m) {
  double f = 0;
  for (size_t i = 0; i < shares.size(); ++i)
    f += shares[i] * (1 - reflectances[i]) / (m * (reflectances[i] - kBlackFloor) + kBlackFloor);
  return (1 - kBlackFloor * f * (1 - m)) / (1 + m * f);
}

Spectrum blend(std::span<const double> shares, std::span<const Spectrum> reflectances, double m) {
  Spectrum mixed;
  std::vector<double> at_band(reflectances.size());
  for (int b = 0; b < kBands; ++b) {
    for (size_t i = 0; i < reflectances.size(); ++i) at_band[i] = reflectances[i][b];
    mixed[b] = blend(shares, at_band, m);
  }
  return mixed;
}

const CurveCubes& curve_cubes() {
  static const CurveCubes curve = [] {
    CurveCubes c;
    c.terms = static_cast<int>(tables::reflectance_cubes.size());
    for (int j = 0; j < c.terms; ++j) {
      const auto& [kappa, alpha] = tables::reflectance_cubes[j];
      c.s[j] = std::cbrt(alpha);
      c.t[j] = c.s[j] / kappa;
    }
    c.e_inf = Constants{}.reflectance_e_inf;
    c.c_star = c_star();
    return c;
  }();
  return curve;
}

}  // namespace strandline
