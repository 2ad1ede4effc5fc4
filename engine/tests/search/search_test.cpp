#include "search/search.h"

#include "engine/oracle/enumerate.h"
#include "engine/tests/formulate/random_trial.h"
#include "mix/within.h"

namespace strandline {
namespace {

using namespace testing_support;

std::vector<int> all_zones(const Prepared& p) {
  std::vector<int> all;
  for (size_t z = 0; z < p.search_zones.size(); ++z) all.push_back(static_cast<int>(z));
  return all;
}

// The first kKept are those of the oracle, each the same recipe where no other lies within the rounding of a sum.
void expect_same(const std::vector<Candidate>& found, const std::vector<Candidate>& oracle, unsigned seed) {
  const size_t count = std::min<size_t>(kKept, oracle.size());
  ASSERT_GE(found.size(), count) << seed;
  for (size_t i = 0; i < count; ++i) {
    EXPECT_NEAR(found[i].objective, oracle[i].objective, 1e-6) << seed << " place " << i;
    EXPECT_TRUE(std::any_of(found.begin(), found.end(),
                            [&](const Candidate& c) {
                              return same_recipe(c, oracle[i]) && std::abs(c.objective - oracle[i].objective) < 1e-9;
                            }))
        << seed << " place " << i;
  }
}

// Two independent routes: bounding and full enumeration find the same recipes, for one zone and for several.
TEST(Search, FindsWhatEnumerationFinds) {
  long long looked = 0, evaluated = 0;
  for (unsigned seed = 1; seed <= 520; ++seed) {
    const bool large = seed % 26 == 0;
    const Trial trial = random_trial(seed, large ? 16 : 6, 1 + static_cast<int>(seed % 3 == 2) + (seed % 7 == 0));
    const Prepared p(trial, large ? 64 : 16 + 16 * (seed % 2));
    if (p.domain.settings.empty()) continue;
    const FormulateOptions options;
    std::vector<ZoneGroup> together(1);
    together[0].zones = all_zones(p);
    const Enumeration oracle =
        enumerate(p.domain, p.search_zones, together, p.draws, p.total_weight, p.policy, options);
    BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
    const BowlList found = search.find({together[0].zones});
    EXPECT_TRUE(found.complete);
    expect_same(found.candidates, oracle.best[1], seed);
    if (!found.candidates.empty()) EXPECT_LE(found.bound, oracle.best[1][0].objective + 1e-9) << seed;
    looked += search.counts().recipes * static_cast<long long>(p.draws.constants.size() * p.search_zones.size());
    evaluated += search.counts().evaluations;
  }
  EXPECT_LT(evaluated, looked / 3);  // it does leave work out, on the smallest shelves too; by choice
}

// More zones and times than a branch has bits for: those without one are never ruled out, and nothing is lost.
TEST(Search, MoreTimesThanBitsStayExact) {
  for (unsigned seed : {5U, 11U}) {
    const Trial trial = random_trial(seed, 4, 14);
    const Prepared p(trial, 8);
    ASSERT_GT(14 * times(trial.shelf.ranges[0]).size(), 64U);
    const FormulateOptions options;
    std::vector<ZoneGroup> together(1);
    together[0].zones = all_zones(p);
    const Enumeration oracle =
        enumerate(p.domain, p.search_zones, together, p.draws, p.total_weight, p.policy, options);
    BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
    expect_same(search.find({together[0].zones}).candidates, oracle.best[1], seed);
  }
}

// Each zone has the time that costs least there, worked out by itself; zones of one bowl may differ.
TEST(Search, EveryZoneHasItsBestTime) {
  int differ = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const Trial trial = random_trial(seed, 6, 2);
    const Prepared p(trial, 16);
    const FormulateOptions options;
    BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
    const ChoiceInput in{trial.head,
                         trial.shelf,
                         p.policy,
                         p.domain,
                         p.search_zones,
                         p.draws,
                         p.total_weight,
                         [&](int setting, int zone, double minutes) -> const ZoneTable& {
                           return search.table(setting, zone, minutes);
                         }};
    for (Candidate c : search.best({all_zones(p)})) {
      const Setting& setting = p.domain.settings[static_cast<size_t>(c.setting)].setting;
      const RecipeSet& set = p.domain.sets[static_cast<size_t>(c.set)];
      const Spectrum load = set.load(c.shares, setting.ratio);
      const std::vector<double> on = minutes_on(in, c, all_zones(p));
      double sum = 0;
      for (size_t z = 0; z < on.size(); ++z) {
        const SearchZone& zone = p.search_zones[z];
        auto cost = [&](double minutes) {
          const ZoneTable t = zone_table(*zone.draws, bare_chemistry(setting, minutes), p.draws);
          return exact_mean_loss(t, zone.price, load) + setting_price(setting, zone, t.exposure);
        };
        double least = 1e9;
        for (double minutes : times_within(setting, zone)) least = std::min(least, cost(minutes));
        EXPECT_NEAR(cost(on[z]), least, 1e-8) << seed;
        sum += zone.weight / p.total_weight * least;
      }
      EXPECT_NEAR(c.objective, sum, kRounding) << seed;
      EXPECT_NEAR(exact_objective(in, c, all_zones(p)), sum, 1e-8) << seed;
      differ += on[0] != on[1];
    }
  }
  EXPECT_GT(differ, 0);
}

// Minutes that are given are kept: the same lists as on a shelf whose range knows no other time.
TEST(Search, GivenMinutesAreKept) {
  for (unsigned seed : {2U, 5U, 7U, 14U}) {
    Trial trial = random_trial(seed, 8, 2);
    const Prepared free(trial, 16);
    trial.shelf.ranges[0].minutes = {28, 28, 28};
    const Prepared only(trial, 16);
    const FormulateOptions options;
    BowlSearch wide(free.domain, free.search_zones, free.draws, free.total_weight, free.policy, options);
    BowlSearch narrow(only.domain, only.search_zones, only.draws, only.total_weight, only.policy, options);
    const auto found = wide.best({.zones = {0, 1}, .minutes = {{0, 28}, {1, 28}}});
    expect_same(found, narrow.best({{0, 1}}), seed);
  }
}

TEST(Search, WhatIsAllowedIsObeyedAndStaysExact) {
  for (unsigned seed : {7U, 11U, 16U, 21U}) {
    Trial trial = random_trial(seed, 10);
    for (size_t i = 0; i < trial.shelf.products.size(); ++i)
      trial.shelf.products[i].price_per_g = 0.05 + 0.02 * static_cast<double>(i % 5);
    const Prepared p(trial, 32);
    const FormulateOptions options;
    for (const Allowed& allowed : {Allowed{.strength_below = 4, .tubes_most = 2}, Allowed{.price_most = 0.08},
                                   Allowed{.tubes_most = 1}, Allowed{.strength_below = 6, .price_most = 0.1}}) {
      BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
      const auto found = search.best({{0}, allowed});
      const ChoiceInput in{trial.head,
                           trial.shelf,
                           p.policy,
                           p.domain,
                           p.search_zones,
                           p.draws,
                           p.total_weight,
                           [&](int setting, int zone, double minutes) -> const ZoneTable& {
                             return search.table(setting, zone, minutes);
                           }};
      const RecipeSet& set = p.domain.sets[0];
      auto fits = [&](const Candidate& c) {
        return tubes(c.shares) <= allowed.tubes_most && set.price_per_g(c.shares) <= allowed.price_most + 1e-9 &&
               p.domain.settings[static_cast<size_t>(c.setting)].setting.developer_percent < allowed.strength_below;
      };
      double best = 1e9;
      for (size_t k = 0; k < p.domain.settings.size(); ++k)
        for (const Shares& s : set.shares())
          if (const Candidate c{0, 0, static_cast<int>(k), s}; fits(c))
            best = std::min(best, exact_objective(in, c, {0}));
      ASSERT_FALSE(found.empty());
      for (const Candidate& c : found) EXPECT_TRUE(fits(c)) << seed;
      EXPECT_NEAR(found[0].objective, best, kRounding) << seed;
    }
  }
}

TEST(Search, WhatIsNotWorthItIsLeftOut) {
  const Trial trial = random_trial(8, 10);
  const Prepared p(trial, 32);
  const FormulateOptions options;
  BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
  const auto all = search.best({{0}});
  ASSERT_GE(all.size(), 3U);
  const double worth = 0.5 * (all[0].objective + all[2].objective);
  const BowlList some = search.find({.zones = {0}, .worth = worth});
  EXPECT_TRUE(some.complete);
  for (const Candidate& c : some.candidates) EXPECT_LE(c.objective, worth);
  ASSERT_FALSE(some.candidates.empty());
  EXPECT_TRUE(same_recipe(some.candidates[0], all[0]));
  const BowlList none = search.find({.zones = {0}, .worth = all[0].objective - 0.1});
  EXPECT_TRUE(none.candidates.empty());
  EXPECT_LE(none.bound, all[0].objective);
}

// Stopped anywhere, it never claims more than is true: the bound lies below the optimum, and what it has above it.
TEST(Search, StoppedItProvesAGap) {
  int useful = 0;
  for (unsigned seed = 1; seed <= 30; ++seed) {
    const Trial trial = random_trial(seed, 20, 1 + static_cast<int>(seed % 2));
    const Prepared p(trial, 32);
    const FormulateOptions unhurried;
    BowlSearch whole(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, unhurried);
    const BowlList best = whole.find({all_zones(p)});
    ASSERT_TRUE(best.complete && !best.candidates.empty());
    double last = -1;
    for (int after : {0, 1, 10, 100, 300, 1000}) {
      FormulateOptions options;
      int asked = 0;
      options.cancelled = [&] { return asked++ >= after; };
      BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
      const BowlList found = search.find({all_zones(p)});
      EXPECT_EQ(search.counts().cancelled, !found.complete);
      EXPECT_LE(found.bound, best.candidates[0].objective + 1e-9) << seed << " after " << after;
      EXPECT_GE(found.bound, last - 2 * kRounding) << seed;  // more work proves no less
      last = found.bound;
      if (found.candidates.empty()) continue;
      EXPECT_GE(found.candidates[0].objective, best.candidates[0].objective - kRounding) << seed;
      if (!found.complete && found.bound > 0.5 * best.candidates[0].objective) ++useful;
    }
  }
  EXPECT_GT(useful, 0);  // the bound says something before the end; by choice
}

// What earlier calls left behind changes the work of later ones, not what they find.
TEST(Search, EarlierCallsDoNotChangeLaterOnes) {
  long long alone = 0, after = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const Trial trial = random_trial(seed, 12, 3);
    const Prepared p(trial, 32);
    const FormulateOptions options;
    BowlSearch used(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
    for (int zone : {0, 1, 2}) used.find({.zones = {zone}, .keep = 1});
    used.find({{0, 2}});
    for (const std::vector<int>& zones : {std::vector<int>{0, 1, 2}, {1, 2}, {0}}) {
      BowlSearch fresh(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
      const long long before = used.counts().boxes;
      const BowlList a = fresh.find({zones}), b = used.find({zones});
      alone += fresh.counts().boxes, after += used.counts().boxes - before;
      expect_same(b.candidates, a.candidates, seed);
      EXPECT_NEAR(a.bound, b.bound, 1e-9) << seed;
    }
  }
  EXPECT_LT(after, alone);  // and it does help
}

// Whoever does the work, in whatever order: the same lists, the same counts.
TEST(Search, ThreadsDoNotChangeIt) {
  for (unsigned seed : {3U, 4U, 12U}) {
    const Trial trial = random_trial(seed, 14, 2);
    const Prepared p(trial, 64);
    auto run = [&](const ParallelFor& parallel) {
      FormulateOptions options;
      options.parallel = parallel;
      BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
      auto list = search.find({all_zones(p)});
      return std::make_pair(std::move(list), search.counts());
    };
    const auto serial = run(serial_for);
    const auto backwards = run([](int count, const std::function<void(int, int)>& body) {
      for (int i = count; i-- > 0;) body(i, i + 1);
    });
    const auto halves = run([](int count, const std::function<void(int, int)>& body) {
      body(count / 2, count);
      body(0, count / 2);
    });
    for (const auto* other : {&backwards, &halves}) {
      EXPECT_EQ(other->second.boxes, serial.second.boxes);
      EXPECT_EQ(other->second.bounds, serial.second.bounds);
      EXPECT_EQ(other->second.evaluations, serial.second.evaluations);
      ASSERT_EQ(other->first.candidates.size(), serial.first.candidates.size());
      for (size_t i = 0; i < serial.first.candidates.size(); ++i) {
        EXPECT_EQ(other->first.candidates[i].objective, serial.first.candidates[i].objective);
        EXPECT_TRUE(same_recipe(other->first.candidates[i], serial.first.candidates[i]));
      }
    }
  }
}

}  // namespace
}  // namespace strandline
