#include "strandline/review.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/tests/review/own_bowls.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr double kRounding = 0.06;  // levels that half grams and single precision may cost

TEST(Review, TheBestBowlIsFine) {
  Visit v = small_visit();
  const auto planned = plan(v);
  ASSERT_TRUE(planned);
  for (const PlannedBowl& b : planned->plan.bowls) v.bowls.push_back(b.bowl);
  const auto r = review(v);
  ASSERT_TRUE(r);
  ASSERT_EQ(r->bowls.size(), planned->plan.bowls.size());
  for (const BowlReview& b : r->bowls) {
    EXPECT_TRUE(b.fine) << b.label;
    EXPECT_FALSE(b.change);
    EXPECT_LE(b.objective, b.best + FormulaPolicy{}.indifference_levels + kRounding);
  }
}

TEST(Review, AWrongBowlGetsTheSmallestChangeThatMakesItFine) {
  Visit v = small_visit(7);
  v.bowls = {bowl_of({{"shade-0", 40}, {"developer-6", 40}}, both)};  // three levels too dark
  const auto r = review(v);
  ASSERT_TRUE(r);
  const BowlReview& b = r->bowls.front();
  EXPECT_FALSE(b.fine);
  EXPECT_GT(b.objective, b.best + Constants{}.fine_within);
  ASSERT_TRUE(b.change);
  ASSERT_LE(b.changes.size(), 2u);
  EXPECT_EQ(b.changes[0].code, "swap_shade") << "three levels are another tube";
  EXPECT_LE(b.change_objective, b.best + Constants{}.fine_within);
  v.bowls = {*b.change};
  const auto again = review(v);
  ASSERT_TRUE(again);
  EXPECT_TRUE(again->bowls.front().fine) << "what was advised is fine when it is mixed";
}

TEST(Review, ABowlAgainstAHouseRuleIsNotFine) {
  Visit v = small_visit(5);
  v.head.areas[0].spans[0].history_unknown = true;
  v.bowls = {bowl_of({{"shade-1", 40}, {"developer-6", 40}}, both)};
  const auto r = review(v);
  ASSERT_TRUE(r);
  EXPECT_FALSE(r->bowls.front().broken.empty());
  EXPECT_FALSE(r->bowls.front().fine);
}

TEST(Review, WhatLawOrShelfForbidIsNotFineNorAdvised) {
  Visit v = small_visit(7);
  const auto planned = plan(v);
  ASSERT_TRUE(planned);
  v.bowls = {planned->plan.bowls.front().bowl};
  const Part& most = v.bowls[0].formula.parts.front();
  auto tube = [&]() -> Product& {
    return *std::find_if(v.shelf.products.begin(), v.shelf.products.end(),
                         [&](const Product& p) { return p.id == most.product; });
  };
  ASSERT_TRUE(review(v)->bowls[0].fine);
  tube().stock_g = most.grams - 1;
  const auto short_of = review(v);
  ASSERT_TRUE(short_of);
  EXPECT_FALSE(short_of->bowls[0].fine);
  EXPECT_EQ(short_of->bowls[0].broken.front().code, "stock_short");
  if (short_of->bowls[0].change)
    for (const Part& p : short_of->bowls[0].change->formula.parts)
      EXPECT_LE(p.grams, find_product(v.shelf, p.product)->stock_g) << p.product;
  tube().stock_g = 500;
  // Reg. (EC) 1223/2009 Annex III entry 22: resorcinol at most 1.25 % on the head; this makes twice that.
  double together = 0;
  for (const Part& p : v.bowls[0].formula.parts) together += p.grams;
  tube().declared = {
      {.cas = "108-46-3", .entry = "22", .name = "", .percent = 2 * 1.25 * together / most.grams, .basis = ""}};
  const auto unlawful = review(v);
  ASSERT_TRUE(unlawful);
  EXPECT_FALSE(unlawful->bowls[0].fine);
  EXPECT_EQ(unlawful->bowls[0].broken.front().code, "over_legal_limit");
}

TEST(Review, WhatNoBowlMayServeIsNotCalledFine) {
  Visit v = small_visit(7);
  for (Area& a : v.head.areas)
    for (Population& p : a.spans[0].populations) p.origin = ColourOrigin::tinted, p.level = {4, 0.3};
  v.bowls = {bowl_of({{"shade-3", 40}, {"developer-6", 40}}, both)};
  const auto r = review(v);
  ASSERT_TRUE(r);
  EXPECT_FALSE(r->bowls[0].fine);
  ASSERT_EQ(r->bowls[0].notes.size(), 1u);
  EXPECT_EQ(r->bowls[0].notes[0].code, "no_bowl_may_serve");
  EXPECT_FALSE(r->bowls[0].change);
}

TEST(Review, AdviceKeepsToTheRangesOwnProcess) {
  Visit v = small_visit(7);
  const auto planned = plan(v);
  ASSERT_TRUE(planned);
  Bowl off = planned->plan.bowls.front().bowl;
  double colour = 0;
  for (const Part& p : off.formula.parts) colour += p.product.starts_with("shade") ? p.grams : 0;
  for (Part& p : off.formula.parts)
    if (!p.product.starts_with("shade")) p.grams = 3 * colour;
  off.formula.minutes = 60;
  v.bowls = {off};
  const auto r = review(v);
  ASSERT_TRUE(r);
  EXPECT_FALSE(r->bowls[0].fine);
  EXPECT_EQ(r->bowls[0].broken.size(), 2u) << "ratio and time";
  ASSERT_TRUE(r->bowls[0].change);
  EXPECT_LE(r->bowls[0].change->formula.minutes, v.shelf.ranges[0].minutes.max);
  v.bowls = {*r->bowls[0].change};
  EXPECT_TRUE(review(v)->bowls[0].broken.empty());
  EXPECT_TRUE(review(v)->bowls[0].fine);
}

TEST(Review, ALaterBowlIsJudgedOnTheHairItFinds) {
  // Dark first, then a toner of the wish: over the first bowl it cannot lift, on the hair as it was read it would be
  // fine.
  Visit v = small_visit(7);
  v.head.areas[0].spans = v.head.areas[1].spans;  // one bowl serves what is alike
  const auto planned = plan(v);
  ASSERT_TRUE(planned);
  ASSERT_EQ(planned->plan.bowls.size(), 1u);
  Bowl wish = planned->plan.bowls.front().bowl;
  wish.label = "B", wish.step = 2;
  Bowl dark = bowl_of({{"shade-0", 40}, {"developer-3", 40}}, wish.zones);
  v.bowls = {wish, dark};
  const auto r = review(v);
  ASSERT_TRUE(r);
  ASSERT_EQ(r->bowls.size(), 2u);
  EXPECT_EQ(r->bowls[0].label, "A") << "in the order of the steps";
  ASSERT_EQ(r->bowls[0].notes.size(), 1u);
  EXPECT_EQ(r->bowls[0].notes[0].code, "later_bowl_decides");
  EXPECT_TRUE(r->bowls[0].best_recipe.range.empty());
  EXPECT_GT(r->bowls[1].objective, planned->plan.bowls.front().objective + 0.5);
  EXPECT_FALSE(r->bowls[1].fine);
  EXPECT_EQ(r->bowls[1].notes.front().code, "no_bowl_may_serve") << "colour does not lift colour";
  v.bowls = {wish};
  v.bowls[0].step = 1;
  EXPECT_TRUE(review(v)->bowls[0].fine);
}

TEST(Review, PartsSayWhatTheyAreThereFor) {
  Visit v = small_visit(6);
  v.bowls = {bowl_of({{"shade-0", 20}, {"shade-5", 20}, {"developer-6", 40}}, both)};
  const auto r = review(v);
  ASSERT_TRUE(r);
  const auto& effects = r->bowls.front().effects;
  ASSERT_EQ(effects.size(), 2u);
  EXPECT_EQ(effects[0].product, "shade-0");
  EXPECT_GT(effects[0].level_without, 0.3) << "without the dark shade it is lighter";
  EXPECT_LT(effects[1].level_without, -0.3);
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  EXPECT_TRUE(review(v)->bowls.front().effects.empty()) << "one shade alone is the bowl";
}

TEST(Review, MisreadingsMoveTheResultTheRightWay) {
  Visit v = small_visit(6);
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  const auto r = review(v);
  ASSERT_TRUE(r);
  bool darker = false, whiter = false;
  for (const Reaction& x : r->reactions) {
    if (x.reading == "level") {
      EXPECT_GT(x.level_moves * x.by, 0) << x.zone << ": darker hair comes out darker";
      darker = darker || x.by < 0;
    }
    if (x.reading == "white" && x.by > 0) {
      EXPECT_GE(x.level_moves, 0) << x.zone;
      whiter = true;
    }
  }
  EXPECT_TRUE(darker && whiter);
}

TEST(Review, NeedsBowlsAndAWish) {
  Visit v = small_visit();
  EXPECT_EQ(review(v).error().front().code, "no_bowls");
  v.bowls = {bowl_of({{"shade-0", 40}, {"developer-6", 40}}, both)};
  v.aims.clear();
  EXPECT_EQ(review(v).error().front().code, "no_wish");
}

TEST(Convert, TheSameSwatchesGiveTheSameResult) {
  Visit v = small_visit();
  v.shelf = with_second_range(v.shelf, v.shelf.ranges[0].maker);
  v.bowls = {bowl_of({{"shade-2", 20}, {"shade-3", 20}, {"developer-6", 40}}, both)};
  const auto r = convert(v, "second");
  ASSERT_TRUE(r);
  ASSERT_EQ(r->size(), 1u);
  EXPECT_EQ(r->front().bowl.bowl.formula.range, "second");
  EXPECT_TRUE(r->front().notes.empty());
  ASSERT_EQ(r->front().zones.size(), 2u);
  for (const ZoneDifference& z : r->front().zones) EXPECT_LT(z.delta_e_2000, 2) << z.zone;
}

TEST(Convert, AnotherMakerAsksForASkinTest) {
  Visit v = small_visit();
  v.shelf = with_second_range(v.shelf, "somebody else (invented)");
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  const auto r = convert(v, "second");
  ASSERT_TRUE(r);
  ASSERT_EQ(r->front().notes.size(), 1u);
  EXPECT_EQ(r->front().notes[0].code, "other_maker_skin_test");
}

TEST(Convert, BadNamesAreProblems) {
  Visit v = small_visit();
  EXPECT_EQ(convert(v, "tint").error().front().code, "no_bowls");
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  EXPECT_EQ(convert(v, "nothing").error().front().code, "unknown_range");
  v.shelf.ranges.push_back(v.shelf.ranges[0]);
  v.shelf.ranges.back().id = "powder", v.shelf.ranges.back().cls = ProductClass::lightener;
  EXPECT_EQ(convert(v, "powder").error().front().code, "range_gives_no_colour");
}

}  // namespace
}  // namespace strandline
