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

  const std::vector<Shares>& shares() const { return shares_; }
  const std::vector<const Product*>& products() const { return products_; }
  // Dye load of a recipe at this ratio (M8), capacity included.
  Spectrum load(const Shares& shares, double ratio) const;
  double price_per_g(const Shares& shares) const;  // of the colour part

 private:
  bool allowed(const Shares& s) const;

  const Range& range_;
  std::vector<const Product*> products_;
  std::vector<Spectrum> offers_;
  std::vector<Shares> shares_;
};

}  // namespace strandline
