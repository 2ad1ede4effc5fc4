#include "formulate/bound.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "engine/tests/support.h"
#include "formulate/choose.h"
#include "formulate/habits.h"

namespace strandline {
namespace {

using namespace testing_support;

// A head, a wish and a shelf at random, extreme ones among them.
struct Trial {
  Head head;
  Shelf shelf;
  std::vector<Target> targets;
  double doubt = 1;
};

Spectrum random_swatch(std::mt19937_64& random, double strength) {
  std::uniform_real_distribution<double> u(0, 1);
  Spectrum tau;
  const double centre = 400 + 300 * u(random), width = 30 + 150 * u(random), flat = 0.3 * u(random);
  for (int b = 0; b < kBands; ++b) {
    const double off = (band_nm(b) - centre) / width;
    tau[static_cast<size_t>(b)] = strength * (flat + std::exp(-off * off)) * std::exp(0.3 * (u(random) - 0.5));
  }
  return reflectance(tau);
}

Trial random_trial(unsigned seed, int shades) {
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> u(0, 1);
  Trial t;
  const double doubts[] = {0, 1, 1, 2, 4};
  t.doubt = doubts[seed % 5];
  const double whites[] = {0, 0.95, 1, 0, 0};
  const double white_share = seed % 5 < 3 ? whites[seed % 3] : u(random);
  Span s = span("regrowth", 0, 1 + 3 * u(random), white_share, 1 + 9 * u(random));
  if (white_share >= 1) s.populations = {white(1)};
  s.porosity = {3 * u(random), 0.3};
  s.resistance = u(random);
  t.head.areas.push_back(area("crown", AreaKind::crown, 200, {s}));
  t.shelf = small_shelf(0);
  t.shelf.ranges[0].developer_percents = {3, 6};
  for (int i = 0; i < shades; ++i) {
    Product p;
    p.id = "shade-" + std::to_string(i);
    p.range = "tint";
    p.name = p.id;
    p.level = 1 + std::floor(10 * u(random));
    p.tone = static_cast<Tone>(static_cast<int>(8 * u(random)) % kTones);
    p.swatch = random_swatch(random, i == 0 ? 0.001 : std::exp(3 * u(random) - 2.5));
    p.stock_g = 500;
    p.price_per_g = 0.1;
    t.shelf.products.push_back(p);
  }
  ZoneAim wish;
  wish.zone = "*";
  if (seed % 3 == 0)
    wish.lab = Lab{15 + 70 * u(random), -30 + 90 * u(random), -45 + 110 * u(random)};
  else
    wish.level = 1 + 9 * u(random), wish.tone = static_cast<Tone>(static_cast<int>(8 * u(random)) % kTones);
  t.targets = *aim(t.head, {wish}, t.shelf);
  return t;
}

struct Prepared {
  explicit Prepared(const Trial& trial, int scenarios)
      : draws(draw(trial.head, scenarios, trial.doubt)), domain(strandline::domain(trial.shelf, policy)) {
    const auto refs = zones(trial.head);
    for (size_t i = 0; i < refs.size(); ++i) {
      SearchZone z;
      z.area = refs[i].area, z.span = refs[i].span, z.draws = &draws.zones[i], z.target = &trial.targets[i];
      z.price = zone_loss(trial.targets[i], 1);
      search_zones.push_back(z);
    }
  }
  FormulaPolicy policy;
  Draws draws;
  Domain domain;
  std::vector<SearchZone> search_zones;
};

// The proof attacked: on heads, shelves and wishes at random, no bound is above what it bounds.
TEST(Bound, IsNeverAboveTheMeanLoss) {
  double ratio_sum = 0;
  long long seen = 0;
  for (unsigned seed = 1; seed <= 120; ++seed) {
    const Trial trial = random_trial(seed, 8);
    const Prepared p(trial, 64);
    std::mt19937_64 random(1000 + seed);
    for (const Domain::OneSetting& one : p.domain.settings) {
      const RecipeSet& set = p.domain.sets[static_cast<size_t>(one.set)];
      const ZoneTable table = zone_table(p.draws.zones[0], bare_chemistry(one.setting), p.draws);
      const BoundTable bound = bound_table(table, static_cast<float>(1.001 * set.load_most(one.setting.ratio)));
      EXPECT_TRUE(bound.certified) << seed;
      std::vector<float> loads(kBands);
      for (int i = 0; i < 60; ++i) {
        const Shares& s = set.shares()[random() % set.shares().size()];
        const Spectrum load = set.load(s, one.setting.ratio);
        std::copy(load.begin(), load.end(), loads.begin());
        float low = 0;
        lower_bounds(bound, p.search_zones[0].price, loads.data(), 1, &low);
        const double exact = exact_mean_loss(table, p.search_zones[0].price, load);
        ASSERT_LE(static_cast<double>(low), exact) << "seed " << seed << " setting " << one.setting.developer_percent;
        if (exact > 0.05) ratio_sum += static_cast<double>(low) / exact, ++seen;
      }
    }
  }
  EXPECT_GT(ratio_sum / static_cast<double>(seen), 0.8);  // tight enough to be of use; by choice
}

// Nodes and cells agree: a load lies between the ends of its own cell.
TEST(Bound, CellsHoldTheirLoads) {
  std::mt19937_64 random(5);
  std::uniform_real_distribution<float> u(0, 1);
  for (int i = 0; i < 100000; ++i) {
    const float load = std::exp(12 * u(random) - 8) - std::exp(-8.0F);
    const int cell = load_cell(load);
    EXPECT_GE(load, load_node(cell) - 1e-7F);
    EXPECT_LE(load, load_node(cell + 1) + 1e-6F * load);
  }
  EXPECT_EQ(load_cell(0), 0);
}

// Two independent routes: bounding and full enumeration find the same recipes.
TEST(Search, FindsWhatEnumerationFinds) {
  long long looked = 0, evaluated = 0;
  for (unsigned seed = 1; seed <= 500; ++seed) {
    const Trial trial = random_trial(seed, seed % 25 == 0 ? 16 : 6);
    const Prepared p(trial, seed % 25 == 0 ? 64 : 32);
    if (p.domain.settings.empty()) continue;
    const FormulateOptions options;
    const auto groups = group_zones(p.search_zones);
    const Enumeration oracle = enumerate(p.domain, p.search_zones, groups, p.draws, 1, p.policy, options);
    BowlSearch search(p.domain, p.search_zones, p.draws, 1, p.policy, options);
    const std::vector<Candidate> found = search.best({{0}, {}, true});
    const std::vector<Candidate>& all = oracle.best[1];
    const size_t count = std::min<size_t>(kKept, all.size());
    ASSERT_GE(found.size(), count) << seed;
    for (size_t i = 0; i < count; ++i) {
      EXPECT_NEAR(found[i].objective, all[i].objective, 1e-6) << seed << " place " << i;
      // The same recipe, where no other lies within the rounding of a sum.
      const auto same = [&](const Candidate& c) {
        return c.setting == all[i].setting &&
               std::equal(c.shares.product, c.shares.product + 3, all[i].shares.product) &&
               std::equal(c.shares.eighths, c.shares.eighths + 3, all[i].shares.eighths);
      };
      EXPECT_TRUE(
          std::any_of(found.begin(), found.end(),
                      [&](const Candidate& c) { return same(c) && std::abs(c.objective - all[i].objective) < 1e-9; }))
          << seed << " place " << i;
    }
    looked += search.counts().recipes * p.draws.zones[0].scenarios.size();
    evaluated += search.counts().evaluations;
  }
  EXPECT_LT(evaluated, looked / 3);  // it does leave work out, on the smallest shelves too; by choice
}

TEST(Search, AFilterIsObeyedAndStaysExact) {
  const Trial trial = random_trial(7, 10);
  const Prepared p(trial, 32);
  const FormulateOptions options;
  BowlSearch search(p.domain, p.search_zones, p.draws, 1, p.policy, options);
  const Allowed weak = [&](const Candidate& c) {
    return tubes(c.shares) <= 2 && p.domain.settings[static_cast<size_t>(c.setting)].setting.developer_percent < 4;
  };
  const auto found = search.best({{0}, weak, true});
  ASSERT_FALSE(found.empty());
  double best = 1e9;
  for (size_t k = 0; k < p.domain.settings.size(); ++k)
    for (const Shares& s : p.domain.sets[0].shares()) {
      const Candidate c{0, 0, static_cast<int>(k), s};
      if (!weak(c)) continue;
      const ChoiceInput in{trial.head,
                           trial.shelf,
                           p.policy,
                           p.domain,
                           p.search_zones,
                           p.draws,
                           1,
                           [&](int setting, int zone) -> const ZoneTable& { return search.table(setting, zone); }};
      best = std::min(best, exact_objective(in, c, {0}));
    }
  EXPECT_TRUE(weak(found[0]));
  EXPECT_NEAR(found[0].objective, best, kRounding);
}

TEST(Search, SaysWhenItWasStopped) {
  const Trial trial = random_trial(4, 8);
  const Prepared p(trial, 32);
  FormulateOptions options;
  options.cancelled = [] { return true; };
  BowlSearch search(p.domain, p.search_zones, p.draws, 1, p.policy, options);
  search.best({{0}, {}, true});
  EXPECT_TRUE(search.counts().cancelled);
}

}  // namespace
}  // namespace strandline
