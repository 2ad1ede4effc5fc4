#include <algorithm>

#include "strandline/promise.h"
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
    case ProductClass::direct:  // worked in like a conditioner (common practice)
    case ProductClass::filler:
    case ProductClass::remover:
    case ProductClass::pre_treatment:
    case ProductClass::after_treatment:
      return Consistency::liquid;
    default:
      return Consistency::cream;
  }
}

ReferenceProcess reference(const Range& range) {
  return range.reference ? *range.reference : usual_process(range.cls, Constants{});
}

double alkaline_lift(const Range& range) {
  return range.alkaline_lift ? *range.alkaline_lift : usual_alkali(range.cls, Constants{});
}

bool has_colour(const Product& p) {
  switch (p.cls) {
    case ProductClass::permanent:
    case ProductClass::high_lift:
    case ProductClass::demi:
    case ProductClass::clear:
    case ProductClass::corrector:
    case ProductClass::direct:
    case ProductClass::filler:
      return true;
    default:
      return false;
  }
}

KnownBy known_by(const Product& p) {
  if (p.known_by) return *p.known_by;
  if (!p.swatch) return KnownBy::name;
  return p.swatch_on ? KnownBy::stated_hair : KnownBy::white_hair;
}

const Range* find_range(const Shelf& shelf, std::string_view id) { return by_id(shelf.ranges, id); }
const Product* find_product(const Shelf& shelf, std::string_view id) { return by_id(shelf.products, id); }

}  // namespace strandline
