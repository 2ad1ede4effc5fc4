#include "laws.h"

#include <cmath>

#include "concave_fit.h"
#include "lightness.h"

namespace strandline::fibre_bed {

double blend_power(double s, double r1, double r0, double p, double c) {
  return std::pow(s * std::pow(r1 + c, p) + (1 - s) * std::pow(r0 + c, p), 1 / p) - c;
}

double blend_stearns_noechel(double s, double r1, double r0, double m) {
  const double c = stearns_noechel_offset(m);
  return 1 / (s / (r1 + c) + (1 - s) / (r0 + c)) - c;
}

double misfit(std::span<const Blend> blends, const std::function<double(const Blend&)>& law) {
  double sum = 0;
  for (const Blend& b : blends) sum += std::pow(lightness(law(b)) - lightness(b.mixed), 2);
  return std::sqrt(sum / static_cast<double>(blends.size()));
}

double least(double low, double high, const std::function<double(double)>& f) {
  const double golden = (std::sqrt(5.0) - 1) / 2;
  double a = low, b = high, x = b - golden * (b - a), y = a + golden * (b - a), fx = f(x), fy = f(y);
  while (b - a > 1e-5 * (high - low)) {
    if (fx < fy) {
      b = y, y = x, fy = fx;
      fx = f(x = b - golden * (b - a));
    } else {
      a = x, x = y, fx = fy;
      fy = f(y = a + golden * (b - a));
    }
  }
  return (a + b) / 2;
}

double best_m(std::span<const Blend> blends) {
  const double log_m = least(std::log(0.005), 0, [&](double l) {
    return misfit(blends,
                  [&](const Blend& b) { return blend_stearns_noechel(b.share, b.white, b.pigmented, std::exp(l)); });
  });
  return std::exp(log_m);
}

}  // namespace strandline::fibre_bed
