#include "mix/recipes.h"

#include <algorithm>
#include <map>

#include "mix/habits.h"

namespace strandline {
namespace {

bool in_a_recipe(const Product& p) { return has_colour(p) && p.cls != ProductClass::filler; }

// Clear is a vehicle for lift there; a demi thinned with it is a pastel.
bool lifts(ProductClass c) { return c == ProductClass::permanent || c == ProductClass::high_lift; }

}  // namespace

RecipeSet::RecipeSet(const Range& range, const Shelf& shelf, const FormulaPolicy& policy)
    : range_(range),
      clear_max_share_(lifts(range.cls) ? policy.clear_max_share : 1),
      levels_apart_max_(policy.levels_apart_max) {
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

// One product of each kind stands for all of its kind: only the kinds, levels among them, decide what is allowed.
long long RecipeSet::count() const {
  struct Kind {
    long long left = 0;
    short example = 0;
  };
  std::vector<Kind> kinds;
  std::map<std::pair<int, double>, size_t> place_of;
  for (size_t i = 0; i < products_.size(); ++i) {
    const Product& p = *products_[i];
    const int what = p.cls == ProductClass::corrector ? 1 : p.cls == ProductClass::clear ? 2 : 0;
    const auto [own, fresh] = place_of.emplace(std::pair(what, counts_for_levels(p) ? p.level : 0), kinds.size());
    if (fresh) kinds.push_back({0, static_cast<short>(i)});
    kinds[own->second].left++;
  }
  // Ordered choices of products for ordered shares; each recipe of m products is met m! times.
  long long total = 0;
  auto place = [&](auto&& self, Shares s, int parts, int eighths, long long ways) -> void {
    if (parts > 0 && levels_apart(s) > levels_apart_max_ + 1e-9) return;
    if (eighths == 0) {
      constexpr long long kSixth[] = {0, 6, 3, 1};  // 6/m!
      if (allowed(s)) total += kSixth[parts] * ways;
      return;
    }
    if (parts == 3) return;
    for (Kind& kind : kinds) {
      if (kind.left == 0) continue;
      const long long own = kind.left--;
      for (int e = 1; e <= eighths; ++e) {
        Shares next = s;
        next.product[parts] = kind.example;
        next.eighths[parts] = static_cast<signed char>(e);
        self(self, next, parts + 1, eighths - e, ways * own);
      }
      kind.left++;
    }
  };
  place(place, {}, 0, kEighths, 1);
  return total / 6;
}

double RecipeSet::levels_apart(const Shares& s) const {
  double lightest = level_lowest, darkest = level_highest;
  for (int i = 0; i < 3; ++i) {
    if (s.eighths[i] == 0) continue;
    const Product& p = *products_[static_cast<size_t>(s.product[i])];
    if (counts_for_levels(p)) lightest = std::max(lightest, p.level), darkest = std::min(darkest, p.level);
  }
  return lightest - darkest;
}

// Correctors stay within their share; a bowl of nothing but clear and correctors is no colour; of two shades far apart
// a colourist takes the one between.
bool RecipeSet::allowed(const Shares& s) const {
  int correctors = 0, clear = 0, colours = 0;
  for (int i = 0; i < 3; ++i) {
    if (s.eighths[i] == 0) continue;
    const Product& p = *products_[static_cast<size_t>(s.product[i])];
    if (p.cls == ProductClass::corrector)
      correctors += s.eighths[i];
    else
      (p.cls == ProductClass::clear ? clear : colours) += s.eighths[i];
  }
  return colours > 0 && levels_apart(s) <= levels_apart_max_ + 1e-9 && clear <= clear_max_share_ * kEighths + 1e-9 &&
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
