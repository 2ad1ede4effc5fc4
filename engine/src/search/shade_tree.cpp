#include "search/shade_tree.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "mix/habits.h"

namespace strandline {
namespace {

ShadeNode enclosing(const RecipeSet& set, const std::vector<short>& order, int begin, int end) {
  ShadeNode n;
  n.begin = begin;
  n.end = end;
  n.level_low = level_highest, n.level_high = level_lowest;
  Spectrum low, high;
  low.fill(1e9), high.fill(0);
  n.total_low = n.price_low = 1e9;
  for (int i = begin; i < end; ++i) {
    const size_t product = static_cast<size_t>(order[static_cast<size_t>(i)]);
    const Spectrum& offer = set.offers()[product];
    const Product& p = *set.products()[product];
    for (size_t b = 0; b < kBands; ++b) low[b] = std::min(low[b], offer[b]), high[b] = std::max(high[b], offer[b]);
    n.total_low = std::min(n.total_low, mean(offer));
    n.total_high = std::max(n.total_high, mean(offer));
    n.price_low = std::min(n.price_low, p.price_per_g);
    n.stock_high = std::max(n.stock_high, p.stock_g);
    if (counts_for_levels(p))
      n.level_low = std::min(n.level_low, p.level), n.level_high = std::max(n.level_high, p.level);
    else
      n.levelled = false;
    n.all_correctors = n.all_correctors && p.cls == ProductClass::corrector;
  }
  for (size_t b = 0; b < kBands; ++b) {
    n.low[b] = std::nextafter(static_cast<float>(low[b]), 0.0F);
    n.high[b] = std::nextafter(static_cast<float>(high[b]), 1e9F);
    n.spread += high[b] - low[b];
  }
  return n;
}

// The band where the shades differ most in what they let through. Red beyond 650 nm is hardly seen.
size_t most_different(const ShadeNode& n) {
  constexpr float kFibre = 0.15F;  // by choice: about what a light fibre has of its own
  constexpr size_t kSeen = 25;
  size_t widest = 0;
  float most = -1;
  for (size_t b = 0; b < kSeen; ++b)
    if (const float ratio = (kFibre + n.high[b]) / (kFibre + n.low[b]); ratio > most) most = ratio, widest = b;
  return widest;
}

int grow(ShadeTree& tree, const RecipeSet& set, int begin, int end) {
  const int index = static_cast<int>(tree.nodes.size());
  tree.nodes.push_back(enclosing(set, tree.order, begin, end));
  if (end - begin == 1) return index;
  const size_t band = most_different(tree.nodes.back());
  std::sort(tree.order.begin() + begin, tree.order.begin() + end, [&](short a, short b) {
    const double x = set.offers()[static_cast<size_t>(a)][band], y = set.offers()[static_cast<size_t>(b)][band];
    return x != y ? x < y : a < b;
  });
  const int middle = begin + (end - begin) / 2;
  const int left = grow(tree, set, begin, middle), right = grow(tree, set, middle, end);
  tree.nodes[static_cast<size_t>(index)].left = left;
  tree.nodes[static_cast<size_t>(index)].right = right;
  return index;
}

}  // namespace

ShadeTree shade_tree(const RecipeSet& set) {
  ShadeTree tree;
  tree.order.resize(set.products().size());
  std::iota(tree.order.begin(), tree.order.end(), static_cast<short>(0));
  grow(tree, set, 0, static_cast<int>(tree.order.size()));
  return tree;
}

}  // namespace strandline
