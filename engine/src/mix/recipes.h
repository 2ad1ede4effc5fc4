// The certified domain for one range: every recipe of up to three products, shares in eighths. It is described, not
// listed: a hundred shades make three million recipes.
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

  // How many recipes there are; nothing is listed for it.
  long long size() const { return size_; }
  // Every recipe: those of one and two products first. Millions on a big shelf: for the oracle and for tests.
  std::vector<Shares> shares() const;
  // Those of one and two products alone.
  std::vector<Shares> few() const;
  // Correctors and clear within their shares, a colour among the rest, and shades no further apart than the house
  // mixes.
  bool allowed(const Shares& s) const;
  const std::vector<const Product*>& products() const { return products_; }
  const std::vector<Spectrum>& offers() const { return offers_; }  // of one part of the colour, before any dilution
  const Range& range() const { return range_; }
  double levels_apart_max() const { return levels_apart_max_; }
  // The largest load any recipe can have in any band at this ratio.
  double load_most(double ratio) const;
  // Dye load of a recipe at this ratio (M8), capacity included.
  Spectrum load(const Shares& shares, double ratio) const;
  double price_per_g(const Shares& shares) const;  // of the colour part

 private:
  long long count() const;
  // Between the shades of a recipe that count for levels; negative where there is none.
  double levels_apart(const Shares& s) const;

  const Range& range_;
  double clear_max_share_ = 1;
  double levels_apart_max_ = 1;
  std::vector<const Product*> products_;
  std::vector<Spectrum> offers_;
  long long size_ = 0;
};

}  // namespace strandline
