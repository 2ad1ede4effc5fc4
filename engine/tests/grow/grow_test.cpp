#include "strandline/grow.h"

#include <gtest/gtest.h>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

std::vector<Step> tint(const std::string& shade) {
  Formula f;
  f.range = "tint";
  f.parts = {{shade, 30}, {"developer-6", 30}};
  f.minutes = 35;
  return {{f, {"front hairline/regrowth", "crown/regrowth"}}};
}

TEST(Grow, UntouchedHairDrawsNoLine) {
  const auto g = grow(two_areas(), {}, small_shelf());
  ASSERT_TRUE(g);
  ASSERT_EQ(g->lines.size(), 2u);
  for (const RegrowthLine& l : g->lines) {
    EXPECT_NEAR(l.contrast_levels, 0, 1e-9);
    EXPECT_FALSE(l.shows);
  }
}

TEST(Grow, WhiterHairUnderTheSameColourShowsSooner) {
  const auto g = grow(two_areas(), tint("shade-0"), small_shelf());
  ASSERT_TRUE(g);
  const RegrowthLine &white = g->lines[0], &dark = g->lines[1];  // 80 % and 20 % white
  EXPECT_TRUE(white.shows);
  EXPECT_GT(white.contrast_levels, dark.contrast_levels);
  EXPECT_LT(white.weeks.p50, dark.shows ? dark.weeks.p50 : 1e9);
  EXPECT_LT(white.weeks.p10, white.weeks.p50);
  EXPECT_LT(white.weeks.p50, white.weeks.p90);
  // Common practice: white roots under a dark tint are seen after two to four weeks; clients and readings differ by a
  // week or two either way (prior).
  EXPECT_GT(white.weeks.p50, 0.5);
  EXPECT_LT(white.weeks.p50, 4.5);
}

TEST(Grow, NaturalHairUnderATintIsWhatGrows) {
  Head h;
  h.areas.push_back(area("a", AreaKind::crown, 100, {span("lengths", 0, 15, 0, 7)}));
  Population& p = h.areas[0].spans[0].populations[0];
  p.origin = ColourOrigin::tinted;
  p.natural_level = Reading{4, 0.3};
  const auto g = grow(h, {}, small_shelf());
  ASSERT_TRUE(g);
  EXPECT_NEAR(level_of_lightness(g->lines[0].natural.l), 4, 0.01);
  EXPECT_NEAR(level_of_lightness(g->lines[0].coloured.l), 7, 0.3);
  EXPECT_TRUE(g->lines[0].shows);
}

TEST(Grow, LeavesOutHairWithABond) {
  Head h = two_areas();
  h.areas[0].spans[0].extension = true;
  const auto g = grow(h, {}, small_shelf());
  ASSERT_TRUE(g);
  EXPECT_EQ(g->lines.size(), 1u);
  EXPECT_EQ(g->lines[0].area, "crown");
}

// 1.27 cm a month (common practice): 1.8 cm at 6 weeks.
TEST(Grow, LengthsAreThoseOfTheTable) {
  const auto g = grow(two_areas(), {}, small_shelf());
  ASSERT_TRUE(g && g->lengths.size() == 5);
  EXPECT_EQ(g->lengths[2].weeks, 6);
  EXPECT_NEAR(g->lengths[2].cm.value, 1.8, 0.05);
}

TEST(Grow, TellsUnknownThings) {
  const auto g = grow(two_areas(), tint("no such shade"), small_shelf());
  ASSERT_FALSE(g);
  EXPECT_EQ(g.error()[0].code, "unknown_product");
}

}  // namespace
}  // namespace strandline
