#include "pipeline/afterwards.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/cleared.h"
#include "engine/tests/support.h"
#include "rules/place.h"

namespace strandline {
namespace {

using namespace testing_support;

bool says(const Afterwards& after, const std::string& code) {
  return std::any_of(after.told.begin(), after.told.end(), [&](const Problem& p) { return p.code == code; });
}

Visit visit_of(Span span, ProductClass cls, double level, Tone tone = Tone::natural) {
  Visit v;
  v.head.areas = {area("all", AreaKind::other, 500, {std::move(span)})};
  v.shelf = small_shelf();
  v.shelf.ranges[0].cls = cls;
  for (Product& p : v.shelf.products)
    if (p.cls != ProductClass::developer) p.cls = cls;
  ZoneAim wish;
  wish.zone = "*", wish.level = level, wish.tone = tone;
  v.aims = {wish};
  Bowl b;
  b.label = "A";
  b.formula.range = "tint";
  b.formula.minutes = 35;
  b.formula.parts = {{"shade-1", 40}, {"developer-6", 40}};
  b.zones = {"all/regrowth"};
  v.bowls = {b};
  return cleared(std::move(v));
}

Afterwards of(const Visit& v) {
  VisitPlan plan;
  plan.targets = *aim(v.head, v.aims, v.shelf);
  for (const Bowl& b : v.bowls) {
    PlannedBowl planned;
    planned.bowl = b;
    planned.on = {{b.formula.minutes, b.formula.minutes}};
    plan.plan.bowls.push_back(planned);
  }
  return afterwards(v, plan);
}

TEST(Afterwards, WhiteCoveredShowsALineWithinAMonthAndTheNextVisitFollowsIt) {
  // Common practice: a line one to three weeks after 60 % white was covered, the next visit after three to five.
  const Afterwards after = of(visit_of(span("regrowth", 0, 10, 0.6, 3), ProductClass::permanent, 5));
  EXPECT_TRUE(says(after, "after_line_shows"));
  EXPECT_LE(after.line.from, 3);
  EXPECT_GE(after.line.until, 1);
  EXPECT_EQ(after.rebook.from, after.line.until);
  EXPECT_EQ(after.visits_until, 1);
  EXPECT_FALSE(says(after, "after_blended_not_covered"));
}

TEST(Afterwards, ABlendFadesSoftlyAndDrawsNoLine) {
  const Afterwards after = of(visit_of(span("regrowth", 0, 20, 0.3, 5), ProductClass::demi, 5));
  EXPECT_TRUE(says(after, "after_blended_not_covered"));
  EXPECT_EQ(after.line.until, 0);
  EXPECT_EQ(after.lasts.from, 4);
  EXPECT_EQ(after.lasts.until, 8);
  EXPECT_TRUE(says(of(visit_of(span("regrowth", 0, 20, 0, 5), ProductClass::demi, 5)), "after_fades_softly"));
}

TEST(Afterwards, TheToneDecidesHowLongItLasts) {
  const Afterwards red = of(visit_of(span("regrowth", 0, 20, 0, 5), ProductClass::permanent, 5, Tone::red));
  EXPECT_TRUE(says(red, "after_red_fades_first"));
  EXPECT_TRUE(says(red, "after_growth_may_glow"));
  EXPECT_EQ(red.lasts.from, 2);
  EXPECT_TRUE(says(of(visit_of(span("regrowth", 0, 20, 0, 5), ProductClass::permanent, 5, Tone::copper)),
                   "after_copper_fades"));
}

TEST(Afterwards, WhatTheHairHasBeenThroughIsNotForgotten) {
  Span s = span("regrowth", 0, 20, 0, 6);
  s.services = {{ServiceKind::permed, 3}, {ServiceKind::minerals, 1}, {ServiceKind::home_colour, 9}};
  const Afterwards after = of(visit_of(s, ProductClass::demi, 5));
  for (const char* code : {"after_curl_may_loosen", "after_metal_comes_back", "after_no_more_home_colour"})
    EXPECT_TRUE(says(after, code)) << code;
}

TEST(Afterwards, NoBowlNoLineButTheWarningStays) {
  Visit v = visit_of(span("regrowth", 0, 20, 0.3, 5), ProductClass::permanent, 5);
  v.bowls.clear();
  const Afterwards after = of(v);
  EXPECT_EQ(after.line.until, 0);
  EXPECT_EQ(after.visits_until, 0);
  EXPECT_TRUE(says(after, "after_signs_wash_off"));
}

TEST(Afterwards, TheSkinTestIsTooOldSixMonthsLater) {
  Visit v = visit_of(span("regrowth", 0, 20, 0.3, 5), ProductClass::permanent, 5);
  v.skin_test = "2026-03-07";
  EXPECT_EQ(of(v).next_test, "2026-09-07");
  v.policy.rules.skin_test_asked = false;
  EXPECT_EQ(of(v).next_test, "");
  EXPECT_EQ(months_after("2025-08-31", 6), "2026-02-28");
  EXPECT_EQ(months_after("no day", 6), "");
}

TEST(Afterwards, MineralsAreLookedAtAgain) {
  Visit v = visit_of(span("regrowth", 0, 3, 0, 7), ProductClass::permanent, 7);
  v.head.areas[0].spans[0].services.push_back({ServiceKind::minerals, 1.0, 1, false});
  v.bowls.clear();
  const Afterwards after = of(v);
  EXPECT_EQ(after.rebook.from, 4);
  EXPECT_EQ(after.rebook.until, 8);
}

}  // namespace
}  // namespace strandline
