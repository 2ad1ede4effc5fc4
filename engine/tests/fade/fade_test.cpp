#include "strandline/fade.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "engine/tests/support.h"
#include "strandline/existing.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr double kRed = 1, kBrown = 0;

ProductClass any_class() {
  return *rc::gen::element(ProductClass::permanent, ProductClass::high_lift, ProductClass::demi, ProductClass::direct);
}

RC_GTEST_PROP(Fade, WhatIsLeftFallsWithWashesAndLightAndStaysWithinOne, ()) {
  const Constants c;
  const ProductClass cls = any_class();
  const double red = *rc::gen::inRange(0, 100) / 100.0;
  const double porosity = *rc::gen::inRange(0, 300) / 100.0, washes = *rc::gen::inRange(0, 600) / 10.0;
  const double hours = *rc::gen::inRange(0, 1000) / 10.0;
  const double left = dye_left(cls, red, porosity, washes, hours, c);
  RC_ASSERT(left >= 0 && left <= 1);
  RC_ASSERT(dye_left(cls, red, porosity, washes + 1, hours, c) <= left + 1e-12);
  RC_ASSERT(dye_left(cls, red, porosity, washes, hours + 1, c) <= left + 1e-12);
  RC_ASSERT(dye_left(cls, red, porosity, 0, 0, c) == 1);
}

// J Cosmet Sci 72:278 (2021), table III: an intense red has most of its 12-wash change after two washes.
TEST(Fade, RedLosesMostInTheFirstTwoWashes) {
  const Constants c;
  auto lost = [&](double washes) { return 1 - dye_left(ProductClass::permanent, kRed, 1, washes, 0, c); };
  EXPECT_GT(lost(2) / lost(12), 0.7);
  auto other = [&](double washes) { return 1 - dye_left(ProductClass::permanent, kBrown, 1, washes, 0, c); };
  EXPECT_LT(other(2) / other(12), 0.6);
}

// IFSCC Mag 11:139 (2008): modern permanent shades keep more than 90 % of their colour over 30 washes; others less.
TEST(Fade, PermanentKeepsMostOfItsColourOverThirtyWashes) {
  Population tint;
  tint.kind = FibreKind::white, tint.origin = ColourOrigin::tinted;
  const Constants c;
  const Fibre fresh = fibre_as_read(tint, 5, 5);
  const auto seen_with = [&](double left) {
    Fibre f = fresh;
    for (double& d : f.dye) d *= left;
    return lab(reflectance(optical_depth(f, pigments(c))), weights(Light::daylight, Observer::cie_1964_10deg));
  };
  const double left = dye_left(ProductClass::permanent, kBrown, 1, 30, 0, c);
  const double kept = 1 - delta_e_ab(seen_with(1), seen_with(left)) / delta_e_ab(seen_with(1), seen_with(0));
  EXPECT_GT(kept, 0.82);
  EXPECT_LT(kept, 0.95);
}

// Practical Modern Hair Science, ch. 4, table 5: semi-permanent 6-8 washes, demi-permanent up to 24.
TEST(Fade, ClassesLastAsReported) {
  const Constants c;
  EXPECT_LT(dye_left(ProductClass::direct, kBrown, 1, 8, 0, c), 0.2);
  EXPECT_GT(dye_left(ProductClass::demi, kBrown, 1, 8, 0, c), 0.3);
  EXPECT_LT(dye_left(ProductClass::demi, kBrown, 1, 24, 0, c), 0.35);
}

// J Cosmet Sci 59:366: bleached hair loses most.
TEST(Fade, PorousHairLosesMore) {
  const Constants c;
  EXPECT_LT(dye_left(ProductClass::demi, kBrown, 2.5, 6, 0, c), dye_left(ProductClass::demi, kBrown, 1, 6, 0, c));
}

TEST(Fade, RednessTellsRedsFromBrowns) {
  Spectrum red, brown, blue;
  for (int b = 0; b < kBands; ++b) {
    red[b] = std::exp(-std::pow((band_nm(b) - 515) / 40, 2) / 2);
    blue[b] = std::exp(-std::pow((band_nm(b) - 610) / 45, 2) / 2);
    brown[b] = std::exp(-(band_nm(b) - 550) / 200);
  }
  EXPECT_GT(redness(red), 0.9);
  EXPECT_LT(redness(brown), 0.1);
  EXPECT_EQ(redness(blue), 0);
  EXPECT_EQ(redness(Spectrum{}), 0);
}

// Common practice: a brown fades warm, towards the hair beneath, not green.
TEST(Fade, ABrownDoesNotTurnGreen) {
  Formula f;
  f.range = "tint";
  f.parts = {{"shade-0", 30}, {"developer-6", 30}};
  f.minutes = 35;
  const auto faded = fade(two_areas(), {{f, {"crown/regrowth"}}}, small_shelf(), Habit{});
  ASSERT_TRUE(faded);
  const auto& moments = faded->zones[1].moments;
  EXPECT_GT(moments.back().lab.a, moments.front().lab.a - 1);
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
