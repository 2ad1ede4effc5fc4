#include "formulate/choose.h"

#include <hwy/highway.h>

#include "engine/oracle/enumerate.h"
#include "engine/tests/formulate/random_trial.h"
#include "formulate/partition.h"

namespace strandline {
namespace {

using namespace testing_support;

// Tubes of very different prices, some nearly empty, one that the law allows only a little of.
Trial priced(Trial t, unsigned seed) {
  for (size_t i = 0; i < t.shelf.products.size(); ++i) {
    Product& p = t.shelf.products[i];
    p.price_per_g = 0.1 + 1.5 * static_cast<double>((3 * i + seed) % 7);
    if ((i + seed) % 3 == 0) p.stock_g = 4 + static_cast<double>(5 * i % 23);
    p.fully_declared = true;
    // Reg. (EC) 1223/2009 Annex III entry 22: resorcinol, at most 1.25 % of what is on the head (oxidative, hair).
    if ((i + seed) % 4 == 1 && p.swatch)
      p.declared = {{.cas = "108-46-3", .entry = "22", .name = "", .percent = 4, .basis = ""}};
  }
  return t;
}

// A head of a few zones, every zone a group of its own, with what leaving it costs.
struct Whole {
  explicit Whole(unsigned seed)
      : trial(priced(random_trial(seed, 6, 2 + static_cast<int>(seed % 2)), seed)), p(trial, 16) {
    for (size_t z = 0; z < p.search_zones.size(); ++z) {
      p.search_zones[z].leave_loss = 0.6 * static_cast<double>(1 + (seed + z) % 8);
      groups.push_back({{static_cast<int>(z)}, true});
    }
  }
  ChoiceInput input(BowlSearch& search) const {
    return {trial.head,
            trial.shelf,
            p.policy,
            p.domain,
            p.search_zones,
            p.draws,
            p.total_weight,
            [&](int setting, int zone, double minutes) -> const ZoneTable& {
              return search.table(setting, zone, minutes);
            }};
  }
  Choice choose(const FormulateOptions& options, int bowls_most) const {
    BowlSearch search(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, options);
    const ChoiceInput in = input(search);
    return Chooser(in, groups, [&](const Wish& wish) { return search.find(wish); }).choose(bowls_most);
  }

  Trial trial;
  Prepared p;
  std::vector<ZoneGroup> groups;
};

// The lazy search of covers against every set of zones enumerated in full.
TEST(Choose, FindsTheCheapestCover) {
  int shared = 0, left = 0, dear = 0, unlawful = 0;
  constexpr unsigned kSeeds = kSlowed ? 10 : 60;
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    const Whole whole(seed);
    const Prepared& p = whole.p;
    if (p.domain.settings.empty()) continue;
    const FormulateOptions unhurried;
    BowlSearch tables(p.domain, p.search_zones, p.draws, p.total_weight, p.policy, unhurried);
    const ChoiceInput in = whole.input(tables);
    std::vector<std::vector<int>> zones(size_t{1} << whole.groups.size());
    std::vector<MixGrams> grams(zones.size());
    for (size_t mask = 1; mask < zones.size(); ++mask) {
      for (size_t g = 0; g < whole.groups.size(); ++g)
        if (mask >> g & 1) zones[mask].push_back(static_cast<int>(g));
      grams[mask] = bowl_wish(in, zones[mask]).grams;
    }
    auto oracle = [&](const std::vector<MixGrams>& poured) {
      return enumerate(p.domain, p.search_zones, whole.groups, p.draws, p.total_weight, p.policy, {}, poured);
    };
    const Enumeration all = oracle(grams), bare = seed <= kSeeds / 3 ? oracle({}) : all;
    std::vector<double> best(all.best.size(), 0), leave;
    for (const SearchZone& z : p.search_zones) leave.push_back(z.weight / p.total_weight * z.leave_loss);
    for (size_t mask = 1; mask < best.size(); ++mask) {
      const auto list = exact_list(in, all.best[mask], zones[mask]);
      best[mask] = list.empty() ? 1e9 : list[0].objective;
      for (int a : zones[mask])
        for (int b : zones[mask])
          if (apart_by_white(p.search_zones[static_cast<size_t>(a)], p.search_zones[static_cast<size_t>(b)]))
            best[mask] = 1e9;  // never one bowl
      // What a list of recipes alone, paid and judged afterwards, would have missed.
      const auto after = exact_list(in, bare.best[mask], zones[mask]);
      if (!list.empty() && !after.empty()) dear += after[0].objective > list[0].objective + 1e-6;
      unlawful += after.size() < bare.best[mask].size();
      unlawful += !list.empty() && after.empty();
    }
    for (int most : {1, 4}) {
      double cheapest = 1e9;
      for (const Cover& c : covers(best, leave, most, Constants{}.price_bowl)) cheapest = std::min(cheapest, c.cost);
      const Choice found = whole.choose({}, most);
      EXPECT_NEAR(found.objective, cheapest, 1e-9) << seed;
      EXPECT_NEAR(found.bound, cheapest, 1e-8) << seed;
      size_t served = 0;
      for (const Chosen& bowl : found.bowls) served += bowl.zones.size(), shared += bowl.zones.size() > 1;
      left += served < p.search_zones.size();
    }
  }
  // The heads are not all of one sort.
  EXPECT_GT(shared, kSlowed ? 0 : 3);
  EXPECT_GT(left, kSlowed ? 0 : 5);
  if (!kSlowed) EXPECT_GT(dear, 3);  // three heads may hold none
  EXPECT_GT(unlawful, kSlowed ? 0 : 5);
}

// Whatever vectors the processor has: the same bowls.
TEST(Choose, TheProcessorDoesNotChangeIt) {
  int compared = 0;
  const std::vector<unsigned> seeds = kSlowed ? std::vector<unsigned>{2} : std::vector<unsigned>{2, 5, 9, 14, 23};
  for (unsigned seed : seeds) {
    const Whole whole(seed);
    if (whole.p.domain.settings.empty()) continue;
    const Choice here = whole.choose({}, 4);
    for (int64_t left = hwy::SupportedTargets() & HWY_TARGETS; left != 0; left &= left - 1) {
      const int64_t target = left & -left;
      hwy::SetSupportedTargetsForTest(target);
      hwy::GetChosenTarget().DeInit();
      const Choice there = whole.choose({}, 4);
      hwy::SetSupportedTargetsForTest(0);
      hwy::GetChosenTarget().DeInit();
      ASSERT_EQ(there.bowls.size(), here.bowls.size()) << seed << ' ' << hwy::TargetName(target);
      for (size_t i = 0; i < here.bowls.size(); ++i) {
        EXPECT_EQ(there.bowls[i].zones, here.bowls[i].zones);
        EXPECT_TRUE(same_recipe(there.bowls[i].best, here.bowls[i].best)) << seed << ' ' << hwy::TargetName(target);
      }
      EXPECT_NEAR(there.objective, here.objective, 1e-9);
      ++compared;
    }
  }
  EXPECT_GT(compared, 0);
}

// Stopped anywhere: what it proves lies below the cheapest cover, what it has above.
TEST(Choose, StoppedItProvesAGap) {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const Whole whole(seed);
    if (whole.p.domain.settings.empty()) continue;
    const Choice best = whole.choose({}, 4);
    for (int after : {0, 3, 10, 30, 60, 100, 200}) {
      FormulateOptions options;
      int asked = 0;
      options.cancelled = [&] { return asked++ >= after; };
      const Choice some = whole.choose(options, 4);
      EXPECT_LE(some.bound, best.objective + 1e-9) << seed << " after " << after;
      EXPECT_GE(some.objective, best.objective - 1e-9) << seed << " after " << after;
      EXPECT_GE(some.objective, some.bound - 1e-9) << seed << " after " << after;
    }
  }
}

}  // namespace
}  // namespace strandline
