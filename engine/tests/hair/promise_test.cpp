#include "strandline/promise.h"

#include <gtest/gtest.h>

#include "engine/tests/support.h"
#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

const Constants c;

Lab colour(const Fibre& f) {
  return lab(reflectance(optical_depth(f, pigments(c))), weights(Light::daylight, Observer::cie_1964_10deg));
}
double level(const Fibre& f) { return level_of_lightness(colour(f).l); }

Fibre after(const Fibre& f, ProductClass cls, double shade, Tone tone = Tone::natural) {
  BowlChemistry bowl = usual_bowl(cls, c);
  bowl.load = promised_load(cls, shade, tone, c);
  return treated(f, treatment(bowl, 5, 15, c), selectivity(f, c), c);
}

Fibre tinted(double at, double porosity) {
  Population p;
  p.origin = ColourOrigin::tinted;
  Fibre f = fibre_as_read(p, at, at);
  f.porosity = porosity;
  return f;
}

TEST(Promise, IsKeptOnNaturalHairOfItsOwnLevelAndTone) {
  for (Tone tone : {Tone::natural, Tone::ash, Tone::gold, Tone::copper, Tone::red, Tone::violet})
    for (int n = 4; n <= 8; ++n) {
      const Lab got = colour(after(natural_fibre(n, Tone::natural), ProductClass::permanent, n, tone));
      const Lab wanted = colour_of(promised_level(ProductClass::permanent, n, c), tone);
      EXPECT_LT(delta_e_2000(got, wanted), 2) << n << " " << word(tone);
    }
}

// Common practice, as in knowledge/calibration/practice.json.
TEST(Promise, SixNaturalOnNaturalWhiteAndTintedHair) {
  EXPECT_NEAR(level(after(natural_fibre(6, Tone::natural), ProductClass::permanent, 6)), 6, 0.4);
  EXPECT_NEAR(level(after(white_fibre(), ProductClass::permanent, 6)), 6.3, 0.45);
  EXPECT_NEAR(level(after(tinted(6, 1.2), ProductClass::permanent, 6)), 5.6, 0.5);
}

TEST(Promise, LengthsRefreshedWithTheirOwnShadeGoHardlyDeeper) {
  for (int n = 4; n <= 8; ++n) EXPECT_NEAR(level(after(tinted(n, 1.2), ProductClass::demi, n)), n - 0.45, 0.45) << n;
}

TEST(Promise, ClearWithDeveloperLiftsOneToTwoLevelsWithSix) {
  const BowlChemistry clear = usual_bowl(ProductClass::permanent, c);
  const Fibre f = natural_fibre(5, Tone::natural);
  EXPECT_NEAR(level(treated(f, treatment(clear, 5, 15, c), selectivity(f, c), c)), 6.7, 0.7);
}

TEST(Promise, DemiTonesWhiteAndPermanentCoversIt) {
  for (int n = 4; n <= 7; ++n) {
    const double beside = level(after(natural_fibre(n, Tone::natural), ProductClass::demi, n));
    EXPECT_GT(level(after(white_fibre(), ProductClass::demi, n)) - beside, 1) << "see-through, a level or two lighter";
    const double covered = level(after(natural_fibre(n, Tone::natural), ProductClass::permanent, n));
    EXPECT_LT(level(after(white_fibre(), ProductClass::permanent, n)) - covered, 1) << "covered";
  }
}

TEST(Promise, HighLiftAndPaleBlondDoNotCoverWhite) {
  const double white = level(white_fibre());
  EXPECT_GT(level(after(white_fibre(), ProductClass::high_lift, 10)), 9.5);
  // Beside natural hair that the same bowl was made for, white stays lighter than the covered one level.
  EXPECT_GT(level(after(white_fibre(), ProductClass::permanent, 10)), 9.7);
  EXPECT_LT(level(after(white_fibre(), ProductClass::permanent, 6)), white - 3);
}

TEST(Promise, AHueWithoutALevelIsACorrectorsAlone) {
  EXPECT_TRUE(names_colour(ProductClass::corrector, 0, Tone::violet));
  EXPECT_TRUE(names_colour(ProductClass::direct, 0, Tone::copper));
  EXPECT_FALSE(names_colour(ProductClass::corrector, 0, Tone::natural));
  EXPECT_FALSE(names_colour(ProductClass::permanent, 0, Tone::violet));
  EXPECT_TRUE(names_colour(ProductClass::permanent, 7, Tone::natural));
  // Violet takes yellow: it takes light between 500 and 650 nm, more than at either end.
  const Spectrum violet = promised_load(ProductClass::corrector, 0, Tone::violet, c);
  EXPECT_GT(violet[15], violet[0] + 0.1);
  EXPECT_GT(violet[15], violet[kBands - 1] + 0.1);
}

Treatment half_shown(const Constants& constants) {
  Treatment t;
  t.shown_on_melanin = 0.5, t.melanin_scale = constants.shown_melanin_scale;
  return t;
}

TEST(Promise, ATraceOfDyeOrMelaninChangesATrace) {
  Fibre f = white_fibre();
  EXPECT_EQ(shown(f, half_shown(c), c), 1);
  f.eumelanin = 1e-6;
  EXPECT_NEAR(shown(f, half_shown(c), c), 1, 1e-4);
  f.eumelanin = 0;
  for (double& d : f.dye) d = 1e-6;
  EXPECT_NEAR(shown(f, half_shown(c), c), 1, 1e-4);
  f.eumelanin = 3;
  EXPECT_NEAR(shown(f, half_shown(c), c), 0.5, 1e-3);
}

}  // namespace
}  // namespace strandline
