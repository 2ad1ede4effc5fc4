#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "engine/tests/support.h"
#include "schedule/applying.h"

namespace strandline {
namespace {

using namespace testing_support;

Head with_packets(double share, double from_cm = 0.5) {
  Head h = two_areas();
  h.areas[1].hair_factor = 0.8;
  Area packets = area("crown packets", AreaKind::crown, 999, {span("regrowth", from_cm, 1.8, 0.2, 5)});
  packets.hair_factor = 3;  // neither this nor the 999 cm² counts
  packets.woven = Weave{"crown", share, 4};
  h.areas.push_back(packets);
  return h;
}

bool has(const Problems& problems, const std::string& code) {
  return std::any_of(problems.begin(), problems.end(), [&](const Problem& p) { return p.code == code; });
}

TEST(Weave, PacketsAndTheHairBetweenThemMakeUpTheArea) {
  const Head h = with_packets(0.3);
  EXPECT_TRUE(check(h).empty());
  EXPECT_DOUBLE_EQ(scalp_cm2(h, h.areas[1]), 250 * 0.7);
  EXPECT_DOUBLE_EQ(scalp_cm2(h, h.areas[2]), 250 * 0.3);
  EXPECT_DOUBLE_EQ(hair_factor(h, h.areas[2]), 0.8);
  EXPECT_DOUBLE_EQ(scalp_cm2(h, h.areas[0]), 90) << "an area without packets has all of its own";
}

RC_GTEST_PROP(Weave, NoHairIsMixedForTwiceOrForgotten, ()) {
  // Off the scalp a liquid goes by the hair alone: together, or what lies between by itself, in its share.
  const double share = *rc::gen::inRange(20, 60) / 100.0;
  Head whole, apart;
  whole.areas.push_back(area("crown", AreaKind::crown, 400, {span("lengths", 2, 30, 0.2, 5)}));
  apart = whole;
  Area packets = area("packets", AreaKind::crown, 1, {span("lengths", 2, 30, 0.2, 5)});
  packets.woven = Weave{"crown", share, 3};
  apart.areas.push_back(packets);
  const FormulaPolicy policy;
  const double together = mix_grams(whole, {"crown/lengths"}, policy).liquid;
  RC_ASSERT(std::abs(mix_grams(apart, {"crown/lengths"}, policy).liquid - (1 - share) * together) < 1e-9);
  RC_ASSERT(std::abs(mix_grams(apart, {"crown/lengths", "packets/lengths"}, policy).liquid - together) < 1e-9);
}

TEST(Weave, TakingUpPacketsIsSlowerThanPaintingAParting) {
  const Head h = with_packets(0.3);
  const double parting = apply_minutes(h, h.areas[1], h.areas[1].spans[0]);
  const double woven = apply_minutes(h, h.areas[2], h.areas[2].spans[0]);
  EXPECT_GT(woven / (0.3 * 250), 3 * parting / (0.7 * 250));
}

TEST(Weave, AWishCountsByTheHairItIsFor) {
  const Head h = with_packets(0.25);
  ZoneAim all;
  all.zone = "*", all.level = 6;
  const auto targets = aim(h, {all}, small_shelf());
  ASSERT_TRUE(targets);
  EXPECT_NEAR((*targets)[1].weight / (*targets)[2].weight, 3, 1e-9);
}

TEST(Weave, PacketsFromNowhereOrOfEverythingAreProblems) {
  EXPECT_TRUE(has(check(with_packets(0.01)), "woven_share_out_of_range"));
  EXPECT_TRUE(has(check(with_packets(0.95)), "woven_share_out_of_range"));
  Head h = with_packets(0.3);
  h.areas[2].woven->from = "nape";
  EXPECT_TRUE(has(check(h), "woven_from_no_area"));
  h.areas[2].woven->from = "crown packets";
  EXPECT_TRUE(has(check(h), "woven_from_no_area"));
  h = with_packets(0.3);
  h.areas[2].woven->width_mm = 0;
  EXPECT_TRUE(has(check(h), "woven_width_out_of_range"));
  h = with_packets(0.6);
  h.areas.push_back(h.areas[2]);
  h.areas[3].id = "more packets";
  h.areas[3].woven->share = 0.4;
  EXPECT_TRUE(has(check(h), "woven_takes_all"));
  EXPECT_EQ(own_share(h, h.areas[1]), 0);
}

}  // namespace
}  // namespace strandline
