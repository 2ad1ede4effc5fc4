#include <algorithm>

#include "strandline/shelf.h"

namespace strandline {
namespace {

template <class T>
const T* by_id(const std::vector<T>& all, std::string_view id) {
  const auto it = std::find_if(all.begin(), all.end(), [&](const T& t) { return t.id == id; });
  return it == all.end() ? nullptr : &*it;
}

}  // namespace

Consistency consistency(const Range& range) {
  if (range.consistency) return *range.consistency;
  switch (range.cls) {
    case ProductClass::demi:
    case ProductClass::filler:
    case ProductClass::remover:
    case ProductClass::pre_treatment:
    case ProductClass::after_treatment:
      return Consistency::liquid;
    default:
      return Consistency::cream;
  }
}

const Range* find_range(const Shelf& shelf, std::string_view id) { return by_id(shelf.ranges, id); }
const Product* find_product(const Shelf& shelf, std::string_view id) { return by_id(shelf.products, id); }

}  // namespace strandline
