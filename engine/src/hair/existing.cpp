#include "hair/existing.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/tables.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

const Pigments& nominal() {
  static const Pigments p = pigments(Constants{});
  return p;
}

Vector3d colour(const Fibre& f) {
  const Lab c = lab(reflectance(optical_depth(f, nominal())), weights(Light::daylight, Observer::cie_1964_10deg));
  return {c.l, c.a, c.b};
}

// Three plain absorbers (yellow, red, blue) stand for whatever colorants are there.
Fibre with_dye(Fibre f, const Vector3d& amounts) {
  for (int b = 0; b < kBands; ++b) {
    f.dye[b] = 0;
    for (int j = 0; j < 3; ++j) {
      const auto& [peak, width] = tables::existing_absorbers[j];
      const double x = (band_nm(b) - peak) / width;
      f.dye[b] += amounts[j] * std::exp(-x * x / 2);
    }
  }
  return f;
}

// Amounts ≥ 0 of the three absorbers that bring `base` nearest to `wanted` (damped Gauss–Newton on L*a*b*).
Fibre dyed_to(const Fibre& base, const Lab& wanted) {
  const Vector3d goal(wanted.l, wanted.a, wanted.b);
  Vector3d amounts = Vector3d::Constant(0.02);
  double damping = 1e-2;
  Vector3d miss = goal - colour(with_dye(base, amounts));
  for (int i = 0; i < 40 && miss.norm() > 1e-3; ++i) {
    Matrix3d j;
    for (int k = 0; k < 3; ++k) {
      Vector3d moved = amounts;
      const double step = 1e-4 * (1 + amounts[k]);
      moved[k] += step;
      j.col(k) = (colour(with_dye(base, moved)) - (goal - miss)) / step;
    }
    const Matrix3d normal = j.transpose() * j;
    Matrix3d damped = normal;
    damped.diagonal() += damping * (normal.diagonal() + Vector3d::Constant(1e-9));
    const Vector3d next = (amounts + damped.ldlt().solve(j.transpose() * miss)).cwiseMax(0);
    const Vector3d left = goal - colour(with_dye(base, next));
    if (left.norm() < miss.norm()) {
      amounts = next, miss = left, damping = std::max(1e-9, damping / 4);
    } else if ((damping *= 6) > 1e9) {
      break;
    }
  }
  return with_dye(base, amounts);
}

// The natural pigment after as much lightening as makes it just as light as `lightness`; untouched if it is already.
Fibre lifted_to(const Fibre& natural, double lightness) {
  if (colour(natural)[0] >= lightness) return natural;
  double low = 0, high = 12;
  auto at = [&](double exposure) { return lightened(natural, Treatment{.exposure = exposure}, Constants{}); };
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    (colour(at(middle))[0] < lightness ? low : high) = middle;
  }
  return at(high);
}

}  // namespace

Fibre fibre_as_read(const Population& p, double level, double natural_level) {
  const Lab seen = p.measured ? *p.measured : colour_of(level, p.tone);
  if (p.kind == FibreKind::white && p.origin == ColourOrigin::natural)
    return p.measured ? dyed_to(white_fibre(), seen) : white_fibre();
  if (p.origin == ColourOrigin::natural) return p.measured ? natural_fibre(seen) : natural_fibre(level, p.tone);

  const Fibre natural = p.kind == FibreKind::white ? white_fibre() : natural_fibre(natural_level, Tone::natural);
  if (p.origin == ColourOrigin::lightened) {
    const Fibre lifted = lifted_to(natural, seen.l);
    // "gold" on lightened hair is the warmth that the lightener left; any other word says that it was toned.
    if (p.tone == Tone::gold && !p.measured) return lifted;
    return dyed_to(lifted_to(natural, seen.l + 2), seen);
  }
  // A tint lifted the pigment under it by about as much as its peroxide could: here a margin above what is seen.
  constexpr double kLiftUnderTint = 4;  // L*
  return dyed_to(lifted_to(natural, seen.l + kLiftUnderTint), seen);
}

}  // namespace strandline
