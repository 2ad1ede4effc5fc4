// A recipe becomes grams: whole or half grams, no part too small to weigh, real bottles.
#pragma once

#include "mix/recipes.h"
#include "mix/settings.h"

namespace strandline {

// The nearest amount that is weighed, one step at least.
double weighed(double grams, const FormulaPolicy& policy);

// Requires grams > 0. The mix grows where the smallest colour part would be under policy.part_min_g.
Formula pour(const RecipeSet& set, const Shares& shares, const Setting& setting, double grams, const Shelf& shelf,
             const FormulaPolicy& policy);

// What pour() weighs of a recipe with these shares (three, falling or not; 0 = no such part), whatever its shades are.
struct PouredGrams {
  double part_g[3] = {0, 0, 0};
  std::vector<Part> developer;  // real bottles; empty where the range takes none
};
PouredGrams poured_grams(const signed char (&eighths)[3], const Setting& setting, double grams, const Shelf& shelf,
                         const FormulaPolicy& policy);

// What a recipe's money adds to its objective when it is poured, levels; infinite where law or stock forbid it.
double poured_price(const RecipeSet& set, const Shares& shares, const Setting& setting, double grams,
                    const Shelf& shelf, const FormulaPolicy& policy);

// What the law list says of a formula, and its peroxide.
law::Composition composition(const Formula& formula, const Shelf& shelf);
law::Use use_of(ProductClass cls);

// No regulated substance over its limit or out of place, every product there in these grams.
bool within_law_and_stock(const Formula& formula, const Shelf& shelf);

double cost(const Formula& formula, const Shelf& shelf);
double grams(const Formula& formula);

}  // namespace strandline
