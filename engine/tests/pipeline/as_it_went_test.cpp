#include "strandline/as_it_went.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/cleared.h"
#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

Visit one_bowl() {
  Visit v;
  v.head = two_areas();
  v.shelf = small_shelf();
  SchedulePolicy& p = v.policy.schedule;
  p.cover_areas = {AreaKind::crown, AreaKind::top,     AreaKind::nape,          AreaKind::other,
                   AreaKind::sides, AreaKind::temples, AreaKind::front_hairline};
  p.lighten_areas = p.cover_areas;
  p.prepare = {5, 1}, p.remove_packet = {2, 0.5};
  p.first_check = 15, p.check_every_min = 5, p.check_every_max = 10, p.check_minutes = 1;
  p.late_tolerance = 10, p.sample_points = 64, p.node_limit = 60000;
  Bowl a;
  a.label = "A";
  a.formula.range = "tint";
  a.formula.minutes = 35;
  a.formula.parts = {{"shade-1", 30}, {"developer-6", 30}};
  a.zones = {"crown/regrowth"};
  v.bowls = {a};
  return cleared(v);
}

const ZonePlan& crown(const VisitPlan& p) {
  return *std::ranges::find(p.plan.zones, "crown/regrowth", [](const ZonePlan& z) { return z.result.zone; });
}

TEST(AsItWent, WhatCameOffEarlyDidLess) {
  const Visit v = one_bowl();
  const auto planned = what_if(v);
  ASSERT_TRUE(planned) << planned.error().front().code;
  const Timeline& clock = planned->timeline;
  ASSERT_FALSE(clock.developments.empty());
  const auto same = as_it_went(v, clock);
  ASSERT_TRUE(same);
  EXPECT_EQ(crown(*same).result.planned.lab.l, crown(*planned).result.planned.lab.l) << "as planned, as foreseen";

  Timeline ran = clock;
  for (Development& d : ran.developments) d.leaves_at = d.last_touch + 8;
  const auto went = as_it_went(v, ran);
  ASSERT_TRUE(went);
  const auto& today = crown(*went).result.today.lab;
  const auto far = [&](const VisitPlan& p) {
    const Lab& to = crown(p).result.planned.lab;
    return std::abs(to.l - today.l);
  };
  EXPECT_LT(far(*went), 0.9 * far(*planned)) << "eight minutes of 35";
  EXPECT_EQ(went->timeline.developments.front().leaves_at, ran.developments.front().leaves_at);
}

TEST(AsItWent, AZoneThatTheClockDoesNotKnowKeepsTheMinutesOfItsBowl) {
  const Visit v = one_bowl();
  const auto planned = what_if(v);
  ASSERT_TRUE(planned);
  Timeline nothing = planned->timeline;
  nothing.developments.clear();
  const auto went = as_it_went(v, nothing);
  ASSERT_TRUE(went);
  EXPECT_NEAR(crown(*went).result.planned.lab.l, crown(*planned).result.planned.lab.l, 1);
}

}  // namespace
}  // namespace strandline
