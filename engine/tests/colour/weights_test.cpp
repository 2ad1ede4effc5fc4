// 31 weights against the 5 nm sums they stand for.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "generated/tables.h"
#include "strandline/colour.h"

namespace strandline {
namespace {

Lab at_5nm(const std::function<double(double)>& r, Light light, Observer observer) {
  const auto& cmf = observer == Observer::cie_1931_2deg ? tables::cie_1931_2deg : tables::cie_1964_10deg;
  Xyz s{0, 0, 0}, white{0, 0, 0};
  for (int i = 0; i < kPowers; ++i) {
    const auto& [nm, x, y, z] = cmf[i];
    const double p = power(light)[i], v = r(std::fmin(std::fmax(nm, kFirstNm), kLastNm)) * p;
    s.x += v * x, s.y += v * y, s.z += v * z;
    white.x += p * x, white.y += p * y, white.z += p * z;
  }
  return lab(s, white);
}

TEST(Weights, NoneIsNegativeAndTheyAddUpToTheirWhite) {
  for (Light l : kLights)
    for (Observer o : {Observer::cie_1931_2deg, Observer::cie_1964_10deg}) {
      const Weights& w = weights(l, o);
      Xyz sum{0, 0, 0};
      for (int k = 0; k < kBands; ++k) {
        EXPECT_GE(w.x[k], 0);
        EXPECT_GE(w.y[k], 0);
        EXPECT_GE(w.z[k], 0);
        sum.x += w.x[k], sum.y += w.y[k], sum.z += w.z[k];
      }
      EXPECT_NEAR(sum.x, w.white.x, 1e-10);
      EXPECT_NEAR(sum.y, 100, 1e-10);
      EXPECT_NEAR(sum.z, w.white.z, 1e-10);
    }
}

// Curves as smooth as hair: absorption that falls exponentially, with and without one dye band 60 nm wide.
// Stated tolerance: ΔE00 0.02 under every light (a reading repeats to 0.3 at best).
TEST(Weights, SmoothCurvesGiveTheColourOfTheFiveNanometreSum) {
  for (double depth : {0.02, 0.1, 0.5, 2.0})
    for (double dye : {0.0, 0.5, 2.0})
      for (double centre : {450.0, 520.0, 600.0}) {
        const auto r = [&](double nm) {
          const double u = (nm - centre) / 30;
          const double ks = depth * std::exp((550 - nm) / 106) + dye * std::exp(-u * u / 2);
          return 0.02 + 0.6 / (1 + ks + std::sqrt(ks * (ks + 2)));
        };
        Spectrum s;
        for (int k = 0; k < kBands; ++k) s[k] = r(band_nm(k));
        for (Light l : kLights)
          for (Observer o : {Observer::cie_1931_2deg, Observer::cie_1964_10deg})
            EXPECT_LT(delta_e_2000(lab(s, weights(l, o)), at_5nm(r, l, o)), 0.02)
                << "depth " << depth << " dye " << dye << " at " << centre << " light " << static_cast<int>(l);
      }
}

// A curve that is linear between the bands must come out exactly, whatever the light.
TEST(Weights, CurvesLinearBetweenBandsAreExact) {
  const auto r = [](double nm) { return 0.1 + 0.8 * (nm - 400) / 300; };
  Spectrum s;
  for (int k = 0; k < kBands; ++k) s[k] = r(band_nm(k));
  for (Light l : kLights)
    for (Observer o : {Observer::cie_1931_2deg, Observer::cie_1964_10deg})
      EXPECT_LT(delta_e_ab(lab(s, weights(l, o)), at_5nm(r, l, o)), 1e-10);
}

// Two curves of the same colour by day need not match in the shop: the LED and the tube must tell light
// apart.
TEST(Weights, LightsDiffer) {
  Spectrum s;
  for (int k = 0; k < kBands; ++k) s[k] = band_nm(k) < 590 ? 0.05 : 0.4;
  const auto seen = [&](Light l) { return lab(s, weights(l, Observer::cie_1964_10deg)); };
  EXPECT_GT(delta_e_2000(seen(Light::daylight), seen(Light::lamp)), 2);
  EXPECT_GT(delta_e_2000(seen(Light::led), seen(Light::fluorescent)), 0.5);
}

}  // namespace
}  // namespace strandline
