#include "strandline/optics.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace strandline {
namespace {

double any_tau() { return std::exp(*rc::gen::inRange(-7000, 4000) / 1000.0); }

// The floor of black by sphere: L* 17–18.4 measured (J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293, 2000), which is
// R 0.0225–0.027.
TEST(Optics, FloorIsThatOfBlackHair) {
  EXPECT_GT(reflectance(tau_at_floor), 0.0225);
  EXPECT_LT(reflectance(tau_at_floor), 0.027);
}

RC_GTEST_PROP(Optics, FallsAndIsConvexInItsStoredForm, ()) {
  const double a = any_tau(), b = any_tau();
  const double low = std::min(a, b), high = std::max(a, b);
  RC_ASSERT(reflectance(low) >= reflectance(high));
  RC_ASSERT(reflectance(high) > 0 && reflectance(low) < 1);
  RC_ASSERT(reflectance((a + b) / 2) <= (reflectance(a) + reflectance(b)) / 2 + 1e-12);
}

RC_GTEST_PROP(Optics, InverseUndoesTheCurve, ()) {
  const double tau = any_tau();
  RC_PRE(tau < 2);
  const double back = optical_depth(reflectance(tau));
  RC_ASSERT(std::abs(back - tau) <= 1e-6 * (1 + tau));
}

RC_GTEST_PROP(Optics, BlendOfSharesZeroAndOneIsPure, ()) {
  const double x = reflectance(any_tau()), y = reflectance(any_tau()), m = *rc::gen::inRange(5, 100) / 100.0;
  const double shares[] = {1, 0}, r[] = {x, y};
  RC_ASSERT(std::abs(blend(shares, r, m) - x) < 1e-12);
}

RC_GTEST_PROP(Optics, SplittingAPopulationInTwoEqualOnesChangesNothing, ()) {
  const double x = reflectance(any_tau()), y = reflectance(any_tau()), m = *rc::gen::inRange(5, 100) / 100.0;
  const double share = *rc::gen::inRange(0, 1000) / 1000.0;
  const double two[] = {share, 1 - share}, r2[] = {x, y};
  const double three[] = {share / 2, share / 2, 1 - share}, r3[] = {x, x, y};
  RC_ASSERT(std::abs(blend(two, r2, m) - blend(three, r3, m)) < 1e-12);
}

// Areal mixing is excluded: half white over dark hair is far darker than the mean of the two (light-transport trial).
TEST(Optics, HalfWhiteOverDarkIsDarkerThanTheMean) {
  const double shares[] = {0.5, 0.5}, r[] = {reflectance(0.024), reflectance(0.8)};
  EXPECT_LT(blend(shares, r, 0.17), 0.55 * (r[0] + r[1]) / 2);
}

}  // namespace
}  // namespace strandline
