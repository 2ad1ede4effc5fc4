#include "formulate/evenness.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "engine/tests/support.h"
#include "formulate/situation.h"
#include "strandline/grow.h"

namespace strandline {
namespace {

using namespace testing_support;

// Natural regrowth beside lengths that were tinted.
Head joined(double gap_cm = 0, double tinted_level = 4.6) {
  Head h;
  Span grown = span("regrowth", 0, 2, 0.3, 6), tinted = span("lengths", 2 + gap_cm, 12, 0.1, tinted_level);
  for (Population& p : tinted.populations) p.origin = ColourOrigin::tinted;
  tinted.porosity.value = 1.8;
  h.areas.push_back(area("crown", AreaKind::crown, 250, {grown, tinted}));
  return h;
}

struct Trial {
  Head head;
  Shelf shelf = small_shelf(7);
  FormulaPolicy policy;
  std::vector<Target> targets;
  Situation now;
  std::vector<SearchZone> zones;
  Domain all;
  FormulateOptions options;
  BowlSearch search;
  ChoiceInput in;

  Trial(Head h, double at_scalp, double below)
      : head(std::move(h)),
        targets([&] {
          ZoneAim one, other;
          one.zone = "crown/regrowth", one.level = at_scalp;
          other.zone = "crown/lengths", other.level = below;
          return *aim(head, {one, other}, shelf);
        }()),
        now(at_start(head, kSearchScenarios)),
        zones(search_zones(now, targets, policy)),
        all(domain(shelf, policy)),
        search(all, zones, now.draws, 2, policy, options),
        in{head,   shelf,
           policy, all,
           zones,  now.draws,
           2,      [&](int setting, int zone) -> const ZoneTable& { return search.table(setting, zone); }} {}

  Choice best() {
    Chooser chooser(in, group_zones(zones), [&](const Wish& wish) { return search.find(wish); });
    return chooser.choose(4);
  }
};

// The price by other means: full colours of both bowls, scenario by scenario.
double price(Trial& t, const Candidate& above, const Candidate& below) {
  auto seen = [&](const Candidate& c, int zone) {
    const double ratio = t.all.settings[static_cast<size_t>(c.setting)].setting.ratio;
    const Spectrum load = t.all.sets[static_cast<size_t>(c.set)].load(c.shares, ratio);
    const std::vector<float> single(load.begin(), load.end());
    return colours(t.search.table(c.setting, zone), single.data());
  };
  const auto up = seen(above, 0), down = seen(below, 1);
  const Constants c;
  const double wanted = line_contrast(t.targets[0].lab, t.targets[1].lab, c);
  double sum = 0;
  for (size_t s = 0; s < up.size(); ++s)
    sum += std::max(0.0, line_contrast(up[s].lab, down[s].lab, c) - wanted - c.line_least_levels);
  const double weight = (t.zones[0].weight + t.zones[1].weight) / 2 / 2;
  return c.price_uneven_per_level * weight * sum / static_cast<double>(up.size());
}

TEST(Evenness, TakesTheCombinationThatCostsLeast) {
  Trial t(joined(0, 6), 5, 5);
  const Choice apart = t.best();
  ASSERT_EQ(apart.bowls.size(), 2u);
  Choice even = apart;
  even_out(t.in, even);
  const Chosen &up = apart.bowls[0], &down = apart.bowls[1];
  const double at_first = apart.objective + price(t, up.best, down.best);
  double least = std::numeric_limits<double>::infinity();
  for (const Candidate& a : up.list)
    for (const Candidate& b : down.list)
      least = std::min(least, apart.objective - up.best.objective - down.best.objective + a.objective + b.objective +
                                  price(t, a, b));
  EXPECT_LE(even.objective, at_first + 1e-9);
  EXPECT_GE(even.objective, least - 1e-9);
  EXPECT_NEAR(even.uneven, price(t, even.bowls[0].best, even.bowls[1].best), 1e-9);
  EXPECT_GE(even.objective - even.uneven, apart.objective - 1e-9) << "the best of each bowl stays a lower bound";
}

TEST(Evenness, CountsOnlyWhatTheWishesDoNotAskFor) {
  Trial same(joined(), 5, 5), apart(joined(), 6, 4);
  Choice a = same.best(), b = apart.best();
  even_out(same.in, a);
  even_out(apart.in, b);
  EXPECT_GE(a.uneven, 0);
  EXPECT_LT(b.uneven, 0.05) << "the line was asked for";
}

TEST(Evenness, SpansThatDoNotMeetHaveNoJoin) {
  Trial t(joined(1), 5.5, 5.5);
  Choice c = t.best();
  const double before = c.objective;
  even_out(t.in, c);
  EXPECT_EQ(c.uneven, 0);
  EXPECT_EQ(c.objective, before);
}

TEST(Evenness, APlanTellsItsPriceAndKeepsItsBound) {
  const Head head = joined();
  ZoneAim wish;
  wish.zone = "*", wish.level = 5.5;
  const auto plan = formulate(head, *aim(head, {wish}, small_shelf(7)), small_shelf(7), {});
  ASSERT_TRUE(plan);
  EXPECT_GE(plan->report.uneven, 0);
  EXPECT_LE(plan->report.bound, plan->report.objective + 1e-9);
  EXPECT_NEAR(plan->report.gap, plan->report.objective - plan->report.bound, 1e-12);
}

}  // namespace
}  // namespace strandline
