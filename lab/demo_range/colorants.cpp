#include "colorants.h"

#include <Eigen/Dense>
#include <cmath>
#include <cstring>
#include <limits>

#include "strandline/fibre.h"
#include "strandline/optics.h"

namespace strandline::demo {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

double bell(int b, double peak, double sd) {
  const double x = (band_nm(b) - peak) / sd;
  return std::exp(-x * x / 2);
}

const Spectrum& keratin() {
  static const Spectrum k = optical_depth(Fibre{}, pigments(Constants{}));
  return k;
}

Lab colour(const Spectrum& dye) {
  Spectrum tau;
  for (int b = 0; b < kBands; ++b) tau[b] = keratin()[b] + dye[b];
  return lab(reflectance(tau), weights(Light::daylight, Observer::cie_1964_10deg));
}

// Broad brown: falls slowly with the wavelength.
double brown(int b) { return std::exp(-(band_nm(b) - 550) / 260); }

Spectrum mix(double base, const Vector3d& amounts) {
  Spectrum dye;
  for (int b = 0; b < kBands; ++b)
    dye[b] =
        base * brown(b) + amounts[0] * bell(b, 440, 42) + amounts[1] * bell(b, 515, 40) + amounts[2] * bell(b, 605, 46);
  return dye;
}

Vector3d bands_for(const Lab& wanted, double base, double* miss) {
  const Vector3d goal(wanted.l, wanted.a, wanted.b);
  auto at = [&](const Vector3d& x) {
    const Lab c = colour(mix(base, x));
    return Vector3d(c.l, c.a, c.b);
  };
  Vector3d x = Vector3d::Constant(0.05);
  double damping = 1e-2;
  for (int i = 0; i < 200; ++i) {
    const Vector3d now = at(x), error = goal - now;
    if (error.norm() < 1e-6) break;
    Matrix3d j;
    for (int k = 0; k < 3; ++k) {
      Vector3d y = x;
      const double step = 1e-5 * (1 + x[k]);
      y[k] += step;
      j.col(k) = (at(y) - now) / step;
    }
    Matrix3d normal = j.transpose() * j;
    normal.diagonal() *= 1 + damping;
    normal.diagonal().array() += 1e-12;
    const Vector3d next = (x + normal.ldlt().solve(j.transpose() * error)).cwiseMax(0);
    if ((goal - at(next)).norm() < error.norm())
      x = next, damping = std::max(1e-9, damping / 3);
    else
      damping *= 5;
  }
  *miss = delta_e_2000(colour(mix(base, x)), wanted);
  return x;
}

}  // namespace

Spectrum dye_for(const Lab& wanted, double* miss) {
  // As much brown as possible: halve it until the bands can make up the rest.
  double base = 4;
  Spectrum best{};
  *miss = std::numeric_limits<double>::infinity();
  for (int i = 0; i < 40; ++i, base *= 0.85) {
    double here = 0;
    const Vector3d x = bands_for(wanted, base, &here);
    if (here < *miss) *miss = here, best = mix(base, x);
    if (here < 0.05) break;
  }
  return best;
}

Spectrum band(const char* name, double strength) {
  Spectrum s{};
  for (int b = 0; b < kBands; ++b) {
    if (!std::strcmp(name, "yellow")) s[b] = bell(b, 440, 42);
    if (!std::strcmp(name, "red")) s[b] = bell(b, 515, 40);
    if (!std::strcmp(name, "violet")) s[b] = bell(b, 565, 42);
    if (!std::strcmp(name, "blue")) s[b] = bell(b, 605, 46);
    if (!std::strcmp(name, "green")) s[b] = bell(b, 440, 42) * 0.45 + bell(b, 640, 46);
    s[b] *= strength;
  }
  return s;
}

}  // namespace strandline::demo
