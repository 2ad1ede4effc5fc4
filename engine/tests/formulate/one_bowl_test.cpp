// Zones of one wish share a bowl where one formula serves them as well, and hair that is as wished is left.
#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/support.h"
#include "mix/habits.h"
#include "mix/situation.h"
#include "strandline/formulate.h"

namespace strandline {
namespace {

using namespace testing_support;

FormulateOptions quick() {
  FormulateOptions o;
  o.scenarios = 8;
  return o;
}

// Lengths at the scalp and porous ends: spans of two kinds, which the search gives bowls of their own.
Head lengths_and_ends() {
  Head h;
  h.areas.push_back(area("head", AreaKind::other, 500, {span("lengths", 0, 19, 0, 7), span("ends", 19, 25, 0, 7)}));
  h.areas[0].spans[1].porosity.value = 1.3;
  return h;
}

std::vector<Target> to(const Head& h, double lengths, double ends) {
  ZoneAim a, b;
  a.zone = "head/lengths", a.level = lengths;
  b.zone = "head/ends", b.level = ends;
  return *aim(h, {a, b}, small_shelf());
}

TEST(OneBowl, ServesZonesOfOneWish) {
  const Head h = lengths_and_ends();
  FormulaPolicy wide;
  wide.indifference_levels = 0.35, wide.zone_indifference_levels = 0.5;
  const auto plan = formulate(h, to(h, 5, 5), small_shelf(), wide, quick());
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->bowls.size(), 1u);
  EXPECT_EQ(plan->bowls[0].bowl.zones.size(), 2u);
  EXPECT_GE(plan->report.gap, -1e-6);
  EXPECT_GE(plan->report.plain_gap, -1e-6);
}

TEST(OneBowl, DoesNotServeTwoWishes) {
  const Head h = lengths_and_ends();
  FormulaPolicy wide;
  wide.indifference_levels = 2, wide.zone_indifference_levels = 2;
  const auto plan = formulate(h, to(h, 4.5, 5.5), small_shelf(), wide, quick());
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->bowls.size(), 2u);
}

TEST(OneBowl, HairThatIsAsWishedIsLeft) {
  Head h = two_areas();
  for (Area& a : h.areas) a.spans[0].populations = {pigmented(0.9, 5), white(0.1)};
  ZoneAim wish;
  wish.zone = "*", wish.level = 5;
  const auto plan = formulate(h, *aim(h, {wish}, small_shelf()), small_shelf(), {}, quick());
  ASSERT_TRUE(plan);
  EXPECT_TRUE(plan->bowls.empty());
  for (Area& a : h.areas) a.spans[0].populations = {pigmented(0.8, 5), white(0.2)};
  EXPECT_FALSE(fits(h.areas[0].spans[0], (*aim(h, {wish}, small_shelf()))[0])) << "white enough to be covered";
  wish.level = 5.5;
  for (Area& a : h.areas) a.spans[0].populations = {pigmented(1, 5)};
  EXPECT_FALSE(fits(h.areas[0].spans[0], (*aim(h, {wish}, small_shelf()))[0]));
}

TEST(OneBowl, DemiIsNoWayToGoLighter) {
  Head h = two_areas();
  for (Area& a : h.areas) a.spans[0].populations = {pigmented(1, 6)};
  Shelf s = small_shelf();
  s.ranges[0].cls = ProductClass::demi;
  for (Product& p : s.products)
    if (p.cls != ProductClass::developer) p.cls = ProductClass::demi;
  ZoneAim wish;
  wish.zone = "*", wish.level = 8;
  const auto plan = formulate(h, *aim(h, {wish}, s), s, {}, quick());
  ASSERT_TRUE(plan);
  EXPECT_TRUE(plan->bowls.empty());
}

TEST(OneBowl, DemiIsNotSaidToLift) {
  Head h = two_areas();
  for (Area& a : h.areas) {
    a.spans[0].populations = {pigmented(1, 6)};
    a.spans[0].populations[0].tone = Tone::copper;
  }
  Shelf s = small_shelf();
  s.ranges[0].cls = ProductClass::demi;
  for (Product& p : s.products)
    if (p.cls != ProductClass::developer) p.cls = ProductClass::demi;
  ZoneAim wish;
  wish.zone = "*", wish.level = 6.5;
  const auto plan = formulate(h, *aim(h, {wish}, s), s, {}, quick());
  ASSERT_TRUE(plan);
  for (const PlannedBowl& b : plan->bowls)
    for (const Problem& why : b.why) EXPECT_NE(why.code, "developer_for_lift");
  EXPECT_FALSE(plan->bowls.empty());
}

TEST(OneBowl, TheSmallestMixIsNotRoundedBelowItself) {
  Head h;
  h.areas.push_back(area("head", AreaKind::other, 10, {span("regrowth", 0, 1, 0, 7)}));
  Shelf s = small_shelf();
  s.ranges[0].ratios = {2};
  ZoneAim wish;
  wish.zone = "*", wish.level = 5;
  const auto plan = formulate(h, *aim(h, {wish}, s), s, {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_EQ(plan->bowls.size(), 1u);
  EXPECT_GE(plan->bowls[0].grams, 20);
}

}  // namespace
}  // namespace strandline
