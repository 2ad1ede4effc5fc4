// Every recipe of the certified domain for one range: up to three products, shares in eighths.
#pragma once

#include <vector>

#include "strandline/formulate.h"
#include "strandline/treatment.h"

namespace strandline {

inline constexpr int kEighths = 8;

// Shares by index into `RecipeSet::products`; unused places have 0 eighths.
struct Shares {
  short product[3] = {0, 0, 0};
  signed char eighths[3] = {0, 0, 0};
};

class RecipeSet {
 public:
  // Products of the range that can carry a colour and are in stock; correctors and clear among them.
  RecipeSet(const Range& range, const Shelf& shelf, const FormulaPolicy& policy);

  // Recipes of one and two products first: `few()` of them.
  const std::vector<Shares>& shares() const { return shares_; }
  int few() const { return few_; }
  const std::vector<const Product*>& products() const { return products_; }
  // The largest load any recipe can have in any band at this ratio.
  double load_most(double ratio) const;
  // Dye load of a recipe at this ratio (M8), capacity included.
  Spectrum load(const Shares& shares, double ratio) const;
  double price_per_g(const Shares& shares) const;    // of the colour part
  double natural_share(const Shares& shares) const;  // natural shades with a level, 0…1

 private:
  bool allowed(const Shares& s) const;

  const Range& range_;
  std::vector<const Product*> products_;
  std::vector<Spectrum> offers_;
  std::vector<Shares> shares_;
  int few_ = 0;
};

}  // namespace strandline
