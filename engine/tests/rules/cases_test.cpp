// Heads that educators set: what the rules must close and must leave open on them.
#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/rules/visit.h"

namespace strandline {
namespace {

using namespace testing_support;

RangeLimits on(const Visit& v, int span, const std::string& range) {
  const Visit l = limited(v);
  for (const RangeLimits& own : l.head.areas[0].spans[static_cast<size_t>(span)].limits)
    if (own.range == range) return own;
  return {};
}
bool open(const Visit& v, int span, const std::string& range) { return on(v, span, range).closed_by.empty(); }

Visit coloured_lengths(ColourOrigin origin, double porosity) {
  Visit v = quiet_visit();
  lengths(v).populations[0].origin = origin;
  lengths(v).porosity.value = porosity;
  lengths(v).wet_stretch_percent = 45;
  return v;
}

// Red refresh: tinted, porous lengths get a demi of 3 % or less, nothing permanent.
TEST(Cases, TintedPorousLengthsTakeAWeakDemiAndNoTint) {
  const Visit v = coloured_lengths(ColourOrigin::tinted, 2);
  EXPECT_FALSE(open(v, 1, "tint"));
  EXPECT_TRUE(open(v, 1, "demi"));
  EXPECT_LE(on(v, 1, "demi").developer_max, 3);
  EXPECT_TRUE(open(v, 0, "tint")) << "new growth stays open";
}

// Salt and pepper, softened: a demi tones up to half white, and covers none beyond.
TEST(Cases, ADemiTonesThirtyPerCentWhiteAndIsNoCoverForAll) {
  Visit v = quiet_visit();
  regrowth(v).populations = {pigmented(0.7, 6), white(0.3)};
  EXPECT_TRUE(open(v, 0, "demi"));
  regrowth(v).populations = {white(1)};
  EXPECT_FALSE(open(v, 0, "demi"));
  EXPECT_FALSE(open(v, 0, "high"));
  EXPECT_TRUE(open(v, 0, "tint"));
}

// Lights of eight weeks ago, brassy: toned, nothing stronger.
TEST(Cases, LightenedHairIsTonedWithAWeakBottle) {
  Visit v = coloured_lengths(ColourOrigin::lightened, 1.8);
  lengths(v).services.push_back({ServiceKind::lightened, 8.0, 1, false});
  EXPECT_TRUE(open(v, 1, "demi"));
  EXPECT_LE(on(v, 1, "demi").developer_max, 3);
  EXPECT_LE(on(v, 1, "acid").developer_max, 2);
  EXPECT_LE(on(v, 1, "tint").developer_max, 3);
}

// Lightened three days ago, violet wished: direct colour stays open, a second lightening does not.
TEST(Cases, HairLightenedThreeDaysAgoTakesDirectColourOnly) {
  Visit v = coloured_lengths(ColourOrigin::lightened, 2.5);
  lengths(v).wet_stretch_percent = 42;
  lengths(v).services.push_back({ServiceKind::lightened, 0.4, 1, false});
  EXPECT_TRUE(open(v, 1, "direct"));
  EXPECT_FALSE(open(v, 1, "bleach"));
  EXPECT_FALSE(open(v, 1, "high"));
}

// Permed two weeks ago: a demi may go on, tips are not lightened yet.
TEST(Cases, PermedTwoWeeksAgoTakesADemiAndNoLightener) {
  Visit v = quiet_visit();
  lengths(v).services.push_back({ServiceKind::permed, 2.0, 1, false});
  lengths(v).wet_stretch_percent = 45;
  EXPECT_TRUE(open(v, 1, "demi"));
  EXPECT_FALSE(open(v, 1, "bleach"));
  lengths(v).services[0].weeks_ago = 4;
  EXPECT_TRUE(open(v, 1, "bleach"));
}

// Five boxes in two years: seen, their bands may be worked on; not seen, the metal test comes first.
TEST(Cases, HomeColourThatWasSeenNeedsNoMetalTest) {
  Visit v = coloured_lengths(ColourOrigin::tinted, 1.5);
  lengths(v).services.push_back({ServiceKind::home_colour, 20.0, 5, true});
  EXPECT_TRUE(open(v, 1, "demi"));
  EXPECT_TRUE(open(v, 1, "remover"));
  lengths(v).services[0].pack_seen = false;
  EXPECT_EQ(on(v, 1, "demi").closed_by, "metal.needed");
}

// Swollen lids two years ago, test clear so far: nothing that colours, whatever a doctor is said to say.
TEST(Cases, AnEarlierReactionClosesEveryDyeAndTheTestIsNoAnswer) {
  Visit v = quiet_visit();
  v.answers.reaction = ColourReaction::swelling;
  v.answers.doctor_agrees = YesNo::yes;
  for (const char* range : {"tint", "high", "demi", "acid", "direct"})
    for (const int span : {0, 1}) EXPECT_FALSE(open(v, span, range)) << range;
  v.answers.reaction = ColourReaction::none;
  v.answers.tattoo = TattooReaction::reaction;
  EXPECT_FALSE(open(v, 0, "direct"));
}

// No reaction, but the test was put on yesterday: wait until 48 hours, or 24 where the house says so.
TEST(Cases, ATestOfYesterdayWaits) {
  Visit v = quiet_visit();
  v.skin_test = "2026-03-08";
  v.test.read = "2026-03-09";
  EXPECT_EQ(verdicts(v).go, Go::stopped);
  v.aims[0].level = 8;
  EXPECT_EQ(verdicts(v).go, Go::restricted) << "lightener without toner is left";
  EXPECT_FALSE(open(v, 0, "tint"));
  v.policy.rules.values = {{"test.lead", "lead_h", 24}};
  EXPECT_TRUE(open(v, 0, "tint"));
}

// Pool green: what takes a developer waits for the chelating step; the search keeps to that order by itself.
TEST(Cases, MineralsAreTold) {
  Visit v = coloured_lengths(ColourOrigin::lightened, 2.4);
  lengths(v).services.push_back({ServiceKind::minerals, 1.0, 1, false});
  const Verdicts all = verdicts(v);
  const auto own =
      std::find_if(all.list.begin(), all.list.end(), [](const Verdict& x) { return x.rule == "minerals"; });
  ASSERT_NE(own, all.list.end());
  EXPECT_EQ(own->today, (std::vector<std::string>{"chelate_now"}));
  EXPECT_EQ(std::count(own->classes.begin(), own->classes.end(), "direct"), 0);
}

TEST(Cases, WhiteFromATenthTakesItsFullTime) {
  Visit v = quiet_visit();
  regrowth(v).populations = {pigmented(0.85, 6), white(0.15)};
  EXPECT_EQ(on(v, 0, "tint").minutes_min, 35);
  EXPECT_EQ(on(v, 0, "direct").minutes_min, 0);
  regrowth(v).populations = {pigmented(0.9, 6), white(0.1)};
  EXPECT_EQ(on(v, 0, "tint").minutes_min, 0);
}

TEST(Cases, ATonerIsOnForMinutesAndForFewerOnPorousHair) {
  Visit v = quiet_visit();
  lengths(v).populations[0].origin = ColourOrigin::lightened;
  EXPECT_EQ(on(v, 1, "demi").minutes_max, 10);
  lengths(v).porosity.value = 2.3;
  EXPECT_EQ(on(v, 1, "demi").minutes_max, 5);
  // A range whose shortest time is longer keeps that.
  for (Range& r : v.shelf.ranges) r.minutes.min = std::max(r.minutes.min, 8.0);
  EXPECT_EQ(on(v, 1, "demi").minutes_max, 8);
  EXPECT_TRUE(open(v, 1, "demi"));
  v.aims[0].level = 4;  // no toner: it is to be darker
  EXPECT_GT(on(v, 1, "demi").minutes_max, 10);
}

TEST(Cases, ADemiTakesTenMinutesAndFewerThanTwentyOnWhatTakesSooner) {
  Visit v = quiet_visit();
  EXPECT_EQ(on(v, 0, "demi").minutes_min, 10);
  lengths(v).populations[0].origin = ColourOrigin::tinted;
  EXPECT_EQ(on(v, 1, "demi").minutes_max, 15);
  EXPECT_EQ(on(v, 1, "demi").minutes_min, 0) << "refreshed, not deepened";
  v.aims[0].level = 4;
  EXPECT_EQ(on(v, 1, "demi").minutes_min, 10);
  lengths(v).porosity.value = 2.1;
  EXPECT_EQ(on(v, 1, "demi").minutes_max, 10);
  Visit permed = quiet_visit();
  regrowth(permed).services.push_back({ServiceKind::permed, 2.0, 1, false});
  EXPECT_EQ(on(permed, 0, "acid").minutes_max, 10);
  regrowth(permed).services[0].weeks_ago = 12;
  EXPECT_EQ(on(permed, 0, "acid").minutes_max, 20);
}

TEST(Cases, LightenedLengthsTakeNoPermanentTintWhateverTheWish) {
  Visit v = quiet_visit();
  lengths(v).populations[0].origin = ColourOrigin::lightened;
  v.aims[0].level = 3;
  EXPECT_EQ(on(v, 1, "tint").closed_by, "overlap.coloured");
  EXPECT_TRUE(open(v, 1, "demi"));
}

TEST(Cases, AtTheScalpOfHairThatIsLiftedATintIsOnForLess) {
  Visit v = quiet_visit();
  v.aims[0].level = 7.5;
  EXPECT_EQ(on(v, 0, "tint").minutes_max, 25);
  EXPECT_EQ(on(v, 1, "tint").minutes_max, 45);
  lengths(v).populations[0].origin = ColourOrigin::tinted;  // a retouch: nothing is lifted beyond
  EXPECT_EQ(on(v, 0, "tint").minutes_max, 45);
}

TEST(Cases, HairPermedThisMonthIsNotLifted) {
  Visit v = quiet_visit();
  lengths(v).services = {{ServiceKind::permed, 2.0}};
  v.aims[0].level = 8;
  EXPECT_EQ(on(v, 1, "tint").closed_by, "perm.weeks");
  v.aims[0].level = 6;
  EXPECT_TRUE(open(v, 1, "tint"));
}

TEST(Cases, AFashionToneOnLightenedHairIsDirectColour) {
  Visit v = quiet_visit();
  lengths(v).populations[0].origin = ColourOrigin::lightened;
  v.aims[0].level = 7, v.aims[0].tone = Tone::violet;
  EXPECT_EQ(on(v, 1, "demi").closed_by, "wish.vivid");
  EXPECT_TRUE(open(v, 1, "direct"));
  std::erase_if(v.shelf.products, [](const Product& p) { return p.cls == ProductClass::direct; });
  EXPECT_TRUE(open(v, 1, "demi"));
}

TEST(Cases, TheLongestFromTheFirstTouchIsALimitToo) {
  EXPECT_EQ(on(quiet_visit(), 0, "tint").first_touch_max, 70);
  EXPECT_EQ(on(quiet_visit(), 0, "acid").first_touch_max, 40);
}

}  // namespace
}  // namespace strandline
