// Laws of blends.
#include "laws.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "lightness.h"

namespace strandline::fibre_bed {
namespace {

TEST(Laws, StearnsNoechelMixesItsOwnFunctionByShare) {
  auto f = [](double r, double m) { return (1 - r) / (m * (r - 0.01) + 0.01); };  // Stearns and Noechel 1944
  for (double m : {0.1, 0.17, 0.3, 1.0})
    for (double s : {0.0, 0.2, 0.5, 1.0}) {
      const double mixed = blend_stearns_noechel(s, 0.44, 0.03, m);
      EXPECT_NEAR(f(mixed, m), s * f(0.44, m) + (1 - s) * f(0.03, m), 1e-9);
    }
}

TEST(Laws, PowerMinusOneIsStearnsNoechel) {
  EXPECT_NEAR(blend_power(0.3, 0.5, 0.04, -1, 0.01 * 0.8 / 0.2), blend_stearns_noechel(0.3, 0.5, 0.04, 0.2), 1e-12);
  EXPECT_NEAR(blend_power(0.3, 0.5, 0.04, 1, 0), 0.3 * 0.5 + 0.7 * 0.04, 1e-12);
}

TEST(Laws, BestConstantIsFoundAgain) {
  std::vector<Blend> blends;
  for (double s = 0.1; s < 0.95; s += 0.1)
    blends.push_back({s, 0.44, 0.03, blend_stearns_noechel(s, 0.44, 0.03, 0.21)});
  EXPECT_NEAR(best_m(blends), 0.21, 1e-3);
}

TEST(Lightness, PublishedPoints) {
  EXPECT_NEAR(lightness(1), 100, 1e-12);
  EXPECT_NEAR(lightness(0.1842), 50.0, 0.01);  // ISO/CIE 11664-4
  EXPECT_NEAR(lightness(0), 0, 1e-12);
  // R 0.181 and K/S 1.854 (Wilmsmann 1960, J Soc Cosmet Chem 11).
  EXPECT_NEAR(kubelka_munk(0.181), 1.854, 0.02);
  EXPECT_NEAR(kubelka_munk_reflectance(1.854), 0.181, 0.002);
}

}  // namespace
}  // namespace strandline::fibre_bed
