#include "strandline/as_it_went.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/cleared.h"
#include "engine/tests/pipeline/one_bowl.h"

namespace strandline {
namespace {

using namespace testing_support;

Visit one_bowl() {
  Visit v = clocked_visit();
  const Bowl a = tint_on({"crown/regrowth"});
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
