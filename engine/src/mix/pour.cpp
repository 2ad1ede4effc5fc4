#include "mix/pour.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace strandline {

double weighed(double grams, const FormulaPolicy& policy) {
  return std::max(policy.gram_step, std::round(grams / policy.gram_step) * policy.gram_step);
}

PouredGrams poured_grams(const signed char (&eighths)[3], const Setting& setting, double total, const Shelf& shelf,
                         const FormulaPolicy& policy) {
  int smallest = kEighths;
  for (int e : eighths)
    if (e > 0) smallest = std::min(smallest, e);
  double colour = std::max(total / (1 + setting.ratio), policy.part_min_g * kEighths / smallest);
  // The smallest mix that can be worked with is not rounded below itself.
  if (weighed(colour, policy) * (1 + setting.ratio) < std::min(total, Constants{}.mix_g_smallest))
    colour += policy.gram_step;
  PouredGrams w;
  double poured = 0;
  for (size_t i = 0; i < 3; ++i)
    if (eighths[i] > 0) {
      w.part_g[i] = weighed(colour * eighths[i] / kEighths, policy);
      poured += w.part_g[i];
    }
  if (setting.ratio > 0)
    w.developer = bottles(shelf, setting.developer_percent, weighed(poured * setting.ratio, policy), policy.gram_step);
  return w;
}

Formula pour(const RecipeSet& set, const Shares& shares, const Setting& setting, double total, const Shelf& shelf,
             const FormulaPolicy& policy) {
  const PouredGrams w = poured_grams(shares.eighths, setting, total, shelf, policy);
  Formula f;
  f.range = setting.range->id;
  f.minutes = setting.minutes;
  for (size_t i = 0; i < 3; ++i)
    if (shares.eighths[i] > 0)
      f.parts.push_back({set.products()[static_cast<size_t>(shares.product[i])]->id, w.part_g[i]});
  std::sort(f.parts.begin(), f.parts.end(), [](const Part& a, const Part& b) {
    return a.grams != b.grams ? a.grams > b.grams : a.product < b.product;
  });
  f.parts.insert(f.parts.end(), w.developer.begin(), w.developer.end());
  return f;
}

double poured_price(const RecipeSet& set, const Shares& shares, const Setting& setting, double total,
                    const Shelf& shelf, const FormulaPolicy& policy) {
  const Formula f = pour(set, shares, setting, total, shelf, policy);
  if (!within_law_and_stock(f, shelf)) return std::numeric_limits<double>::infinity();
  return Constants{}.price_money * cost(f, shelf);
}

law::Composition composition(const Formula& f, const Shelf& shelf) {
  law::Composition all;
  for (const Part& part : f.parts) {
    const Product* p = find_product(shelf, part.product);
    if (!p) continue;
    law::Ingredient in;
    in.id = p->id;
    in.grams = part.grams;
    in.peroxide_percent = p->peroxide_percent;
    in.declared = p->declared;
    in.fully_declared = p->fully_declared;
    all.push_back(std::move(in));
  }
  return all;
}

law::Use use_of(ProductClass cls) {
  switch (cls) {
    case ProductClass::permanent:
    case ProductClass::high_lift:
    case ProductClass::demi:
    case ProductClass::filler:
      return law::Use::oxidative_dye;
    case ProductClass::lightener:
      return law::Use::lightener;
    default:
      return law::Use::non_oxidative_dye;
  }
}

double cost(const Formula& f, const Shelf& shelf) {
  double sum = 0;
  for (const Part& part : f.parts)
    if (const Product* p = find_product(shelf, part.product)) sum += part.grams * p->price_per_g;
  return sum;
}

double grams(const Formula& f) {
  double sum = 0;
  for (const Part& p : f.parts) sum += p.grams;
  return sum;
}

bool within_law_and_stock(const Formula& f, const Shelf& shelf) {
  for (const Part& part : f.parts) {
    const Product* p = find_product(shelf, part.product);
    if (!p || p->stock_g < part.grams) return false;
  }
  const Range* range = find_range(shelf, f.range);
  if (!range) return false;
  const auto report = law::check_limits(composition(f, shelf), use_of(range->cls));
  return report && report->overall != law::Status::over && report->overall != law::Status::not_permitted_use;
}

}  // namespace strandline
