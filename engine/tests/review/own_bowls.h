// A small visit with bowls of the colourist's own.
#pragma once

#include <algorithm>

#include "engine/tests/cleared.h"
#include "engine/tests/support.h"
#include "strandline/review.h"

namespace strandline::testing_support {

inline Visit small_visit(double level = 7) {
  Visit v;
  v.head = two_areas();
  v.shelf = small_shelf(6);
  ZoneAim wish;
  wish.zone = "*", wish.level = level;
  v.aims = {wish};
  return cleared(v);
}

inline Bowl bowl_of(const std::vector<Part>& parts, const std::vector<std::string>& zones) {
  return {"A", {"tint", parts, 35, false}, zones};
}

inline const std::vector<std::string> both = {"front hairline/regrowth", "crown/regrowth"};

inline bool holds(const Formula& f, const std::string& product) {
  return std::any_of(f.parts.begin(), f.parts.end(), [&](const Part& p) { return p.product == product; });
}

// The same swatches in a second range, by the same maker or another.
inline Shelf with_second_range(Shelf shelf, const std::string& maker) {
  Range second = shelf.ranges[0];
  second.id = "second", second.name = "second", second.maker = maker;
  shelf.ranges.push_back(second);
  const std::vector<Product> first = shelf.products;
  for (Product p : first) {
    if (p.cls != ProductClass::permanent) continue;
    p.id = "second-" + p.id, p.range = "second";
    shelf.products.push_back(p);
  }
  return shelf;
}

}  // namespace strandline::testing_support
