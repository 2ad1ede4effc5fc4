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

TEST(Aim, AZoneWithoutAWishIsAProblem) {
  ZoneAim only;
  only.zone = "crown/regrowth", only.level = 5;
  const auto r = aim(two_areas(), {only}, small_shelf());
  ASSERT_FALSE(r);
  EXPECT_EQ(r.error()[0].code, "aim_missing");
  EXPECT_EQ(r.error()[0].params.at("zone"), "front hairline/regrowth");
}

}  // namespace
}  // namespace strandline
