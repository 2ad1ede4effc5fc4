#include "strandline/reach.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

Head one_zone(double white = 0) {
  Head h;
  h.areas.push_back(area("crown", AreaKind::crown, 250, {span("lengths", 3, 9, white, 6)}));
  for (Population& p : h.areas[0].spans[0].populations) p.level.sd = 0, p.share.sd = 0;
  return h;
}

// What single tubes give, by prediction from poured grams: another route than the reach map's own tables.
std::vector<Lab> single_tubes(const Head& head, const Shelf& shelf) {
  std::vector<Lab> all;
  PredictOptions one;
  one.scenarios = 1;
  for (const Product& p : shelf.products) {
    if (!p.swatch) continue;
    for (const char* developer : {"developer-3", "developer-6"}) {
      Formula f;
      f.range = p.range, f.minutes = 35, f.parts = {{p.id, 100}, {developer, 100}};
      const auto made = predict(head, {{f, {"crown/lengths"}}}, shelf, {}, one);
      EXPECT_TRUE(made);
      all.push_back(made->zones[0].planned.lab);
    }
  }
  return all;
}

TEST(Reach, HasEveryToneOfEveryLevel) {
  const auto r = reach(one_zone(), small_shelf(7), {});
  ASSERT_TRUE(r);
  ASSERT_EQ(r->size(), 1u);
  EXPECT_EQ(r->front().cells.size(), 80u);
  EXPECT_TRUE(std::any_of(r->front().cells.begin(), r->front().cells.end(), [](auto& c) { return c.reachable; }));
  EXPECT_FALSE(std::all_of(r->front().cells.begin(), r->front().cells.end(), [](auto& c) { return c.reachable; }));
}

TEST(Reach, WhatASingleTubeGivesLiesWithinTheCorners) {
  for (double white : {0.0, 0.4}) {
    const Head head = one_zone(white);
    const Shelf shelf = small_shelf(7);
    const auto r = reach(head, shelf, {});
    ASSERT_TRUE(r);
    const std::vector<Lab>& corners = r->front().corners;
    ASSERT_GE(corners.size(), 4u);
    EXPECT_LE(corners.size(), 26u);
    for (const Lab& made : single_tubes(head, shelf))
      for (int l = -1; l <= 1; ++l)
        for (int a = -1; a <= 1; ++a)
          for (int b = -1; b <= 1; ++b) {
            double furthest = -1e9;
            for (const Lab& c : corners) furthest = std::max(furthest, l * c.l + a * c.a + b * c.b);
            EXPECT_LE(l * made.l + a * made.a + b * made.b, furthest + 0.05) << l << a << b;
          }
  }
}

TEST(Reach, ACellsNearestLiesWithinTheCornersToo) {
  const auto r = reach(one_zone(0.3), small_shelf(7), {});
  ASSERT_TRUE(r);
  double low = 1e9, high = -1e9;
  for (const Lab& c : r->front().corners) low = std::min(low, c.l), high = std::max(high, c.l);
  for (const ReachCell& c : r->front().cells) {
    EXPECT_GE(c.nearest.l, low - 1e-9);
    EXPECT_LE(c.nearest.l, high + 1e-9);
    EXPECT_NEAR(c.tone_error, std::hypot(c.nearest.a - c.wished.a, c.nearest.b - c.wished.b), 1e-9);
  }
}

TEST(Reach, MoreShadesReachNoLess) {
  const auto few = reach(one_zone(), small_shelf(3), {}), many = reach(one_zone(), small_shelf(7), {});
  ASSERT_TRUE(few && many);
  for (size_t i = 0; i < few->front().cells.size(); ++i)
    if (few->front().cells[i].reachable) EXPECT_TRUE(many->front().cells[i].reachable) << i;
}

// A rule that asks for less than the usual time leaves what that time gives; it closes nothing.
TEST(Reach, AShorterTimeStillReachesSomething) {
  const Shelf shelf = small_shelf(7);
  Head head = one_zone();
  const auto darkest = [&] {
    double least = 100;
    const auto within = reach(head, shelf, {});
    for (const ReachCell& c : within->front().cells)
      if (c.reachable) least = std::min(least, c.level);
    return least;
  };
  const double usual = darkest();
  for (const Range& r : shelf.ranges)
    head.areas[0].spans[0].limits.push_back({.range = r.id, .closed_by = "", .minutes_max = r.minutes.target - 1});
  EXPECT_NEAR(darkest(), usual, 1);
  EXPECT_LT(usual, 6);
}

TEST(Reach, AnEmptyShelfIsAProblem) {
  Shelf empty = small_shelf(3);
  empty.ranges.clear();
  const auto r = reach(one_zone(), empty, {});
  ASSERT_FALSE(r);
  EXPECT_EQ(r.error()[0].code, "no_range_usable");
}

}  // namespace
}  // namespace strandline
