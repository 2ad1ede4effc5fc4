#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

#include "engine/tests/review/own_bowls.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Substitute, AnEmptyTubeIsReplacedWithinTheMaker) {
  Visit v = small_visit(6);
  v.shelf = with_second_range(v.shelf, "somebody else (invented)");
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  const auto r = substitute(v, {"shade-2"});
  ASSERT_TRUE(r);
  ASSERT_EQ(r->size(), 1u);
  const Formula& f = r->front().bowl.bowl.formula;
  EXPECT_FALSE(holds(f, "shade-2"));
  EXPECT_EQ(f.range, "tint") << "another maker would re-ask the skin test";
  EXPECT_TRUE(r->front().notes.empty());
  EXPECT_FALSE(r->front().changes.empty());
}

TEST(Substitute, NoTubeIsWeighedTwice) {
  for (double level : {4.5, 5.0, 5.5, 6.0, 6.5})
    for (const char* gone : {"shade-2", "shade-3"}) {
      Visit v = small_visit(level);
      v.bowls = {bowl_of({{"shade-2", 25}, {"shade-3", 15}, {"developer-6", 40}}, both)};
      const auto r = substitute(v, {gone});
      ASSERT_TRUE(r);
      std::set<std::string> seen;
      for (const Part& p : r->front().bowl.bowl.formula.parts)
        EXPECT_TRUE(seen.insert(p.product).second) << level << ' ' << gone << ' ' << p.product;
    }
}

TEST(Substitute, ADeveloperThatIsGoneIsNotPouredAgain) {
  Visit v = small_visit(6);
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  const auto r = substitute(v, {"developer-6"});
  ASSERT_TRUE(r);
  ASSERT_EQ(r->size(), 1u);
  ASSERT_FALSE(r->front().bowl.bowl.formula.parts.empty());
  EXPECT_FALSE(holds(r->front().bowl.bowl.formula, "developer-6"));
}

TEST(Substitute, InALaterStepItCountsFromTheHairAsThatBowlFindsIt) {
  Visit v = small_visit(7);
  v.aims.clear();
  Bowl first = bowl_of({{"shade-4", 40}, {"developer-6", 40}}, both), second = first;
  second.label = "B", second.step = 2, second.formula.parts = {{"shade-1", 30}, {"developer-3", 30}};
  v.bowls = {first, second};
  const auto made = substitute(v, {"shade-1"});
  ASSERT_TRUE(made);
  ASSERT_EQ(made->size(), 1u);
  EXPECT_EQ(made->front().label, "B");
  EXPECT_EQ(made->front().bowl.bowl.step, 2);
  EXPECT_FALSE(holds(made->front().bowl.bowl.formula, "shade-1"));
  // Before: what both bowls together give, as a prediction of both says.
  const auto both_bowls = predict(v.head, {{first.formula, both}, {second.formula, both}}, v.shelf, {});
  ASSERT_TRUE(both_bowls);
  EXPECT_NEAR(made->front().zones.front().before.lab.l, both_bowls->zones.front().planned.lab.l, 0.5);
}

TEST(Substitute, OnlyThenAnotherMaker) {
  Visit v = small_visit(6);
  v.shelf = with_second_range(small_shelf(1), "somebody else (invented)");
  v.bowls = {bowl_of({{"shade-0", 40}, {"developer-6", 40}}, both)};
  v.aims[0].level = 4;
  const auto r = substitute(v, {"shade-0"});
  ASSERT_TRUE(r);
  EXPECT_EQ(r->front().bowl.bowl.formula.range, "second");
  ASSERT_FALSE(r->front().notes.empty());
  EXPECT_EQ(r->front().notes[0].code, "other_maker_skin_test");
}

TEST(Substitute, BowlsWithoutItStayAndUnknownProductsAreProblems) {
  Visit v = small_visit();
  v.bowls = {bowl_of({{"shade-0", 40}, {"developer-6", 40}}, both)};
  EXPECT_TRUE(substitute(v, {"shade-1"})->empty());
  EXPECT_EQ(substitute(v, {"nothing"}).error().front().code, "unknown_product");
}

// What is weighed, and a shade of the range for the rest.
TEST(Substitute, AHalfWeighedBowlIsFinishedWithOneShade) {
  Visit v = small_visit(6);
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  const auto made = substitute(v, {"shade-2", 30});
  ASSERT_TRUE(made);
  const Remade& r = made->front();
  ASSERT_EQ(r.changes.size(), 1u);
  ASSERT_EQ(r.changes[0].code, "finish_with");
  EXPECT_EQ(r.changes[0].params.at("grams"), "10.0");
  const std::vector<Part>& parts = r.bowl.bowl.formula.parts;
  ASSERT_EQ(parts.size(), 3u);
  EXPECT_EQ(parts[0].product, "shade-2");
  EXPECT_EQ(parts[0].grams, 30) << "what is in the bowl stays in it";
  EXPECT_EQ(parts[1].grams, 10);
  EXPECT_EQ(parts[2].product, "developer-6");
  EXPECT_EQ(parts[2].grams, 40);
  // No other single shade would have come nearer.
  double best = 1e9;
  for (int other : {0, 1, 3, 4, 5}) {
    Visit tried = v;
    tried.bowls[0].formula.parts = {{"shade-2", 30}, {"shade-" + std::to_string(other), 10}, {"developer-6", 40}};
    best = std::min(best, review(tried)->bowls.front().objective);
  }
  v.bowls = {r.bowl.bowl};
  EXPECT_NEAR(review(v)->bowls.front().objective, best, 1e-6);
}

TEST(Substitute, WhatCannotBeFinishedWellIsBegunAgain) {
  // Nearly all that is weighed is four levels too dark for the wish.
  Visit v = small_visit(8);
  v.bowls = {bowl_of({{"shade-0", 40}, {"developer-6", 40}}, both)};
  const auto made = substitute(v, {"shade-0", 38});
  ASSERT_TRUE(made);
  ASSERT_FALSE(made->front().notes.empty());
  EXPECT_EQ(made->front().notes[0].code, "weighed_is_lost");
  EXPECT_FALSE(holds(made->front().bowl.bowl.formula, "shade-0"));
}

TEST(Substitute, MoreThanTheBowlTakesCannotHaveBeenWeighed) {
  Visit v = small_visit(6);
  v.bowls = {bowl_of({{"shade-2", 40}, {"developer-6", 40}}, both)};
  for (double grams : {40.0, 41.0, -1.0}) {
    const auto r = substitute(v, {"shade-2", grams});
    ASSERT_FALSE(r) << grams;
    EXPECT_EQ(r.error().front().code, "weighed_out_of_range");
    EXPECT_EQ(r.error().front().path, "/options/weighed_g");
  }
}

TEST(Substitute, AnotherBowlHasTheGramsOfTheOwnOne) {
  Visit v = small_visit(6);
  v.shelf = with_second_range(small_shelf(1), "somebody else (invented)");
  v.bowls = {bowl_of({{"shade-0", 70}, {"developer-6", 70}}, both)};
  v.aims[0].level = 4;
  const auto r = substitute(v, {"shade-0"});
  ASSERT_TRUE(r);
  ASSERT_EQ(r->front().bowl.bowl.formula.range, "second");
  EXPECT_NEAR(r->front().bowl.grams, 140, 1.5);
}

}  // namespace
}  // namespace strandline
