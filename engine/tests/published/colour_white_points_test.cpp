// White points and chromaticities of the lights against the printed tables.
#include <gtest/gtest.h>

#include <cmath>

#include "generated/tables.h"
#include "strandline/colour.h"

namespace strandline {
namespace {

constexpr Observer k2 = Observer::cie_1931_2deg, k10 = Observer::cie_1964_10deg;

// Sum over the 5 nm tables from `first` to `last` nm, Y = 100.
Xyz summed(const Power& light, Observer observer, double first, double last) {
  const auto& cmf = observer == k2 ? tables::cie_1931_2deg : tables::cie_1964_10deg;
  Xyz s{0, 0, 0};
  for (int i = 0; i < kPowers; ++i) {
    const auto& [nm, x, y, z] = cmf[i];
    EXPECT_EQ(nm, power_nm(i));
    if (nm < first || nm > last) continue;
    s.x += light[i] * x, s.y += light[i] * y, s.z += light[i] * z;
  }
  return {100 * s.x / s.y, 100, 100 * s.z / s.y};
}

// ASTM E308, tables 5 and 6, white point rows.
TEST(WhitePoints, TheWeightsSumToThePublishedWhiteToThreeDecimals) {
  struct Row {
    Light light;
    Observer observer;
    Xyz white;
  };
  const Row rows[] = {{Light::daylight, k2, {95.047, 100, 108.883}},
                      {Light::daylight, k10, {94.811, 100, 107.304}},
                      {Light::lamp, k2, {109.850, 100, 35.585}},
                      {Light::lamp, k10, {111.144, 100, 35.200}}};
  Spectrum all;
  all.fill(1);
  for (const auto& [light, observer, white] : rows) {
    const Weights& w = weights(light, observer);
    const Xyz sum = xyz(all, w);
    EXPECT_NEAR(sum.x, white.x, 5e-4);
    EXPECT_NEAR(sum.y, white.y, 5e-4);
    EXPECT_NEAR(sum.z, white.z, 5e-4);
    // Before that last scaling the 5 nm sums themselves are this close:
    const Xyz raw = fold(power(light), observer).white;
    EXPECT_NEAR(raw.x, white.x, 0.001);
    EXPECT_NEAR(raw.z, white.z, 0.021);
  }
}

// CIE 15:2004 table T.3, computed there from 5 nm tables over 380–780 nm and printed to two decimals.
TEST(WhitePoints, TheFiveNanometreSumsGiveCie15) {
  const Xyz d2 = summed(power(Light::daylight), k2, 380, 780), d10 = summed(power(Light::daylight), k10, 380, 780);
  const Xyz a2 = summed(power(Light::lamp), k2, 380, 780), a10 = summed(power(Light::lamp), k10, 380, 780);
  EXPECT_NEAR(d2.x, 95.04, 0.005);
  EXPECT_NEAR(d2.z, 108.88, 0.005);
  EXPECT_NEAR(d10.x, 94.81, 0.005);
  EXPECT_NEAR(d10.z, 107.32, 0.005);
  EXPECT_NEAR(a2.x, 109.85, 0.005);
  EXPECT_NEAR(a2.z, 35.58, 0.0051);
  EXPECT_NEAR(a10.x, 111.14, 0.005);
  EXPECT_NEAR(a10.z, 35.20, 0.005);
}

// Chromaticities: FL11 CIE 15:2004 table T.8.1, LED-B3 CIE 15:2018 table 13, D50, D55 and D75 CIE 15:2004
// table T.3.
TEST(WhitePoints, ChromaticitiesOfTheOtherLights) {
  struct Row {
    Power light;
    double x, y;
  };
  const double scale = 1.4388 / 1.4380;
  const Row rows[] = {{power(Light::fluorescent), 0.3805, 0.3769},
                      {power(Light::led), 0.3756, 0.3723},
                      {*daylight(5000 * scale), 0.3457, 0.3585},
                      {*daylight(5500 * scale), 0.3324, 0.3474},
                      {*daylight(7500 * scale), 0.2990, 0.3149}};
  for (const auto& [light, x, y] : rows) {
    const Xyz w = summed(light, k2, 380, 780);
    EXPECT_NEAR(w.x / (w.x + w.y + w.z), x, 1e-4);
    EXPECT_NEAR(w.y / (w.x + w.y + w.z), y, 1e-4);
  }
}

// CIE 15:2004 table T.1: standard illuminant A to six figures at 400, 560 and 700 nm.
TEST(WhitePoints, IlluminantAByItsFormula) {
  EXPECT_NEAR(illuminant_a(400), 14.7080, 5e-5);
  EXPECT_EQ(illuminant_a(560), 100);
  EXPECT_NEAR(illuminant_a(700), 198.261, 5e-4);
}

TEST(WhitePoints, DaylightIsDefinedFrom4000To25000Kelvin) {
  EXPECT_TRUE(daylight(4000) && daylight(25000));
  EXPECT_FALSE(daylight(3999.9) || daylight(25000.1) || daylight(std::nan("")));
}

}  // namespace
}  // namespace strandline
