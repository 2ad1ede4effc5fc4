#include "strandline/colour.h"

#include <cmath>
#include <numbers>

namespace strandline {
namespace {

constexpr double kEpsilon = 216.0 / 24389.0,
                 kKappa = 24389.0 / 27.0;  // the exact fractions of ISO/CIE 11664-4
constexpr double kDegrees = 180 / std::numbers::pi;

double f(double t) { return t > kEpsilon ? std::cbrt(t) : (kKappa * t + 16) / 116; }

double f_inverse(double v) {
  const double cube = v * v * v;
  return cube > kEpsilon ? cube : (116 * v - 16) / kKappa;
}

}  // namespace

Xyz xyz(const Spectrum& r, const Weights& w) {
  Xyz s{0, 0, 0};
  for (int k = 0; k < kBands; ++k) {
    s.x += w.x[k] * r[k];
    s.y += w.y[k] * r[k];
    s.z += w.z[k] * r[k];
  }
  return s;
}

Lab lab(const Xyz& c, const Xyz& white) {
  const double fx = f(c.x / white.x), fy = f(c.y / white.y), fz = f(c.z / white.z);
  return {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

Lab lab(const Spectrum& r, const Weights& w) { return lab(xyz(r, w), w.white); }

Xyz xyz(const Lab& c, const Xyz& white) {
  const double fy = (c.l + 16) / 116;
  return {white.x * f_inverse(fy + c.a / 500), white.y * f_inverse(fy), white.z * f_inverse(fy - c.b / 200)};
}

Lch lch(const Lab& c) {
  const double chroma = std::hypot(c.a, c.b);
  double hue = chroma > 0 ? std::atan2(c.b, c.a) * kDegrees : 0;
  if (hue < 0) hue += 360;
  if (hue >= 360) hue = 0;  // a tiny negative angle rounds up to 360
  return {c.l, chroma, hue};
}

Lab lab(const Lch& c) { return {c.l, c.c * std::cos(c.h / kDegrees), c.c * std::sin(c.h / kDegrees)}; }

double delta_e_ab(const Lab& p, const Lab& q) { return std::hypot(p.l - q.l, p.a - q.a, p.b - q.b); }

}  // namespace strandline
