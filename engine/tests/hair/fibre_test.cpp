#include "strandline/fibre.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

Lab colour(const Fibre& f) {
  return lab(reflectance(optical_depth(f, pigments(Constants{}))), weights(Light::daylight, Observer::cie_1964_10deg));
}

Fibre any_fibre() {
  Fibre f = natural_fibre(*rc::gen::inRange(10, 100) / 10.0, Tone::natural);
  f.oxidised = *rc::gen::inRange(0, 200) / 1000.0;
  f.porosity = *rc::gen::inRange(0, 300) / 100.0;
  for (double& d : f.dye) d = *rc::gen::inRange(0, 500) / 1000.0;
  return f;
}

Treatment any_treatment() {
  Treatment t;
  t.exposure = *rc::gen::inRange(0, 6000) / 1000.0;
  t.dye_exposure = t.exposure * 0.1;
  t.fourier = t.fourier_reference = 0.1;
  for (double& k : t.load) k = *rc::gen::inRange(0, 800) / 1000.0;
  return t;
}

RC_GTEST_PROP(Fibre, ZeroMinutesChangeNothing, ()) {
  const Fibre f = any_fibre();
  Treatment t;
  t.fourier_reference = 0.1;
  t.load = any_treatment().load;
  const Fibre after = treated(f, t, selectivity(f, Constants{}), Constants{});
  RC_ASSERT(std::abs(colour(after).l - colour(f).l) < 1e-9);
}

RC_GTEST_PROP(Fibre, MoreDyeIsNeverLighter, ()) {
  const Fibre f = any_fibre();
  Treatment t = any_treatment();
  const double before = colour(treated(f, t, selectivity(f, Constants{}), Constants{})).l;
  const int band = *rc::gen::inRange(0, kBands);
  t.load[band] += 0.2;
  RC_ASSERT(colour(treated(f, t, selectivity(f, Constants{}), Constants{})).l <= before + 1e-9);
}

RC_GTEST_PROP(Fibre, MoreExposureWithDyeHeldFixedNeverDarkens, ()) {
  Fibre f = any_fibre();
  Treatment weak = any_treatment(), strong = weak;
  strong.exposure += 0.5;
  // Pigment may pass through its warm intermediate but its depth at every band only falls.
  RC_ASSERT(colour(lightened(f, strong, Constants{})).l >= colour(lightened(f, weak, Constants{})).l - 1e-6);
}

RC_GTEST_PROP(Fibre, ExposureInTwoStepsIsTheSumOfBoth, ()) {
  const Fibre f = any_fibre();
  Treatment a, b, both;
  a.exposure = *rc::gen::inRange(0, 3000) / 1000.0;
  b.exposure = *rc::gen::inRange(0, 3000) / 1000.0;
  both.exposure = a.exposure + b.exposure;
  const Constants c;
  const Fibre two = lightened(lightened(f, a, c), b, c), one = lightened(f, both, c);
  RC_ASSERT(std::abs(two.eumelanin - one.eumelanin) < 1e-12);
  RC_ASSERT(std::abs(two.pheomelanin - one.pheomelanin) < 1e-12);
  RC_ASSERT(std::abs(two.oxidised - one.oxidised) < 1e-10);
}

RC_GTEST_PROP(Fibre, UptakeGrowsWithTimeAndNeverPassesOne, ()) {
  const double a = *rc::gen::inRange(0, 4000) / 1000.0, b = a + 0.01;
  RC_ASSERT(cylinder_uptake(a) <= cylinder_uptake(b) + 1e-12);
  RC_ASSERT(cylinder_uptake(b) <= 1 && cylinder_uptake(a) >= 0);
}

// The two expansions meet: their difference at the change-over stays below 2e-5.
TEST(Fibre, UptakeExpansionsMeet) { EXPECT_NEAR(cylinder_uptake(0.00799999), cylinder_uptake(0.00800001), 2e-5); }

// Crank, The Mathematics of Diffusion, table of uptake by a cylinder: half of the final uptake at Dt/a² = 0.0630 (from
// memory; the short-time expansion gives the same).
TEST(Fibre, HalfUptake) { EXPECT_NEAR(cylinder_uptake(0.0630), 0.5, 0.003); }

TEST(Fibre, ResistantWhiteTakesLess) {
  Treatment t;
  t.fourier = t.fourier_reference = 0.1;
  Fibre soft, glassy;
  glassy.resistance = 1;
  EXPECT_LT(uptake(glassy, t, Constants{}), uptake(soft, t, Constants{}));
  EXPECT_DOUBLE_EQ(uptake(soft, t, Constants{}), 1);
}

// Damaged hair grabs blue and sheds gold: common practice.
TEST(Fibre, DamagePrefersBlue) {
  Fibre f;
  f.porosity = 3;
  const Spectrum s = selectivity(f, Constants{});
  EXPECT_GT(s[kBands - 8], 1);
  EXPECT_LT(s[2], 1);
}

}  // namespace
}  // namespace strandline
