#include "search/box_bound.h"

#include "engine/tests/formulate/random_trial.h"
#include "search/branch.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr int kSamples = kSlowed ? 20 : 2400;  // more than a million bounds in all

// A branch at random, and a single recipe of it.
struct Drawn {
  Branch branch, recipe;
};

Drawn draw_branch(const Ground& ground, int setting, std::mt19937_64& random) {
  const std::vector<Branch> all = undivided(setting);
  Drawn d;
  d.branch = d.recipe = all[random() % all.size()];
  for (int part = 0; part < d.branch.parts(); ++part) {
    // Down the tree to any depth, and on to a single shade.
    int node = 0;
    for (bool own = true;; own = own && random() % 3 != 0) {
      if (own) d.branch.node[part] = node;
      d.recipe.node[part] = node;
      const ShadeNode& n = ground.tree.nodes[static_cast<size_t>(node)];
      if (n.single()) break;
      node = random() % 2 ? n.left : n.right;
    }
  }
  return d;
}

// The proof attacked: no bound of a box is above the loss of anything in it, and every recipe lies in its box.
TEST(BoxBound, IsNeverAboveAnyRecipeInTheBox) {
  long long seen = 0;
  double tightness = 0;
  for (unsigned seed = 1; seed <= 120; ++seed) {
    const Trial trial = random_trial(seed, 12);
    const Prepared p(trial, 64);
    std::mt19937_64 random(2000 + seed);
    for (size_t k = 0; k < p.domain.settings.size(); ++k) {
      const Domain::OneSetting& one = p.domain.settings[k];
      const RecipeSet& set = p.domain.sets[0];
      const Ground ground{&set, shade_tree(set)};
      const ZoneTable table = zone_table(p.draws.zones[0], bare_chemistry(one.setting, one.setting.minutes), p.draws);
      const BoxTable box =
          box_table(table, p.search_zones[0].price, static_cast<float>(1.001 * set.load_most(one.setting.ratio)));
      EXPECT_TRUE(box.certified) << seed;
      for (int i = 0; i < kSamples; ++i) {
        const Drawn d = draw_branch(ground, static_cast<int>(k), random);
        if (recipe_of(ground, d.recipe).product[0] == recipe_of(ground, d.recipe).product[1] && d.recipe.parts() > 1)
          continue;
        float low[2 * kBoxBands], high[2 * kBoxBands], found[2];
        box_of(ground, d.branch, one.setting.ratio, low, high);
        box_of(ground, d.recipe, one.setting.ratio, low + kBoxBands, high + kBoxBands);
        box_bounds(box, p.search_zones[0].price, low, high, 2, found);
        const Spectrum load = set.load(recipe_of(ground, d.recipe), one.setting.ratio);
        for (size_t b = 0; b < kBands; ++b)
          for (size_t of : {size_t{0}, size_t{kBoxBands}}) {
            ASSERT_LE(static_cast<double>(low[of + b]), load[b] * (1 + 1e-9) + 1e-12) << seed;
            ASSERT_GE(static_cast<double>(high[of + b]), load[b] * (1 - 1e-9) - 1e-12) << seed;
          }
        const double exact = exact_mean_loss(table, p.search_zones[0].price, load);
        ASSERT_LE(static_cast<double>(found[0]), exact) << "seed " << seed;
        ASSERT_LE(static_cast<double>(found[1]), exact) << "seed " << seed;
        if (exact > 0.5) tightness += static_cast<double>(found[1]) / exact, ++seen;
      }
    }
  }
  EXPECT_GT(seen, 100 * kSamples);
  EXPECT_GT(tightness / static_cast<double>(seen), 0.5);  // of use, for a single recipe; by choice
}

}  // namespace
}  // namespace strandline
