#include "search/branch.h"

#include <algorithm>

#include "strandline/treatment.h"

namespace strandline {

std::vector<Branch> undivided(int setting) {
  std::vector<Branch> all;
  constexpr signed char kShares[kWays][3] = {{8, 0, 0}, {7, 1, 0}, {6, 2, 0}, {5, 3, 0}, {4, 4, 0},
                                             {6, 1, 1}, {5, 2, 1}, {4, 3, 1}, {4, 2, 2}, {3, 3, 2}};
  static_assert(kEighths == 8);
  for (const auto& shares : kShares) {
    Branch b;
    b.setting = setting;
    std::copy(std::begin(shares), std::end(shares), b.eighths);
    b.way = static_cast<signed char>(all.size());
    all.push_back(b);
  }
  return all;
}

bool holds_recipes(const Ground& g, const Branch& b) {
  int correctors = 0;
  const int parts = b.parts();
  for (int i = 0; i < parts; ++i) {
    const ShadeNode& own = g.node(b, i);
    if (own.all_correctors) correctors += b.eighths[i];
    for (int j = i + 1; j < parts; ++j) {
      const ShadeNode& other = g.node(b, j);
      // Of two parts with the same share the first comes earlier in the tree's order.
      if (b.eighths[i] == b.eighths[j] && own.begin >= other.end - 1) return false;
      if (own.single() && other.single() && own.begin == other.begin) return false;
      if (own.levelled && other.levelled &&
          std::max(own.level_low - other.level_high, other.level_low - own.level_high) >
              g.set->levels_apart_max() + 1e-9)
        return false;
    }
  }
  if (correctors > g.set->range().corrector_max_share * kEighths + 1e-9) return false;
  return !single(g, b) || g.set->allowed(recipe_of(g, b));
}

double least_price_per_g(const Ground& g, const Branch& b) {
  double price = 0;
  for (int i = 0; i < b.parts(); ++i) price += b.eighths[i] * g.node(b, i).price_low / kEighths;
  return price;
}

bool single(const Ground& g, const Branch& b) {
  for (int i = 0; i < b.parts(); ++i)
    if (!g.node(b, i).single()) return false;
  return true;
}

Shares recipe_of(const Ground& g, const Branch& b) {
  Shares s;
  const int parts = b.parts();
  int order[3] = {0, 1, 2};
  auto product = [&](int i) { return g.tree.order[static_cast<size_t>(g.node(b, i).begin)]; };
  std::sort(order, order + parts, [&](int i, int j) { return product(i) < product(j); });
  for (int i = 0; i < parts; ++i) {
    s.product[i] = product(order[i]);
    s.eighths[i] = b.eighths[order[i]];
  }
  return s;
}

int widest_part(const Ground& g, const Branch& b) {
  int widest = 0;
  double most = -1;
  for (int i = 0; i < b.parts(); ++i) {
    const ShadeNode& n = g.node(b, i);
    if (!n.single() && b.eighths[i] * n.spread > most) most = b.eighths[i] * n.spread, widest = i;
  }
  return widest;
}

void box_of(const Ground& g, const Branch& b, double ratio, float* low, float* high) {
  constexpr float kOut = 2e-6F;  // rounding of the sums below, outwards
  const double factor = dilution(g.set->range(), ratio) / kEighths;
  double total_low = 0, total_high = 0;
  float share[3] = {0, 0, 0};
  const ShadeNode* node[3] = {&g.tree.nodes[0], &g.tree.nodes[0], &g.tree.nodes[0]};
  for (int i = 0; i < b.parts(); ++i) {
    node[i] = &g.node(b, i);
    total_low += factor * b.eighths[i] * node[i]->total_low;
    total_high += factor * b.eighths[i] * node[i]->total_high;
    share[i] = static_cast<float>(factor * b.eighths[i]);
  }
  // Capacity lowers every band the more, the larger the total.
  const float least = static_cast<float>(capacity_left(total_high)) * (1 - kOut);
  const float most = static_cast<float>(capacity_left(total_low)) * (1 + kOut);
  for (int k = 0; k < kBoxBands; ++k) {
    low[k] = least * (share[0] * node[0]->low[k] + share[1] * node[1]->low[k] + share[2] * node[2]->low[k]);
    high[k] = most * (share[0] * node[0]->high[k] + share[1] * node[1]->high[k] + share[2] * node[2]->high[k]);
  }
}

}  // namespace strandline
