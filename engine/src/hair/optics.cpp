#include "strandline/optics.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "generated/tables.h"

namespace strandline {
namespace {

constexpr double kBlackFloor = 0.01;  // of Stearns–Noechel's law

// c* = 0.01(1 − M*)/M*, the offset for which the curve was fitted concave.
double c_star() { return kBlackFloor * (1 - Constants{}.blend_m_highest) / Constants{}.blend_m_highest; }

double e_of_tau(double tau) {
  double e = Constants{}.reflectance_e_inf;
  for (const auto& [kappa, alpha] : tables::reflectance_poles) e -= alpha / (tau + kappa);
  return e;
}

double slope_of_e(double tau) {
  double slope = 0;
  for (const auto& [kappa, alpha] : tables::reflectance_poles) slope += alpha / ((tau + kappa) * (tau + kappa));
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
  for (int i = 0; i < 100; ++i) {
    const double step = (wanted - e_of_tau(tau)) / slope_of_e(tau);
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

const CurveRatio& curve_ratio() {
  static const CurveRatio ratio = [] {
    CurveRatio c;
    c.degree = static_cast<int>(tables::reflectance_poles.size());
    c.c_star = c_star();
    // Q = Π(τ + κj); P = e∞·Q − Σ αj·Π_{i≠j}(τ + κi).
    auto product_without = [](int skip, double* out) {
      int n = 0;
      out[0] = 1;
      for (int j = 0; j < static_cast<int>(tables::reflectance_poles.size()); ++j) {
        if (j == skip) continue;
        out[++n] = 0;
        for (int k = n; k > 0; --k) out[k] = out[k - 1] + out[k] * tables::reflectance_poles[j][0];
        out[0] *= tables::reflectance_poles[j][0];
      }
    };
    product_without(-1, c.q);
    for (int k = 0; k <= c.degree; ++k) c.p[k] = Constants{}.reflectance_e_inf * c.q[k];
    for (int j = 0; j < c.degree; ++j) {
      double part[CurveRatio::max_degree + 1] = {};
      product_without(j, part);
      for (int k = 0; k < c.degree; ++k) c.p[k] -= tables::reflectance_poles[j][1] * part[k];
    }
    return c;
  }();
  return ratio;
}

}  // namespace strandline
