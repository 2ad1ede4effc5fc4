#include "search/branch.h"

#include <set>

#include "engine/tests/formulate/random_trial.h"

namespace strandline {
namespace {

using namespace testing_support;

auto key(const Shares& s) {
  return std::make_tuple(s.product[0], s.product[1], s.product[2], s.eighths[0], s.eighths[1], s.eighths[2]);
}

// Dividing to the end meets every recipe of the domain exactly once, and none else; prices never fall on the way.
TEST(Branch, HoldsEveryRecipeOnce) {
  for (unsigned seed = 1; seed <= 24; ++seed) {
    const Trial trial = random_trial(seed, 1 + static_cast<int>(seed % 9));
    const RecipeSet set(trial.shelf.ranges[0], trial.shelf, {});
    if (set.products().empty()) continue;
    const Ground ground{&set, shade_tree(set)};
    std::set<decltype(key(Shares{}))> met;
    std::vector<Branch> left;
    for (const Branch& b : undivided(0))
      if (holds_recipes(ground, b)) left.push_back(b);
    while (!left.empty()) {
      const Branch b = left.back();
      left.pop_back();
      const double per_g = least_price_per_g(ground, b);
      if (single(ground, b)) {
        const Shares s = recipe_of(ground, b);
        EXPECT_TRUE(met.insert(key(s)).second) << seed;
        EXPECT_NEAR(per_g, set.price_per_g(s), 1e-12);
        continue;
      }
      const int part = widest_part(ground, b);
      for (int child : {ground.node(b, part).left, ground.node(b, part).right}) {
        Branch c = b;
        c.node[part] = child;
        if (!holds_recipes(ground, c)) continue;
        EXPECT_GE(least_price_per_g(ground, c), per_g - 1e-12) << seed;
        left.push_back(c);
      }
    }
    const std::vector<Shares> all = set.shares();
    EXPECT_EQ(met.size(), all.size()) << seed;
    for (const Shares& s : all) EXPECT_EQ(met.count(key(s)), 1U) << seed;
    EXPECT_EQ(static_cast<long long>(all.size()), set.size()) << seed;
  }
}

}  // namespace
}  // namespace strandline
