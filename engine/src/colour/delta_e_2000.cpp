// CIEDE2000 step by step in the notation of Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21–30.
#include <cmath>
#include <numbers>

#include "strandline/colour.h"

namespace strandline {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;

double cos_deg(double degrees) { return std::cos(degrees / kDegrees); }

double pow7(double v) {
  const double v2 = v * v;
  return v2 * v2 * v2 * v;
}

// √(C⁷ / (C⁷ + 25⁷)): 0 for greys, towards 1 for strong chroma.
double chroma_gate(double c) {
  const double c7 = pow7(c);
  return std::sqrt(c7 / (c7 + 6103515625.0));
}

double hue(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double h = std::atan2(b, a) * kDegrees;
  return h < 0 ? h + 360 : h;
}

}  // namespace

double delta_e_2000(const Lab& p, const Lab& q) {
  // 1. a* stretched near grey, then chroma and hue.
  const double mean_c = (std::hypot(p.a, p.b) + std::hypot(q.a, q.b)) / 2;
  const double stretch = 1 + 0.5 * (1 - chroma_gate(mean_c));
  const double a1 = stretch * p.a, a2 = stretch * q.a;
  const double c1 = std::hypot(a1, p.b), c2 = std::hypot(a2, q.b);
  const double h1 = hue(a1, p.b), h2 = hue(a2, q.b);

  // 2. Differences. Without chroma in one of the two, hue has no meaning and its difference is 0.
  const bool hues = c1 * c2 != 0;
  double dh = hues ? h2 - h1 : 0;
  if (dh > 180) dh -= 360;
  if (dh < -180) dh += 360;
  const double d_l = q.l - p.l, d_c = c2 - c1;
  const double d_h = 2 * std::sqrt(c1 * c2) * std::sin(dh / 2 / kDegrees);

  // 3. Means; the mean hue lies on the shorter arc.
  const double l = (p.l + q.l) / 2, c = (c1 + c2) / 2;
  double h = h1 + h2;
  if (hues) {
    if (std::abs(h1 - h2) > 180) h += h < 360 ? 360 : -360;
    h /= 2;
  }

  // 4. Weights and the rotation in the blue.
  const double t =
      1 - 0.17 * cos_deg(h - 30) + 0.24 * cos_deg(2 * h) + 0.32 * cos_deg(3 * h + 6) - 0.20 * cos_deg(4 * h - 63);
  const double l50 = (l - 50) * (l - 50), turn = (h - 275) / 25;
  const double s_l = 1 + 0.015 * l50 / std::sqrt(20 + l50);
  const double s_c = 1 + 0.045 * c, s_h = 1 + 0.015 * c * t;
  const double r_t = -2 * chroma_gate(c) * std::sin(60 * std::exp(-turn * turn) / kDegrees);

  const double u = d_l / s_l, v = d_c / s_c, w = d_h / s_h;
  return std::sqrt(std::fmax(0, u * u + v * v + w * w + r_t * v * w));
}

}  // namespace strandline
