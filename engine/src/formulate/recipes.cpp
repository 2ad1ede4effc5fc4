#include "formulate/recipes.h"

#include <algorithm>

namespace strandline {
namespace {

bool in_a_recipe(const Product& p) { return has_colour(p) && p.cls != ProductClass::filler; }

// Clear is a vehicle for lift there; a demi thinned with it is a pastel.
bool lifts(ProductClass c) { return c == ProductClass::permanent || c == ProductClass::high_lift; }

}  // namespace

RecipeSet::RecipeSet(const Range& range, const Shelf& shelf, const FormulaPolicy& policy)
    : range_(range), clear_max_share_(lifts(range.cls) ? policy.clear_max_share : 1) {
  for (const Product& p : shelf.products)
    if (p.range == range.id && in_a_recipe(p) && p.stock_g >= policy.part_min_g) {
      products_.push_back(&p);
      offers_.push_back(offered(p, range));
    }
  size_ = count();
}

std::vector<Shares> RecipeSet::few() const {
  std::vector<Shares> all;
  const short n = static_cast<short>(products_.size());
  auto add = [&](const Shares& s) {
    if (allowed(s)) all.push_back(s);
  };
  for (short i = 0; i < n; ++i) {
    add({{i, 0, 0}, {kEighths, 0, 0}});
    for (short j = static_cast<short>(i + 1); j < n; ++j)
      for (signed char a = 1; a < kEighths; ++a) add({{i, j, 0}, {a, static_cast<signed char>(kEighths - a), 0}});
  }
  return all;
}

std::vector<Shares> RecipeSet::shares() const {
  std::vector<Shares> all = few();
  const short n = static_cast<short>(products_.size());
  for (short i = 0; i < n; ++i)
    for (short j = static_cast<short>(i + 1); j < n; ++j)
      for (short k = static_cast<short>(j + 1); k < n; ++k)
        for (signed char a = 1; a < kEighths - 1; ++a)
          for (signed char b = 1; a + b < kEighths; ++b) {
            const Shares s{{i, j, k}, {a, b, static_cast<signed char>(kEighths - a - b)}};
            if (allowed(s)) all.push_back(s);
          }
  return all;
}

// One product of each kind stands for all of its kind: only the kinds decide what is allowed.
long long RecipeSet::count() const {
  constexpr int kKinds = 3;  // colour, corrector, clear
  long long of_kind[kKinds] = {0, 0, 0};
  short example[kKinds] = {0, 0, 0};
  for (size_t i = 0; i < products_.size(); ++i) {
    const ProductClass c = products_[i]->cls;
    const int kind = c == ProductClass::corrector ? 1 : c == ProductClass::clear ? 2 : 0;
    of_kind[kind]++;
    example[kind] = static_cast<short>(i);
  }
  // Ordered choices of products for ordered shares; each recipe of m products is met m! times.
  long long total = 0;
  long long left[kKinds] = {of_kind[0], of_kind[1], of_kind[2]};
  auto place = [&](auto&& self, Shares s, int parts, int eighths, long long ways) -> void {
    if (eighths == 0) {
      constexpr long long kSixth[] = {0, 6, 3, 1};  // 6/m!
      if (allowed(s)) total += kSixth[parts] * ways;
      return;
    }
    if (parts == 3) return;
    for (int kind = 0; kind < kKinds; ++kind) {
      if (left[kind] == 0) continue;
      const long long own = left[kind]--;
      for (int e = 1; e <= eighths; ++e) {
        Shares next = s;
        next.product[parts] = example[kind];
        next.eighths[parts] = static_cast<signed char>(e);
        self(self, next, parts + 1, eighths - e, ways * own);
      }
      left[kind]++;
    }
  };
  place(place, {}, 0, kEighths, 1);
  return total / 6;
}

// Correctors stay within their share; a bowl of nothing but clear and correctors is no colour.
bool RecipeSet::allowed(const Shares& s) const {
  int correctors = 0, clear = 0, colours = 0;
  for (int i = 0; i < 3; ++i) {
    if (s.eighths[i] == 0) continue;
    const ProductClass c = products_[static_cast<size_t>(s.product[i])]->cls;
    if (c == ProductClass::corrector)
      correctors += s.eighths[i];
    else
      (c == ProductClass::clear ? clear : colours) += s.eighths[i];
  }
  return colours > 0 && clear <= clear_max_share_ * kEighths + 1e-9 &&
         correctors <= range_.corrector_max_share * kEighths + 1e-9;
}

Spectrum RecipeSet::load(const Shares& s, double ratio) const {
  const double factor = dilution(range_, ratio) / kEighths;
  Spectrum offer{};
  for (int i = 0; i < 3; ++i) {
    if (s.eighths[i] == 0) continue;
    const Spectrum& o = offers_[static_cast<size_t>(s.product[i])];
    for (int b = 0; b < kBands; ++b) offer[b] += factor * s.eighths[i] * o[b];
  }
  return saturated(offer);
}

double RecipeSet::load_most(double ratio) const {
  // In each band offer·capacity_left(total) is a ratio of linear forms in the shares: largest for a single product.
  const double factor = dilution(range_, ratio);
  double most = 0;
  for (Spectrum o : offers_) {
    for (double& v : o) v *= factor;
    for (double v : saturated(o)) most = std::max(most, v);
  }
  return most;
}

double RecipeSet::price_per_g(const Shares& s) const {
  double price = 0;
  for (int i = 0; i < 3; ++i)
    if (s.eighths[i]) price += s.eighths[i] * products_[static_cast<size_t>(s.product[i])]->price_per_g / kEighths;
  return price;
}

}  // namespace strandline
