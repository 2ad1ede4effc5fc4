#include "strandline/existing.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/tables.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/promise.h"

namespace strandline {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Vector3d colour(const Fibre& f, const Pigments& pigment) {
  const Lab c = lab(reflectance(optical_depth(f, pigment)), weights(Light::daylight, Observer::cie_1964_10deg));
  return {c.l, c.a, c.b};
}

Fibre with_dye(Fibre f, const Vector3d& amounts) {
  f.dye = plain_absorbers({amounts[0], amounts[1], amounts[2]});
  return f;
}

}  // namespace

Spectrum plain_absorbers(const std::array<double, 3>& amounts) {
  Spectrum depth{};
  for (int b = 0; b < kBands; ++b)
    for (size_t j = 0; j < amounts.size(); ++j) {
      const auto& [peak, width] = tables::existing_absorbers[j];
      const double x = (band_nm(b) - peak) / width;
      depth[b] += amounts[j] * std::exp(-x * x / 2);
    }
  return depth;
}

Fibre lifted_to(const Fibre& natural, double lightness, const Constants& c) {
  const Pigments pigment = pigments(c);
  if (colour(natural, pigment)[0] >= lightness) return natural;
  double low = 0, high = 12;
  auto at = [&](double exposure) { return lightened(natural, Treatment{.exposure = exposure}, c); };
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    (colour(at(middle), pigment)[0] < lightness ? low : high) = middle;
  }
  return at(high);
}

Fibre dyed_to(const Fibre& base, const Lab& wanted, const Pigments& pigment) {
  const Vector3d goal(wanted.l, wanted.a, wanted.b);
  Vector3d amounts = Vector3d::Constant(0.02);
  double damping = 1e-2;
  Vector3d miss = goal - colour(with_dye(base, amounts), pigment);
  constexpr double kNear = 1e-3, kStill = 1e-5;  // L*a*b* units
  Matrix3d j;
  bool moved_on = true;
  for (int i = 0; i < 40 && miss.norm() > kNear; ++i) {
    for (int k = 0; moved_on && k < 3; ++k) {
      Vector3d moved = amounts;
      const double step = 1e-4 * (1 + amounts[k]);
      moved[k] += step;
      j.col(k) = (colour(with_dye(base, moved), pigment) - (goal - miss)) / step;
    }
    const Matrix3d normal = j.transpose() * j;
    Matrix3d damped = normal;
    damped.diagonal() += damping * (normal.diagonal() + Vector3d::Constant(1e-9));
    const Vector3d next = (amounts + damped.ldlt().solve(j.transpose() * miss)).cwiseMax(0);
    const Vector3d left = goal - colour(with_dye(base, next), pigment);
    moved_on = left.norm() < miss.norm();
    if (moved_on) {
      const double gained = miss.norm() - left.norm();
      amounts = next, miss = left, damping = std::max(1e-9, damping / 4);
      if (gained < kStill) break;
    } else if ((damping *= 6) > 1e9) {
      break;
    }
  }
  return with_dye(base, amounts);
}

Fibre toned_to(const Fibre& natural, const Lab& seen, const Constants& c) {
  return dyed_to(lifted_to(natural, seen.l + 2, c), seen, pigments(c));
}

// To go darker weaker developer is mixed, to go lighter stronger: 3 % for a level darker, 6 % up to a level lighter, 9
// % for two (common practice); its exposure against that of 6 %.
double usual_strength(const Fibre& natural, const Lab& seen, const Constants& c) {
  const double up = level_of_lightness(seen.l) - level_of_lightness(colour(natural, pigments(c))[0]);
  const double percent = std::clamp(up < 0 ? 6 + 3 * up : up < 1 ? 6.0 : 6 + 3 * (up - 1), 3.0, 9.0);
  return std::pow(percent / c.usual_percent_permanent, c.lift_order);
}

Fibre tinted_to(const Fibre& natural, const Lab& seen, const Constants& c, double lift_under) {
  // A tint lifted the pigment under it by what its peroxide does, or more where it shows lighter than that.
  constexpr double kLiftUnderTint = 4, kFromCm = 5, kToCm = 15;  // L*; cm, away from the warmth of the scalp
  Treatment tint = treatment(usual_bowl(ProductClass::permanent, c), kFromCm, kToCm, c);
  tint.exposure *= lift_under * usual_strength(natural, seen, c);
  const Fibre under = lightened(natural, tint, c);
  return dyed_to(lifted_to(under, seen.l + kLiftUnderTint, c), seen, pigments(c));
}

Fibre fibre_as_read(const Population& p, double level, double natural_level, double lift_under) {
  const Constants nominal;
  const Lab seen = p.measured ? *p.measured : colour_of(level, p.tone);
  if (p.kind == FibreKind::white && p.origin == ColourOrigin::natural)
    return p.measured ? dyed_to(white_fibre(), seen, pigments(nominal)) : white_fibre();
  if (p.origin == ColourOrigin::natural) return p.measured ? natural_fibre(seen) : natural_fibre(level, p.tone);

  const Fibre natural = p.kind == FibreKind::white ? white_fibre() : natural_fibre(natural_level, Tone::natural);
  if (p.origin != ColourOrigin::lightened) return tinted_to(natural, seen, nominal, lift_under);
  // "gold" on lightened hair is the warmth that the lightener left; any other word says that it was toned.
  if (p.tone == Tone::gold && !p.measured) return lifted_to(natural, seen.l, nominal);
  return toned_to(natural, seen, nominal);
}

}  // namespace strandline
