// The fit: optimal, and concave whatever the numbers.
#include "concave_fit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "lightness.h"
#include "random.h"

namespace strandline::fibre_bed {
namespace {

TEST(NonNegativeLeastSquares, MeetsTheConditionsOfOptimality) {
  Random random(11, 0);
  for (int trial = 0; trial < 200; ++trial) {
    Eigen::MatrixXd a(12, 6);
    Eigen::VectorXd b(12);
    for (int i = 0; i < 12; ++i) {
      b[i] = random.normal();
      for (int j = 0; j < 6; ++j) a(i, j) = random.normal();
    }
    const Eigen::VectorXd x = non_negative_least_squares(a, b), gradient = a.transpose() * (a * x - b);
    for (int j = 0; j < 6; ++j) {
      ASSERT_GE(x[j], 0);
      if (x[j] > 0)
        ASSERT_NEAR(gradient[j], 0, 1e-9);
      else
        ASSERT_GE(gradient[j], -1e-9);
    }
  }
}

// Kubelka-Munk with a floor, x = 17 tau: a law of hair from blond to mid brown.
std::vector<CurvePoint> kubelka_munk_curve() {
  std::vector<CurvePoint> c;
  for (int i = 0; i < 25; ++i) {
    const double tau = 0.002 * std::pow(5000, i / 24.0);
    c.push_back({tau, 0.024 + 0.976 * kubelka_munk_reflectance(17 * tau), 0.002});
  }
  return c;
}

TEST(ConcaveFit, FollowsKubelkaMunk) {
  const auto points = kubelka_munk_curve();
  const ConcaveCurve f = fit_concave(points, stearns_noechel_offset(0.3), 8);
  for (const CurvePoint& p : points) EXPECT_NEAR(f.reflectance(p.tau) / p.reflectance, 1, 0.02) << p.tau;
}

TEST(ConcaveFit, IsIncreasingAndConcaveEvenWhenThePointsAreNot) {
  auto points = kubelka_munk_curve();
  Random random(11, 1);
  for (CurvePoint& p : points) p.reflectance *= 1 + 0.1 * random.normal();
  const ConcaveCurve f = fit_concave(points, stearns_noechel_offset(0.3), 7);
  EXPECT_LE(f.kappa.size(), 7u);
  for (double alpha : f.alpha) EXPECT_GT(alpha, 0);
  double slope = 1e300;
  for (double tau = 0; tau < 60; tau = 1.02 * tau + 1e-4) {
    const double now = (f.e(tau + 1e-4) - f.e(tau)) / 1e-4;
    ASSERT_GE(now, 0);
    ASSERT_LE(now, slope + 1e-9);
    slope = now;
  }
}

}  // namespace
}  // namespace strandline::fibre_bed
