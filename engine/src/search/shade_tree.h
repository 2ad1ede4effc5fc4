// The shades of one range, halved again and again into ever more alike ones, so that a search can rule out many
// recipes at once.
#pragma once

#include <vector>

#include "mix/recipes.h"

namespace strandline {

inline constexpr int kBoxBands = 32;  // kBands and one that stays 0, for whole vectors

// Some shades, and between what ends everything of them lies.
struct ShadeNode {
  int begin = 0, end = 0;     // places in ShadeTree::order
  int left = -1, right = -1;  // indices of nodes; -1 for a single shade
  float low[kBoxBands] = {};  // of what one part offers (optical depth), rounded outwards
  float high[kBoxBands] = {};
  double total_low = 0, total_high = 0;  // of its mean over the bands
  double spread = 0;                     // Σ high − low
  double level_low = 0, level_high = 0;
  double price_low = 0;   // per g
  double stock_high = 0;  // g
  bool levelled = true;   // every shade counts for the distance of levels
  bool all_correctors = true;
  bool single() const { return left < 0; }
};

struct ShadeTree {
  std::vector<short> order;      // product indices of the RecipeSet
  std::vector<ShadeNode> nodes;  // the first is all
};

// Requires at least one product.
ShadeTree shade_tree(const RecipeSet& set);

}  // namespace strandline
