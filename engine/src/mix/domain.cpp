#include "mix/domain.h"

#include <utility>

#include "strandline/promise.h"

namespace strandline {

BowlChemistry bare_chemistry(const Setting& s, double minutes) {
  BowlChemistry b = bare_bowl(s.range->cls, {s.developer_percent, s.ratio, minutes});
  b.alkaline_lift = alkaline_lift(*s.range);
  b.reference_minutes = reference(*s.range).minutes;
  return b;
}

Domain domain(const Shelf& shelf, const FormulaPolicy& policy) {
  Domain d;
  d.shelf = &shelf;
  for (const Range& r : shelf.ranges) {
    const std::vector<Setting> own = settings(r, shelf, policy);
    if (own.empty()) continue;
    RecipeSet set(r, shelf, policy);
    if (set.size() == 0) continue;
    for (const Setting& s : own) d.settings.push_back({s, static_cast<int>(d.sets.size())});
    d.sets.push_back(std::move(set));
  }
  return d;
}

Domain domain_settings(const Shelf& shelf, const FormulaPolicy& policy) {
  Domain d;
  d.shelf = &shelf;
  for (const Range& r : shelf.ranges)
    for (const Setting& s : settings(r, shelf, policy)) d.settings.push_back({s, 0});
  return d;
}

}  // namespace strandline
