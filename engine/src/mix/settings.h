// The process settings of a range that this head and house allow: developer × ratio × times.
#pragma once

#include <string>
#include <vector>

#include "strandline/formulate.h"

namespace strandline {

inline constexpr double kBlendStep = 1.5;  // %, in which bottles are blended (common practice)

struct Setting {
  const Range* range = nullptr;
  double developer_percent = 0;  // a bottle of the shelf, or a blend of two in 1.5 % steps
  double ratio = 1;
  double minutes = 0;  // from the last touch: the usual
};

// Classes that `formulate` mixes into one bowl for a wanted colour.
bool formulated(ProductClass cls);

// A permanent colour: it does not wash out, so its regrowth draws a line.
inline bool permanent(const Setting& s) {
  return s.range->cls == ProductClass::permanent || s.range->cls == ProductClass::high_lift;
}

// From hard water or a pool.
bool holds_minerals(const Span& span);

// Every setting of the range that the shelf's bottles can make, within the law's peroxide limit for the mix.
std::vector<Setting> settings(const Range& range, const Shelf& shelf, const FormulaPolicy& policy);

// Minutes from the last touch that the search tries: the usual first, the shortest and the longest; for what only
// deposits also 3, 5, 10 and 20 within them (by choice: what is looked at in the bowl and at the basin).
std::vector<double> times(const Range& range);

// Why this setting may not touch this span (a code of the house rules), or empty.
std::string forbidden(const Setting& setting, const Span& span, const FormulaPolicy& policy);

// Grams of each bottle for `grams` of developer at `percent`: one bottle, or two neighbours by alligation.
// Empty when the shelf cannot make it. `step` = whole or half grams.
std::vector<Part> bottles(const Shelf& shelf, double percent, double grams, double step);

}  // namespace strandline
