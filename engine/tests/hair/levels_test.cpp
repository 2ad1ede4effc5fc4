#include "strandline/levels.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "strandline/fibre.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

Lab colour(const Fibre& f) {
  return lab(reflectance(optical_depth(f, pigments(Constants{}))), weights(Light::daylight, Observer::cie_1964_10deg));
}

RC_GTEST_PROP(Levels, ThereAndBack, ()) {
  const double level = *rc::gen::inRange(100, 1000) / 100.0;
  RC_ASSERT(std::abs(level_of_lightness(lightness_of_level(level)) - level) < 1e-9);
}

RC_GTEST_PROP(Levels, NaturalHairHasTheLightnessOfItsLevel, ()) {
  const double level = *rc::gen::inRange(100, 1000) / 100.0;
  RC_ASSERT(std::abs(colour(natural_fibre(level, Tone::natural)).l - lightness_of_level(level)) < 1e-6);
}

TEST(Levels, EveryLevelIsNamedAsItself) {
  for (int level = 1; level <= 10; ++level)
    for (int tone = 0; tone < kTones; ++tone) {
      const Named named = name_colour(colour_of(level, static_cast<Tone>(tone)));
      EXPECT_NEAR(named.level, level, 1e-6);
      EXPECT_EQ(named.tone, static_cast<Tone>(tone)) << level;
    }
}

// White hair reads about 72 / 0.5 / 12 (from memory, low confidence).
TEST(Levels, WhiteHair) {
  const Lab w = colour(white_fibre());
  EXPECT_NEAR(w.l, 72, 1);
  EXPECT_NEAR(w.a, 0.5, 1.5);
  EXPECT_NEAR(w.b, 12, 1.5);
}

// One level costs a factor of about 1.5–2 in melanin.
TEST(Levels, MelaninFallsByAFactorPerLevel) {
  for (int level = 2; level <= 7; ++level) {
    const double factor =
        natural_fibre(level, Tone::natural).eumelanin / natural_fibre(level + 1, Tone::natural).eumelanin;
    EXPECT_GT(factor, 1.3);
    EXPECT_LT(factor, 2.2);
  }
}

TEST(Levels, ToneWordsParse) {
  Tone t = Tone::red;
  EXPECT_TRUE(parse_tone("ash", t));
  EXPECT_EQ(t, Tone::ash);
  EXPECT_FALSE(parse_tone("nothing", t));
}

}  // namespace
}  // namespace strandline
