#include "formulate/evenness.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "engine/tests/formulate/two_bowls.h"
#include "predict/view.h"
#include "strandline/grow.h"

namespace strandline {
namespace {

using namespace testing_support;

using Trial = TwoBowls;

Head joined(double gap_cm = 0, double tinted_level = 4.6) {
  return two_spans(gap_cm, tinted_level, ColourOrigin::tinted);
}

// The price by other means: full colours of both bowls, scenario by scenario.
double price(Trial& t, const Candidate& above, const Candidate& below) {
  auto seen = [&](const Candidate& c, int zone) {
    const double ratio = t.all.settings[static_cast<size_t>(c.setting)].setting.ratio;
    const Spectrum load = t.all.sets[static_cast<size_t>(c.set)].load(c.shares, ratio);
    const std::vector<float> single(load.begin(), load.end());
    return colours(t.search.table(c.setting, zone, minutes_on(t.in, c, {zone})[0]), single.data());
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

TEST(Evenness, HairThatStaysIsANeighbourToo) {
  // The lengths stay at level 6; the regrowth is to be 6 too: a line there was not asked for.
  Trial t(two_spans(0, 6), 6, std::nullopt);
  ASSERT_EQ(t.zones.size(), 1u);
  Choice c = t.best();
  ASSERT_EQ(c.bowls.size(), 1u);
  const Choice apart = c;
  even_out(t.in, c);
  // By other means: the lengths as they are, scenario by scenario, beside what the bowl gives.
  const ZoneTable still = zone_table(t.now.draws.zones[1], t.now.draws);
  const std::vector<float> nothing(kBands, 0.0f);
  const auto below = colours(still, nothing.data());
  const double ratio = t.all.settings[static_cast<size_t>(c.bowls[0].best.setting)].setting.ratio;
  const Spectrum load = t.all.sets[static_cast<size_t>(c.bowls[0].best.set)].load(c.bowls[0].best.shares, ratio);
  const std::vector<float> single(load.begin(), load.end());
  const auto above =
      colours(t.in.table(c.bowls[0].best.setting, 0, minutes_on(t.in, c.bowls[0].best, {0})[0]), single.data());
  const Constants k;
  const ZoneDraws& lengths = t.now.draws.zones[1];
  const double wanted = line_contrast(t.targets[0].lab, view(lengths.nominal, lengths.kinds, k).lab, k);
  double sum = 0;
  for (size_t s = 0; s < above.size(); ++s)
    sum += std::max(0.0, line_contrast(above[s].lab, below[s].lab, k) - wanted - k.line_least_levels);
  EXPECT_NEAR(c.uneven, k.price_uneven_per_level * t.zones[0].weight / 2 / 2 * sum / static_cast<double>(above.size()),
              1e-6);
  EXPECT_GT(c.uneven, 0) << "scenarios differ, so some line is seen";
  EXPECT_NEAR(unevenness(t.in, c), c.uneven, 1e-9);
  EXPECT_LE(c.objective, apart.objective + unevenness(t.in, apart) + 1e-9);
}

TEST(Evenness, APlanTellsItsPriceAndKeepsItsBound) {
  const Head head = joined();
  ZoneAim wish;
  wish.zone = "*", wish.level = 5.5;
  const auto plan = formulate(head, *aim(head, {wish}, small_shelf(7)), small_shelf(7), {});
  ASSERT_TRUE(plan);
  EXPECT_GE(plan->report.uneven, 0);
  EXPECT_LE(plan->report.bound, plan->report.objective + 1e-9);
  EXPECT_NEAR(plan->report.gap, plan->report.objective - plan->report.plain_gap - plan->report.bound, 1e-12);
}

}  // namespace
}  // namespace strandline
