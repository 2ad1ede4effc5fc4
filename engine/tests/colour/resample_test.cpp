// Measured curves on the bands of the engine.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <vector>

#include "strandline/spectrum.h"

namespace strandline {
namespace {

struct Curve {
  std::vector<double> nm, values;
};

Curve sampled(double first, double last, double step, const std::function<double(double)>& f) {
  Curve c;
  for (double nm = first; nm <= last + 1e-9; nm += step) c.nm.push_back(nm), c.values.push_back(f(nm));
  return c;
}

double worst(const Curve& c, const std::function<double(double)>& f) {
  const auto s = resampled(c.nm, c.values);
  EXPECT_TRUE(s);
  double w = 0;
  for (int k = 0; s && k < kBands; ++k) w = std::fmax(w, std::abs((*s)[k] - f(band_nm(k))));
  return w;
}

TEST(Resample, PointsOnTheBandsAreKept) {
  const auto f = [](double nm) { return std::sin(nm); };  // nothing smooth about it
  EXPECT_EQ(worst(sampled(400, 700, 10, f), f), 0);
  EXPECT_EQ(worst(sampled(380, 730, 10, f), f), 0);
  EXPECT_EQ(worst(sampled(380, 730, 5, f), f), 0);
}

// Sprague's formula with six points follows a polynomial of fourth degree exactly, away from the ends.
TEST(Resample, SpragueFollowsAQuartic) {
  const auto f = [](double nm) {
    const double u = (nm - 550) / 150;
    return 0.3 + u * (0.2 + u * (-0.1 + u * (0.15 - 0.05 * u)));
  };
  EXPECT_LT(worst(sampled(333, 773, 20, f), f), 1e-12);
  EXPECT_LT(worst(sampled(386, 718, 3.32, f), f), 1e-12);
}

// Near the ends it leans on two extrapolated points. Values of the example in colour-science/colour
// (BSD-3-Clause), SpragueInterpolator: f(0.25), f(0.5) and f(0.75) between the first two of seven points.
TEST(Resample, SpragueAtTheEnds) {
  const std::vector<double> y{5.9200, 9.3700, 10.8135, 4.5100, 69.5900, 27.8007, 86.0500};
  const auto from = [&](double first) {
    std::vector<double> nm;
    for (int i = 0; i < 7; ++i) nm.push_back(first + 60 * i);
    return *resampled(nm, y);
  };
  EXPECT_NEAR(from(385)[0], 6.7295161, 1e-6);
  EXPECT_NEAR(from(370)[0], 7.2185025, 1e-7);
  EXPECT_NEAR(from(385)[3], 7.8140625, 1e-7);
}

TEST(Resample, SmoothCurvesFromTwentyNanometres) {
  const auto f = [](double nm) { return 0.05 + 0.6 / (1 + std::exp((560 - nm) / 20)); };
  EXPECT_LT(worst(sampled(395, 715, 20, f), f), 2e-3);
}

TEST(Resample, UnevenGridsByStraightLines) {
  const auto f = [](double nm) { return nm / 1000; };
  const Curve c{{395, 402, 455.5, 610, 655, 720}, {0.395, 0.402, 0.4555, 0.61, 0.655, 0.72}};
  EXPECT_LT(worst(c, f), 1e-12);
}

TEST(Resample, HoldsTheEndForOneStepAtMost) {
  const auto f = [](double nm) { return nm / 1000; };
  const auto c = sampled(410, 690, 10, f);
  const auto s = resampled(c.nm, c.values);
  ASSERT_TRUE(s);
  EXPECT_DOUBLE_EQ(s->front(), 0.41);
  EXPECT_DOUBLE_EQ(s->back(), 0.69);
  const auto short_left = sampled(411, 700, 10, f), short_right = sampled(400, 680, 10, f);
  EXPECT_FALSE(resampled(short_left.nm, short_left.values));
  EXPECT_FALSE(resampled(short_right.nm, short_right.values));
}

TEST(Resample, RefusesWhatIsNoCurve) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  using V = std::vector<double>;
  EXPECT_FALSE(resampled(V{}, V{}));
  EXPECT_FALSE(resampled(V{550}, V{1}));
  EXPECT_FALSE(resampled(V{400, 700}, V{1}));
  EXPECT_FALSE(resampled(V{700, 400}, V{1, 1}));
  EXPECT_FALSE(resampled(V{400, 400, 700}, V{1, 1, 1}));
  EXPECT_FALSE(resampled(V{400, nan, 700}, V{1, 1, 1}));
  EXPECT_TRUE(resampled(V{400, 700}, V{1, 1}));
}

}  // namespace
}  // namespace strandline
