#include "search/bound.h"

#include "engine/tests/formulate/random_trial.h"

namespace strandline {
namespace {

using namespace testing_support;

// The proof attacked: on heads, shelves and wishes at random, no bound is above what it bounds.
TEST(Bound, IsNeverAboveTheMeanLoss) {
  double ratio_sum = 0;
  long long seen = 0, attacks = 0;
  for (unsigned seed = 1; seed <= 150; ++seed) {
    const Trial trial = random_trial(seed, 8);
    const Prepared p(trial, 64);
    std::mt19937_64 random(1000 + seed);
    for (const Domain::OneSetting& one : p.domain.settings) {
      const RecipeSet& set = p.domain.sets[static_cast<size_t>(one.set)];
      const std::vector<Shares> all = set.shares();
      const ZoneTable table = zone_table(p.draws.zones[0], bare_chemistry(one.setting, one.setting.minutes), p.draws);
      const BoundTable bound =
          bound_table(table, p.search_zones[0].price, static_cast<float>(1.001 * set.load_most(one.setting.ratio)));
      EXPECT_TRUE(bound.certified) << seed;
      constexpr int kMany = 3500;
      std::vector<float> loads(kMany * kBands), lows(kMany), losses(kMany);
      std::vector<Spectrum> drawn;
      for (size_t i = 0; i < kMany; ++i) {
        drawn.push_back(set.load(all[random() % all.size()], one.setting.ratio));
        std::copy(drawn[i].begin(), drawn[i].end(), loads.begin() + static_cast<long>(i * kBands));
      }
      lower_bounds(bound, p.search_zones[0].price, loads.data(), kMany, lows.data());
      mean_losses(table, p.search_zones[0].price, loads.data(), kMany, losses.data());
      attacks += kMany;
      for (size_t i = 0; i < kMany; ++i) {
        // Single precision for all of them, double for some.
        ASSERT_LE(lows[i], losses[i] + static_cast<float>(kRounding / 2)) << "seed " << seed;
        if (i % 50 != 0) continue;
        const Spectrum& load = drawn[i];
        const float low = lows[i];
        const double exact = exact_mean_loss(table, p.search_zones[0].price, load);
        ASSERT_LE(static_cast<double>(low), exact) << "seed " << seed << " setting " << one.setting.developer_percent;
        if (exact > 0.05) ratio_sum += static_cast<double>(low) / exact, ++seen;
      }
    }
  }
  EXPECT_GT(attacks, 1000000);
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

}  // namespace
}  // namespace strandline
