#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

// The tints once more as a weak demi of this time.
Shelf with_demi(double minutes) {
  Shelf s = small_shelf(7);
  Range demi = s.ranges[0];
  demi.id = demi.name = "demi", demi.cls = ProductClass::demi, demi.minutes = {10, minutes, minutes};
  demi.developer_percents = {3}, demi.alkaline_lift = 0.15;
  s.ranges.push_back(demi);
  std::vector<Product> more;
  for (Product p : s.products)
    if (p.swatch) {
      p.id += "-demi", p.name = p.id, p.range = "demi", p.cls = ProductClass::demi;
      more.push_back(p);
    }
  s.products.insert(s.products.end(), more.begin(), more.end());
  return s;
}

Plan plan_for(double white, double level, double minutes) {
  const Shelf shelf = with_demi(minutes);
  Head head;
  head.areas.push_back(area("crown", AreaKind::crown, 250, {span("regrowth", 0, 2, white, 5)}));
  ZoneAim wish;
  wish.zone = "*", wish.level = level;
  const auto plan = formulate(head, *aim(head, {wish}, shelf), shelf, {});
  EXPECT_TRUE(plan);
  return *plan;
}

double longest(const std::vector<PlannedBowl>& bowls) {
  double minutes = 0;
  for (const PlannedBowl& b : bowls) minutes = std::max(minutes, b.bowl.formula.minutes);
  return minutes;
}

TEST(Alternatives, EachIsBetterInItsOwnWayAndNoWorseThanWorthNaming) {
  std::set<std::string> seen;
  for (double minutes : {20, 35})
    for (double level : {4.0, 5.0, 5.6, 6.0}) {
      const Plan plan = plan_for(0.3, level, minutes);
      for (const Alternative& a : plan.alternatives) {
        seen.insert(a.axis);
        ASSERT_FALSE(a.bowls.empty());
        if (a.axis == "quicker") EXPECT_LT(longest(a.bowls), longest(plan.bowls));
        if (a.axis == "softer_line") {
          EXPECT_TRUE(
              std::all_of(a.bowls.begin(), a.bowls.end(), [](auto& b) { return b.bowl.formula.range == "demi"; }));
          EXPECT_TRUE(std::any_of(plan.bowls.begin(), plan.bowls.end(),
                                  [](auto& b) { return b.bowl.formula.range == "tint"; }));
        }
        if (a.axis == "cheaper") EXPECT_LT(a.cost, plan.cost);
        if (a.axis == "gentler") EXPECT_LT(a.bowls[0].recipe.developer_percent, plan.bowls[0].recipe.developer_percent);
        if (a.axis == "simpler") EXPECT_LT(a.bowls[0].recipe.shares.size(), plan.bowls[0].recipe.shares.size());
        if (a.axis == "closer")
          EXPECT_LT(a.objective, plan.report.objective);
        else
          EXPECT_LE(a.objective, plan.report.objective + Constants{}.other_way_worse_most + 1e-9);
      }
    }
  for (const char* axis : {"quicker", "softer_line"}) EXPECT_TRUE(seen.contains(axis)) << axis;
}

// Common practice: the safe side first. By other means: the darkest of ten results (10 % of 1024 scenarios) below the
// wish.
double darkest_decile(const Alternative& a, const Head& head, const Shelf& shelf, const std::vector<Target>& targets) {
  std::vector<Step> steps;
  for (const PlannedBowl& b : a.bowls) steps.push_back({b.bowl.formula, b.bowl.zones});
  PredictOptions many;
  many.scenarios = 1024;
  const auto p = predict(head, steps, shelf, targets, many);
  return p->zones[0].planned.level.p10 - targets[0].level;
}

TEST(Alternatives, TheLightSideIsSeldomTooDark) {
  const Shelf shelf = with_demi(20);
  int offered = 0;
  const auto try_on = [&](double sd, double white, double level) {
    Head head;
    Span s = span("regrowth", 0, 2, white, 5);
    for (Population& p : s.populations) p.level.sd = sd;  // a doubtful reading
    head.areas.push_back(area("crown", AreaKind::crown, 250, {s}));
    ZoneAim wish;
    wish.zone = "*", wish.level = level;
    const auto targets = aim(head, {wish}, shelf);
    const auto plan = formulate(head, *targets, shelf, {});
    ASSERT_TRUE(plan);
    Alternative best;
    best.bowls = plan->bowls;
    for (const Alternative& a : plan->alternatives) {
      if (a.axis != "lighter_first") continue;
      ++offered;
      EXPECT_GT(a.zones[0].result.planned.lab.l, plan->zones[0].result.planned.lab.l);
      EXPECT_GT(darkest_decile(a, head, shelf, *targets), darkest_decile(best, head, shelf, *targets));
      const Reasons& why = a.bowls.front().why;
      EXPECT_TRUE(std::any_of(why.begin(), why.end(), [](const Problem& p) { return p.code == "deepen_at_basin"; }));
    }
  };
  for (double sd : {0.5, 1.1})
    for (double white : {0.0, 0.1, 0.8})
      for (double level : {6.5, 7.0, 7.5}) try_on(sd, white, level);
  EXPECT_GT(offered, 0);
}

}  // namespace
}  // namespace strandline
