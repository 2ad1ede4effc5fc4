#include "strandline/fade.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr int kRedBand = 12, kBlueBand = 21;  // 520 and 610 nm

ProductClass any_class() {
  return *rc::gen::element(ProductClass::permanent, ProductClass::high_lift, ProductClass::demi, ProductClass::direct);
}

RC_GTEST_PROP(Fade, WhatIsLeftFallsWithWashesAndLightAndStaysWithinOne, ()) {
  const Constants c;
  const ProductClass cls = any_class();
  const int band = *rc::gen::inRange(0, kBands);
  const double porosity = *rc::gen::inRange(0, 300) / 100.0, washes = *rc::gen::inRange(0, 600) / 10.0;
  const double hours = *rc::gen::inRange(0, 1000) / 10.0;
  const double left = dye_left(cls, band, porosity, washes, hours, c);
  RC_ASSERT(left >= 0 && left <= 1);
  RC_ASSERT(dye_left(cls, band, porosity, washes + 1, hours, c) <= left + 1e-12);
  RC_ASSERT(dye_left(cls, band, porosity, washes, hours + 1, c) <= left + 1e-12);
  RC_ASSERT(dye_left(cls, band, porosity, 0, 0, c) == 1);
}

// J Cosmet Sci 72:278 (2021), table III: an intense red has most of its 12-wash change after two washes.
TEST(Fade, RedLosesMostInTheFirstTwoWashes) {
  const Constants c;
  auto lost = [&](double washes) { return 1 - dye_left(ProductClass::permanent, kRedBand, 1, washes, 0, c); };
  EXPECT_GT(lost(2) / lost(12), 0.7);
  auto other = [&](double washes) { return 1 - dye_left(ProductClass::permanent, kBlueBand, 1, washes, 0, c); };
  EXPECT_LT(other(2) / other(12), 0.6);
}

// IFSCC Mag 11:139 (2008): modern permanent shades keep more than 90 % over 30 washes; within the stated spread.
TEST(Fade, PermanentKeepsMostOverThirtyWashes) {
  const double kept = dye_left(ProductClass::permanent, kBlueBand, 1, 30, 0, Constants{});
  EXPECT_GT(kept, 0.82);
  EXPECT_LT(kept, 0.95);
}

// Practical Modern Hair Science, ch. 4, table 5: semi-permanent 6-8 washes, demi-permanent up to 24.
TEST(Fade, ClassesLastAsReported) {
  const Constants c;
  EXPECT_LT(dye_left(ProductClass::direct, kBlueBand, 1, 8, 0, c), 0.2);
  EXPECT_GT(dye_left(ProductClass::demi, kBlueBand, 1, 8, 0, c), 0.3);
  EXPECT_LT(dye_left(ProductClass::demi, kBlueBand, 1, 24, 0, c), 0.35);
}

// J Cosmet Sci 59:366: bleached hair loses most.
TEST(Fade, PorousHairLosesMore) {
  const Constants c;
  EXPECT_LT(dye_left(ProductClass::demi, kBlueBand, 2.5, 6, 0, c), dye_left(ProductClass::demi, kBlueBand, 1, 6, 0, c));
}

std::vector<Step> tint() {
  Formula f;
  f.range = "tint";
  f.parts = {{"shade-2", 30}, {"developer-6", 30}};
  f.minutes = 35;
  return {{f, {"front hairline/regrowth"}}};
}

TEST(Fade, StartsAtThePredictionAndOnlyColouredZonesMove) {
  const Shelf shelf = small_shelf();
  const auto f = fade(two_areas(), tint(), shelf, Habit{});
  const auto p = predict(two_areas(), tint(), shelf);
  ASSERT_TRUE(f && p);
  ASSERT_EQ(f->zones.size(), 2u);
  ASSERT_EQ(f->zones[0].moments.size(), 9u);
  EXPECT_NEAR(delta_e_ab(f->zones[0].moments[0].lab, p->zones[0].planned.lab), 0, 1e-9);
  EXPECT_GT(f->zones[0].moments[8].lab.l, f->zones[0].moments[0].lab.l);
  EXPECT_GT(f->zones[0].moments[8].delta_e_2000, f->zones[0].moments[2].delta_e_2000);
  EXPECT_EQ(f->zones[1].moments[8].delta_e_2000, 0) << "natural hair holds no dye";
}

TEST(Fade, NeitherWashNorLightIsNoFade) {
  const auto f = fade(two_areas(), tint(), small_shelf(), Habit{0, 0, 4});
  ASSERT_TRUE(f);
  EXPECT_EQ(f->zones[0].moments[4].delta_e_2000, 0);
  EXPECT_FALSE(f->zones[0].visible_week);
}

TEST(Fade, DirectDyeFadesFasterThanTheTintBeneath) {
  Head h;
  h.areas.push_back(area("a", AreaKind::crown, 100, {span("lengths", 5, 15, 0, 9)}));
  Population& p = h.areas[0].spans[0].populations[0];
  p.tone = Tone::copper;
  p.level = {7, 0.3};
  p.natural_level = Reading{5, 0.3};
  auto change = [&](ColourOrigin origin) {
    p.origin = origin;
    const auto f = fade(h, {}, small_shelf(), Habit{});
    return f ? f->zones[0].moments.back().delta_e_2000 : -1;
  };
  const double direct = change(ColourOrigin::direct), tinted = change(ColourOrigin::tinted);
  EXPECT_GT(tinted, 0);
  EXPECT_GT(direct, tinted);
}

TEST(Fade, TellsAHabitOutsideItsRanges) {
  const auto f = fade(two_areas(), {}, small_shelf(), Habit{-1, 3, 0});
  ASSERT_FALSE(f);
  ASSERT_EQ(f.error().size(), 2u);
  EXPECT_EQ(f.error()[0].code, "out_of_range");
  EXPECT_EQ(f.error()[0].path, "/habit/washes");
}

}  // namespace
}  // namespace strandline
