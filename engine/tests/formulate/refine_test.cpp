#include "formulate/refine.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/tests/support.h"
#include "formulate/own.h"
#include "mix/situation.h"

namespace strandline {
namespace {

using namespace testing_support;

Plan planned(const Head& head, const Shelf& shelf, double level, const FormulaPolicy& policy = {}) {
  ZoneAim wish;
  wish.zone = "*", wish.level = level;
  const auto plan = formulate(head, *aim(head, {wish}, shelf), shelf, policy);
  EXPECT_TRUE(plan);
  return *plan;
}

double colour_grams(const Formula& f, const Shelf& shelf) {
  double sum = 0;
  for (const Part& p : f.parts)
    if (find_product(shelf, p.product)->cls != ProductClass::developer) sum += p.grams;
  return sum;
}

TEST(Refine, NeverWorseThanTheGramsAsTheyAreWeighed) {
  const Shelf shelf = small_shelf(7);
  for (double level : {4.3, 5.5, 6.2, 6.7})
    for (const PlannedBowl& b : planned(two_areas(), shelf, level).bowls)
      EXPECT_LE(b.refined_objective, b.rounded_objective + 1e-9) << level;
}

TEST(Refine, KeepsTheBowlsWeightItsStepsAndItsSmallestPart) {
  const Shelf shelf = small_shelf(7);
  const FormulaPolicy policy;
  const Head head = two_areas();
  const Situation now = at_start(head, kSearchScenarios);
  const Domain all = domain(shelf, policy);
  int seen = 0;
  for (double level = 4; level <= 7; level += 0.3) {
    ZoneAim wish;
    wish.zone = "*", wish.level = level;
    const auto targets = aim(head, {wish}, shelf);
    const auto plan = formulate(head, *targets, shelf, policy);
    ASSERT_TRUE(plan);
    const std::vector<SearchZone> zones = search_zones(now, *targets, policy);
    double total = 0;
    for (const SearchZone& z : zones) total += z.weight;
    const ChoiceInput in{head, shelf, policy, all, zones, now.draws, total, {}};
    for (const PlannedBowl& b : plan->bowls) {
      const auto fine = refine(in, now, b);
      EXPECT_EQ(fine ? fine->objective : b.rounded_objective, b.refined_objective) << "as the plan says";
      if (!fine) continue;
      ++seen;
      EXPECT_LT(fine->objective, b.rounded_objective);
      EXPECT_NEAR(colour_grams(fine->bowl.bowl.formula, shelf), colour_grams(b.bowl.formula, shelf), 1e-9);
      int shades = 0;
      for (const Part& p : fine->bowl.bowl.formula.parts) {
        EXPECT_NEAR(std::remainder(p.grams, policy.gram_step), 0, 1e-9);
        if (find_product(shelf, p.product)->cls == ProductClass::developer) continue;
        ++shades;
        EXPECT_GE(p.grams, policy.part_min_g);
      }
      EXPECT_LE(shades, 4);
      EXPECT_EQ(fine->fourth, shades == 4);
    }
    for (const Alternative& way : plan->alternatives)
      if (way.axis == "closer") EXPECT_LE(way.objective, plan->report.objective - Constants{}.closer_least_gain);
  }
  EXPECT_GT(seen, 0) << "the sweep holds bowls that finer grams improve";
}

TEST(Refine, TwoRoutesToTheLossOfTheWeighedGrams) {
  // The plan's own double-precision sum and the single-precision judge of own bowls.
  const Shelf shelf = small_shelf(7);
  const FormulaPolicy policy;
  const Head head = two_areas();
  ZoneAim wish;
  wish.zone = "*", wish.level = 6.3;
  const auto targets = aim(head, {wish}, shelf);
  const auto plan = formulate(head, *targets, shelf, policy);
  ASSERT_TRUE(plan);
  const Situation now = at_start(head, kSearchScenarios);
  const std::vector<SearchZone> zones = search_zones(now, *targets, policy);
  double total = 0;
  for (const SearchZone& z : zones) total += z.weight;
  for (const PlannedBowl& b : plan->bowls) {
    std::vector<int> served;
    for (size_t i = 0; i < zones.size(); ++i)
      if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), zones[i].draws->id) != b.bowl.zones.end())
        served.push_back(static_cast<int>(i));
    Judge judge(now, zones, served, total, shelf, policy, b.grams, longer_than_told(step_of(b), zones, served));
    EXPECT_NEAR(judge.objective(own(b.bowl.formula, shelf)), b.rounded_objective, 2e-2);
  }
}

TEST(Others, AreOtherFormulasInOrder) {
  const Shelf shelf = small_shelf(7);
  for (const PlannedBowl& b : planned(two_areas(), shelf, 5.6).bowls) {
    ASSERT_FALSE(b.others.empty());
    EXPECT_LE(b.others.size(), 10u);
    // The plainest of what no reading can tell apart first, then in the order of what they cost.
    size_t rising = b.others.size() - 1;
    while (rising > 0 && b.others[rising - 1].objective <= b.others[rising].objective + 1e-6) --rising;
    for (size_t i = 0; i < rising; ++i)
      EXPECT_LE(b.others[i].objective, b.certified_objective + FormulaPolicy{}.indifference_levels + 1e-6);
    std::vector<Recipe> seen = {b.recipe};
    for (const OtherRecipe& o : b.others) {
      // Another strength, or more than an eighth of the colour of other tubes.
      auto common = [&](const Recipe& r) {
        int sum = 0;
        for (const Share& a : r.shares)
          for (const Share& other : o.recipe.shares)
            if (a.product == other.product) sum += std::min(a.eighths, other.eighths);
        return sum;
      };
      for (const Recipe& r : seen) EXPECT_TRUE(common(r) < 7 || r.developer_percent != o.recipe.developer_percent);
      seen.push_back(o.recipe);
    }
    EXPECT_EQ(b.runner_up_objective, b.others.front().objective);
  }
}

TEST(Turns, AFullSearchOnTheMisreadHeadAgrees) {
  // Where a turn is told, the bowl of the head as read is not the best of the misread head.
  const Shelf shelf = small_shelf(7);
  FormulaPolicy one_bowl;
  one_bowl.bowls_max = 1;
  int seen = 0;
  for (double white : {0.0, 0.4})
    for (double level : {5.2, 5.5, 6.1, 6.6}) {
      Head head;
      head.areas.push_back(area("crown", AreaKind::crown, 250, {span("lengths", 3, 9, white, 6)}));
      const Plan plan = planned(head, shelf, level, one_bowl);
      if (plan.bowls.empty()) continue;
      for (const Turn& turn : plan.bowls[0].turns) {
        ++seen;
        EXPECT_GT(turn.better_by, 0);
        Head other = head;
        Span& s = other.areas[0].spans[0];
        if (turn.reading == "level") s.populations[0].level.value += turn.by;
        if (turn.reading == "porosity") s.porosity.value += turn.by;
        if (turn.reading == "white")
          for (Population& p : s.populations)
            p.share.value = p.kind == FibreKind::white ? white + turn.by : 1 - white - turn.by;
        ZoneAim wish;
        wish.zone = "*", wish.level = level;
        const auto again = formulate(other, *aim(head, {wish}, shelf), shelf, one_bowl);
        ASSERT_TRUE(again);
        if (again->bowls.empty()) continue;  // so read it is as wished, and left
        const Recipe &now = again->bowls[0].recipe, &was = plan.bowls[0].recipe;
        bool same = now.developer_percent == was.developer_percent && now.shares.size() == was.shares.size();
        for (size_t i = 0; same && i < now.shares.size(); ++i)
          same = now.shares[i].product == was.shares[i].product && now.shares[i].eighths == was.shares[i].eighths;
        EXPECT_FALSE(same) << turn.reading << ' ' << turn.by << " at " << level;
      }
    }
  EXPECT_GT(seen, 0) << "some of these heads stand on an edge";
}

}  // namespace
}  // namespace strandline
