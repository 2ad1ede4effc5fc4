// What surfaces as measured on hair change against the reference bed: scales lean by 2–3 degrees (Wortmann 2003 and
// renderers' defaults), and their highlights are 5–10 degrees wide (Marschner and others 2003), which is the spread of
// facets. The two are different things; the reference bed has the spread (4.6 degrees) and no lean.
#include <gtest/gtest.h>

#include "generated/constants.h"
#include "study.h"

namespace strandline::fibre_bed {
namespace {

BedSpec bed(double lean, double spread) {
  BedSpec b;
  b.surface.tilt_mean = lean;
  b.surface.tilt_sd = b.surface.tilt_sd_around = spread;
  return b;
}

constexpr double kLean = 0.045, kReferenceSpread = 0.08, kPublishedSpread = 0.13;  // rad
const Effort kShort{.scale = 1, .threads = 1, .seed = 99};

TEST(PublishedSurface, BlendsAskForAboutASpreadLessThanTheReference) {
  constexpr double kPhotons = 1e4;
  for (const BedSpec& b : {bed(kLean, kReferenceSpread), bed(0, kPublishedSpread)}) {
    const double m = study_blend(b, kPhotons, kShort).m.value;
    EXPECT_NEAR(m, 0.17, 0.02);
    EXPECT_LT(m, Constants{}.bed_blend_m);
  }
}

// The limit that docs/limits.md tells: spread alone hardly moves the curve, a lean darkens light hair much.
TEST(PublishedSurface, LeanDarkensLightHairMoreThanSpreadDoes) {
  constexpr size_t kLight = 8, kMiddle = 15, kDark = 22;  // depths 0.02, 0.2 and 2
  ASSERT_NEAR(curve_depths()[kMiddle], 0.2, 0.01);
  constexpr double kPhotons = 1.5e4;
  const auto reference = study_curve({}, kPhotons, kShort);
  const auto spread = study_curve(bed(0, kPublishedSpread), kPhotons, kShort);
  const auto lean = study_curve(bed(kLean, kReferenceSpread), kPhotons, kShort);
  auto change = [&](const std::vector<Value>& of, size_t i) { return of[i].value / reference[i].value - 1; };
  EXPECT_NEAR(change(spread, kMiddle), -0.035, 0.02);
  EXPECT_NEAR(change(lean, kMiddle), -0.12, 0.02);
  EXPECT_NEAR(change(lean, kLight), -0.44, 0.06);
  EXPECT_NEAR(change(lean, kDark), 0, 0.03) << "black is its surface alone";
}

}  // namespace
}  // namespace strandline::fibre_bed
