#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/tests/formulate/whole_shelf.h"
#include "mix/first_steps.h"
#include "mix/situation.h"
#include "strandline/growth.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Routes, NoneWhereOneBowlReaches) { EXPECT_TRUE(ways_for(lengths(ColourOrigin::natural, 6), 6).routes.empty()); }

TEST(Routes, TintedHairLighterIsFreedOfItsColourOrLightened) {
  // Common practice: colour does not lift colour.
  const Ways w = ways_for(lengths(ColourOrigin::tinted, 4), 7);
  ASSERT_FALSE(w.direct.zones.front().reachable);
  const Route* lighten = w.find("lighten");
  ASSERT_TRUE(lighten);
  EXPECT_TRUE(w.find("remove"));
  EXPECT_TRUE(w.routes.front().recommended);
  EXPECT_LT(w.routes.front().objective, w.direct.report.objective);
  for (size_t i = 1; i < w.routes.size(); ++i) {
    EXPECT_FALSE(w.routes[i].recommended);
    EXPECT_LE(w.routes[i - 1].objective, w.routes[i].objective);
  }
  EXPECT_GT(planned_level(lighten->visits.back().zones), planned_level(w.direct.zones) + 1);
}

TEST(Routes, MineralsAreTakenOffBeforeAnyPeroxide) {
  // Common practice: hair from hard water or a pool is chelated before its service.
  Head head = lengths(ColourOrigin::natural, 7);
  head.areas[0].spans[0].services = {{ServiceKind::minerals, std::nullopt}};
  const Ways w = ways_for(head, 5);
  EXPECT_TRUE(w.direct.bowls.empty());
  const Reasons& why_not = w.direct.zones.front().why_not;
  EXPECT_TRUE(std::any_of(why_not.begin(), why_not.end(), [](const Problem& p) {
    return p.code == "ceiling" && p.params.at("rule") == "minerals_first";
  }));
  const Route* chelate = w.find("chelate");
  ASSERT_TRUE(chelate);
  EXPECT_TRUE(chelate->recommended);
  EXPECT_TRUE(chelate->reachable);
  const auto& steps = chelate->visits.front().steps;
  ASSERT_EQ(steps.size(), 2u);
  const PlannedBowl& first = steps[0].bowls.front();
  ASSERT_EQ(first.bowl.formula.parts.size(), 1u);
  EXPECT_EQ(first.bowl.formula.parts[0].product, "mineral-remover");
  EXPECT_EQ(first.on_head_peroxide_percent, 0);
  EXPECT_GT(steps[1].bowls.front().on_head_peroxide_percent, 0);
  EXPECT_FALSE(w.find("soften"));
  // Without the reading there is nothing to take off.
  EXPECT_FALSE(ways_for(lengths(ColourOrigin::natural, 7), 5).find("chelate"));
}

TEST(Routes, BothStepsTakeFromTheSameShelf) {
  // The lightener needs most of the strong developer; what the toner takes must still be there.
  for (const double there : {30.0, 60.0, 120.0}) {
    Shelf shelf = whole_shelf();
    for (Product& p : shelf.products)
      if (p.cls == ProductClass::developer) p.stock_g = there;
    ZoneAim wish;
    wish.zone = "*", wish.level = 9, wish.tone = Tone::beige;
    const Head head = lengths(ColourOrigin::natural, 5);
    const auto targets = aim(head, {wish}, shelf);
    const auto direct = formulate(head, *targets, shelf, {});
    ASSERT_TRUE(direct);
    const auto found = routes(head, *targets, shelf, {}, *direct);
    ASSERT_TRUE(found);
    for (const Route& r : *found)
      for (const RouteVisit& visit : r.visits)
        for (const Product& p : shelf.products) {
          double used = 0;
          for (const RouteStep& step : visit.steps)
            for (const PlannedBowl& b : step.bowls)
              for (const Part& part : b.bowl.formula.parts) used += part.product == p.id ? part.grams : 0;
          EXPECT_LE(used, p.stock_g) << r.kind << ' ' << p.id;
        }
  }
}

TEST(Routes, TheCheckIsAnsweredLevelByLevelWithWeakToners) {
  const FormulaPolicy policy;
  const Ways w = ways_for(lengths(ColourOrigin::natural, 5), 9, Tone::beige);
  const Route* lighten = w.find("lighten");
  ASSERT_TRUE(lighten);
  const RouteVisit& visit = lighten->visits.front();
  ASSERT_EQ(visit.steps.size(), 2u);
  EXPECT_TRUE(visit.steps[0].check_after);
  EXPECT_EQ(visit.steps[1].kind, "tone");
  ASSERT_FALSE(visit.steps[1].if_check_shows.empty());
  const auto& table = visit.steps[1].if_check_shows.front();
  EXPECT_EQ(table.bowl, visit.steps[1].bowls.front().bowl.label);
  double sum = 0, last = 0;
  for (const CheckChoice& c : table.choices) {
    sum += c.likelihood;
    EXPECT_GT(c.level, last);
    EXPECT_EQ(c.level, std::round(2 * c.level) / 2) << "in half levels";
    EXPECT_TRUE(!c.go_on || c.level < 9 - 0.5) << "only what is too dark for the wish is lightened on";
    EXPECT_LE(c.recipe.developer_percent, policy.lightened_max_percent);
    EXPECT_EQ(c.recipe.shares.empty(), c.go_on);
    last = c.level;
  }
  EXPECT_GT(sum, 0.7) << "the table covers what is likely";
  EXPECT_LE(sum, 1 + 1e-9);
}

TEST(Routes, BowlsOfAVisitHaveLettersOfTheirOwn) {
  const Ways w = ways_for(lengths(ColourOrigin::natural, 5), 9);
  ASSERT_TRUE(w.find("lighten"));
  std::string letters;
  for (const RouteStep& step : w.find("lighten")->visits.front().steps)
    for (const PlannedBowl& b : step.bowls) letters += b.bowl.label + std::to_string(b.bowl.step);
  EXPECT_EQ(letters, "A1B2") << "each with the step it belongs to";
}

TEST(Routes, DarkHairToVeryLightTakesVisitsAndKeepsTheCondition) {
  FormulaPolicy policy;
  policy.porosity_max = 3.5;  // a gentle lightener at the scalp, twice
  const Ways w = ways_for(lengths(ColourOrigin::natural, 2, 0), 10, Tone::natural, policy);
  const Route* lighten = w.find("lighten");
  ASSERT_TRUE(lighten);
  EXPECT_LE(static_cast<int>(lighten->visits.size()), policy.visits_most);
  double level = 2;
  for (size_t v = 0; v < lighten->visits.size(); ++v) {
    const ZonePlan& zone = lighten->visits[v].zones.front();
    EXPECT_LE(zone.result.planned.porosity, policy.porosity_max + 1e-9);
    EXPECT_GT(zone.result.planned.named.level, level) << "visit " << v;
    EXPECT_EQ(lighten->visits[v].weeks_after_last, v == 0 ? 0 : policy.weeks_between_visits);
    EXPECT_EQ(lighten->visits[v].regrowth_cm.value, v == 0 ? 0 : regrowth_cm(policy.weeks_between_visits).value);
    level = zone.result.planned.named.level;
  }
  ASSERT_GT(lighten->visits.size(), 1u);
  EXPECT_LE(lighten->objective - Constants{}.price_visit * static_cast<double>(lighten->visits.size() - 1),
            lighten->after_first_visit);
  EXPECT_EQ(lighten->visits[1].zones.front().result.today.named.level,
            lighten->visits[0].zones.front().result.planned.named.level)
      << "today, by then";
}

TEST(Routes, WhatMayNotTouchTheHairIsNoWay) {
  Head failed = lengths(ColourOrigin::natural, 5);
  failed.areas[0].spans[0].wet_stretch_percent = 60;
  failed.areas[0].spans[0].stretch_returns = false;
  EXPECT_FALSE(ways_for(failed, 9).find("lighten")) << "no lightener after a failed stretch";
  const Ways at_scalp = ways_for(lengths(ColourOrigin::natural, 4, 0), 9);
  ASSERT_TRUE(at_scalp.find("lighten"));
  for (const RouteVisit& v : at_scalp.find("lighten")->visits) {
    const Recipe& first = v.steps[0].bowls[0].recipe;
    EXPECT_LE(first.developer_percent, FormulaPolicy{}.scalp_lightener_max_percent);
    // Its longest time, 45 minutes on this shelf, counts from the first touch: 200 cm² of parting and 8 cm to paint.
    EXPECT_LE(first.minutes + 0.033 * 200 + 0.12 * 8, 45);
  }
}

TEST(Routes, LightenedHairGoingDarkIsFilled) {
  // Common practice: without a filler it goes flat or green.
  const Ways w = ways_for(lengths(ColourOrigin::lightened, 9), 5, Tone::copper);
  ASSERT_FALSE(w.direct.zones.front().reachable);
  const Route* fill = w.find("fill");
  ASSERT_TRUE(fill);
  EXPECT_GT(fill->visits[0].zones[0].result.planned.lab.a, w.direct.zones[0].result.planned.lab.a);
}

TEST(Situation, ReadingsFollowTheFibres) {
  const Shelf shelf = whole_shelf();
  const Situation start = at_start(lengths(ColourOrigin::natural, 5), 16);
  FirstStep step;
  for (const FirstStep& s : ways(Opening::lighten, shelf, {}))
    if (s.developer_percent == 6 && s.minutes == 30) step = s;
  ASSERT_TRUE(step.range);
  const auto then = after(start, {pour(step, 60, shelf, {}), {"crown/lengths"}}, shelf);
  ASSERT_TRUE(then);
  const Span& span = then->head.areas[0].spans[0];
  EXPECT_EQ(span.populations[0].origin, ColourOrigin::lightened);
  EXPECT_GT(span.populations[0].level.value, 6);
  EXPECT_EQ(span.populations[0].natural_level->value, 5);
  EXPECT_GT(span.porosity.value, start.head.areas[0].spans[0].porosity.value);
  EXPECT_EQ(then->done.size(), 1u);
  EXPECT_FALSE(after(start, {pour(step, 60, shelf, {}), {"nowhere"}}, shelf)) << "an unknown zone is a problem";
}

}  // namespace
}  // namespace strandline
