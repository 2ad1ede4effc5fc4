#include <gtest/gtest.h>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Aim, ThreeWaysToSayTheSame) {
  const Head h = two_areas();
  const Shelf s = small_shelf();
  ZoneAim by_level, by_lab;
  by_level.zone = "*", by_level.level = 6;
  const auto first = aim(h, {by_level}, s);
  ASSERT_TRUE(first);
  by_lab.zone = "*", by_lab.lab = (*first)[0].lab;
  const auto second = aim(h, {by_lab}, s);
  ASSERT_TRUE(second);
  EXPECT_NEAR((*second)[0].level, 6, 1e-6);
  EXPECT_EQ((*second)[0].tone, Tone::natural);
  ZoneAim by_shade;
  by_shade.zone = "*", by_shade.shade = "shade-2";
  const auto third = aim(h, {by_shade}, s);
  ASSERT_TRUE(third);
  EXPECT_NEAR((*third)[0].level, 6.3, 0.45)
      << "on white a natural shade is up to half a level lighter (common practice)";
}

TEST(Aim, EveryProblemIsTold) {
  ZoneAim two, far, unknown;
  two.zone = "crown/regrowth", two.level = 5, two.shade = "shade-1";
  far.zone = "front hairline/regrowth", far.level = 14;
  unknown.zone = "back of beyond", unknown.shade = "nothing";
  const auto r = aim(two_areas(), {two, far, unknown}, small_shelf());
  ASSERT_FALSE(r);
  std::vector<std::string> codes;
  for (const Problem& p : r.error()) codes.push_back(p.code);
  EXPECT_EQ(codes, (std::vector<std::string>{"unknown_zone", "aim_needs_one", "level_out_of_range", "unknown_shade"}));
}

TEST(Aim, TwoTonesLieBetweenTheirColoursNearerTheFirst) {
  const Head h = two_areas();
  const Shelf s = small_shelf();
  const auto wished = [&](Tone tone, std::optional<Tone> second) {
    ZoneAim wish;
    wish.zone = "*", wish.level = 4, wish.tone = tone, wish.second_tone = second;
    return aim(h, {wish}, s)->front();
  };
  const Target mixed = wished(Tone::violet, Tone::ash);
  const Lab violet = wished(Tone::violet, {}).lab, ash = wished(Tone::ash, {}).lab;
  const double way = std::hypot(ash.a - violet.a, ash.b - violet.b);
  const double to_violet = std::hypot(mixed.lab.a - violet.a, mixed.lab.b - violet.b);
  const double to_ash = std::hypot(mixed.lab.a - ash.a, mixed.lab.b - ash.b);
  EXPECT_GT(way, 1);
  EXPECT_NEAR(to_violet + to_ash, way, 1e-9);
  EXPECT_LT(to_violet, to_ash);
  EXPECT_NEAR(mixed.lab.l, violet.l, 1e-9);
  EXPECT_EQ(mixed.second_tone, Tone::ash);
}

TEST(Aim, ASecondToneWithoutALevelIsAProblem) {
  ZoneAim wish;
  wish.zone = "*", wish.shade = "shade-2", wish.second_tone = Tone::ash;
  const auto r = aim(two_areas(), {wish}, small_shelf());
  ASSERT_FALSE(r);
  EXPECT_EQ(r.error()[0].code, "second_tone_needs_level");
  EXPECT_EQ(r.error()[0].path, "/aims/0/second_tone");
}

TEST(Aim, TwoWishesForOneZoneAreAProblem) {
  ZoneAim one, other;
  one.zone = "*", one.level = 5;
  other.zone = "*", other.level = 7;
  const auto r = aim(two_areas(), {one, other}, small_shelf());
  ASSERT_FALSE(r);
  EXPECT_EQ(r.error()[0].code, "aim_twice");
  EXPECT_EQ(r.error()[0].path, "/aims/1/zone");
}

TEST(Aim, AWishForOneAreaLeavesTheRestAsItIs) {
  ZoneAim only;
  only.zone = "crown/regrowth", only.level = 5;
  const auto r = aim(two_areas(), {only}, small_shelf());
  ASSERT_TRUE(r);
  ASSERT_EQ(r->size(), 2u);
  for (const Target& t : *r) EXPECT_EQ(t.leave, t.zone != "crown/regrowth") << t.zone;
}

TEST(Aim, NoWishAtAllIsAProblem) {
  const auto r = aim(two_areas(), {}, small_shelf());
  ASSERT_FALSE(r);
  EXPECT_EQ(r.error()[0].code, "aim_missing");
}

TEST(Aim, AWishMaySpeakOfToday) {
  Head head;
  Span grown = span("regrowth", 0, 2, 0, 5), lengths = span("lengths", 2, 20, 0, 7);
  head.areas.push_back(area("crown", AreaKind::crown, 250, {grown, lengths}));
  ZoneAim match, brighter, both;
  match.zone = "crown/regrowth", match.match = "crown/lengths";
  brighter.zone = "crown/lengths", brighter.brighter_by = 1.5, brighter.tone = Tone::gold;
  const auto r = aim(head, {match, brighter}, small_shelf());
  ASSERT_TRUE(r);
  EXPECT_NEAR((*r)[0].level, 7, 0.1);  // natural hair of level 7 by definition of the scale
  EXPECT_NEAR((*r)[1].level, 8.5, 0.1);
  EXPECT_EQ((*r)[1].tone, Tone::gold);
  match.match = "nobody/here";
  EXPECT_EQ(aim(head, {match}, small_shelf()).error()[0].code, "unknown_zone");
  both.zone = "*", both.level = 6, both.blend = 0.5;
  EXPECT_EQ(aim(head, {both}, small_shelf()).error()[0].code, "aim_needs_one");
}

TEST(Aim, AShadowLiesBelowWhatTheNextSpanIsWishedOrLooks) {
  Head head;
  Span root = span("root", 0, 4, 0, 6), mids = span("mids", 4, 12, 0, 7), ends = span("ends", 12, 20, 0, 8);
  head.areas.push_back(area("crown", AreaKind::crown, 250, {root, mids, ends}));
  ZoneAim at_root, at_mids, at_ends;
  at_root.zone = "crown/root", at_root.shadow = 1.5, at_root.tone = Tone::ash;
  at_mids.zone = "crown/mids", at_mids.shadow = 1;
  const auto beside_what_stays = aim(head, {at_root}, small_shelf());
  ASSERT_TRUE(beside_what_stays);
  EXPECT_NEAR((*beside_what_stays)[0].level, 5.5, 0.1);
  EXPECT_EQ((*beside_what_stays)[0].tone, Tone::ash);
  EXPECT_TRUE((*beside_what_stays)[1].leave);
  at_ends.zone = "crown/ends", at_ends.level = 9;
  const auto over_each_other = aim(head, {at_root, at_mids, at_ends}, small_shelf());
  ASSERT_TRUE(over_each_other);
  EXPECT_NEAR((*over_each_other)[1].level, 8, 1e-9);
  EXPECT_NEAR((*over_each_other)[0].level, 6.5, 1e-9);
  at_ends.level.reset(), at_ends.shadow = 1;
  const auto nothing_below = aim(head, {at_ends}, small_shelf());
  ASSERT_FALSE(nothing_below);
  EXPECT_EQ(nothing_below.error()[0].code, "shadow_needs_lengths");
}

TEST(Aim, BlendKeepsTheOwnColourAndTakesSomeOfTheWhite) {
  Head head;
  head.areas.push_back(area("crown", AreaKind::crown, 250, {span("regrowth", 0, 2, 0.3, 6)}));
  auto blended = [&](double share) {
    ZoneAim wish;
    wish.zone = "*", wish.blend = share;
    return (*aim(head, {wish}, small_shelf()))[0];
  };
  EXPECT_TRUE(blended(0.5).blend);
  EXPECT_NEAR(blended(1).level, 6, 0.1);
  EXPECT_NEAR(blended(1).lab.l, lightness_of_level(6), 0.5);
  EXPECT_GT(blended(0).lab.l, blended(0.5).lab.l);  // all of the white still shows
  EXPECT_GT(blended(0.5).lab.l, blended(1).lab.l);
}

TEST(Aim, AClearVioletOnPaleHairIsWhatDirectColourMakesOfIt) {
  Head h = two_areas();
  for (Area& a : h.areas) {
    a.spans[0].populations = {pigmented(1, 10)};
    a.spans[0].populations[0].origin = ColourOrigin::lightened;
  }
  Shelf s = small_shelf();
  ZoneAim wish;
  wish.zone = "*", wish.level = 7, wish.tone = Tone::violet;
  const Lab muted = (*aim(h, {wish}, s))[0].lab;
  Product direct;
  direct.id = "direct-violet", direct.cls = ProductClass::direct, direct.tone = Tone::violet, direct.stock_g = 100;
  s.products.push_back(direct);
  const Target clear = (*aim(h, {wish}, s))[0];
  EXPECT_NEAR(clear.lab.l, muted.l, 0.1);
  EXPECT_LT(clear.lab.b, muted.b - 5);
  EXPECT_EQ(clear.tone, Tone::violet);
  EXPECT_EQ(name_colour(clear.lab).tone, Tone::violet);
  // On yellow it would only be dull.
  for (Area& a : h.areas) a.spans[0].populations[0].level.value = 8;
  EXPECT_EQ((*aim(h, {wish}, s))[0].lab.b, muted.b);
}

}  // namespace
}  // namespace strandline
