#include <algorithm>
#include <array>
#include <cmath>

#include "strandline/colour.h"

namespace strandline {
namespace {

using Vec = std::array<double, 3>;
using Mat = std::array<Vec, 3>;

constexpr Vec times(const Mat& m, const Vec& v) {
  Vec out{};
  for (int i = 0; i < 3; ++i) out[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
  return out;
}

constexpr Mat inverse(const Mat& m) {
  Mat c{};
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      const int r0 = (j + 1) % 3, r1 = (j + 2) % 3, c0 = (i + 1) % 3, c1 = (i + 2) % 3;
      c[i][j] = m[r0][c0] * m[r1][c1] - m[r0][c1] * m[r1][c0];
    }
  const double det = m[0][0] * c[0][0] + m[0][1] * c[1][0] + m[0][2] * c[2][0];
  for (auto& row : c)
    for (double& v : row) v /= det;
  return c;
}

// Cone responses of the Bradford transform (Lam 1985; CIE 160:2004).
constexpr Mat kBradford = {{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}};
constexpr Mat kBradfordInverse = inverse(kBradford);

// White of the screen: D65, x = 0.3127, y = 0.3290 (IEC 61966-2-1).
constexpr Xyz kScreenWhite = {100 * 0.3127 / 0.3290, 100, 100 * (1 - 0.3127 - 0.3290) / 0.3290};

// XYZ to linear sRGB, from the chromaticities of the primaries (ITU-R BT.709) and the white above.
constexpr Mat kFromXyz = [] {
  const Mat p = {{{0.64 / 0.33, 0.30 / 0.60, 0.15 / 0.06}, {1, 1, 1}, {0.03 / 0.33, 0.10 / 0.60, 0.79 / 0.06}}};
  const Vec s = times(inverse(p), {kScreenWhite.x / 100, kScreenWhite.y / 100, kScreenWhite.z / 100});
  Mat to_xyz{};
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) to_xyz[i][j] = 100 * p[i][j] * s[j];
  return inverse(to_xyz);
}();

Xyz adapted(const Xyz& c, const Xyz& white) {
  const Vec from = times(kBradford, {white.x, white.y, white.z});
  const Vec to = times(kBradford, {kScreenWhite.x, kScreenWhite.y, kScreenWhite.z});
  Vec cone = times(kBradford, {c.x, c.y, c.z});
  for (int i = 0; i < 3; ++i) cone[i] *= to[i] / from[i];
  const Vec v = times(kBradfordInverse, cone);
  return {v[0], v[1], v[2]};
}

Vec linear(const Xyz& c) { return times(kFromXyz, {c.x, c.y, c.z}); }

constexpr double kSlack = 1e-9;  // rounding of the matrices; far below one step of an 8 bit screen

bool shows(const Vec& v) {
  return std::all_of(v.begin(), v.end(), [](double u) { return u >= -kSlack && u <= 1 + kSlack; });
}

double encoded(double u) {
  u = std::clamp(u, 0.0, 1.0);
  return u <= 0.0031308 ? 12.92 * u : 1.055 * std::pow(u, 1 / 2.4) - 0.055;
}

// The most chroma the screen can show at the same lightness and CIELAB hue.
Vec cut(const Lab& colour) {
  const double l = std::clamp(colour.l, 0.0, 100.0);
  double inside = 0, outside = 1;
  for (int i = 0; i < 40; ++i) {
    const double share = (inside + outside) / 2;
    const bool ok = shows(linear(xyz(Lab{l, colour.a * share, colour.b * share}, kScreenWhite)));
    (ok ? inside : outside) = share;
  }
  return linear(xyz(Lab{l, colour.a * inside, colour.b * inside}, kScreenWhite));
}

}  // namespace

Srgb srgb(const Xyz& colour, const Xyz& white) {
  const Xyz c = adapted(colour, white);
  Vec v = linear(c);
  const bool in_gamut = shows(v);
  if (!in_gamut) v = cut(lab(c, kScreenWhite));
  return {encoded(v[0]), encoded(v[1]), encoded(v[2]), in_gamut};
}

}  // namespace strandline
