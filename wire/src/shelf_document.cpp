#include "strandline/wire/shelf_document.h"

#include <algorithm>

#include "strandline/head.h"
#include "strandline/visit.h"
#include "strandline/wire/decode.h"

namespace strandline::wire {

Shelf shelf_of(const ShelfDocument& document) {
  Shelf out{document.id, document.title, document.currency, document.invented, document.ranges, {}};
  out.products.reserve(document.products.size());
  for (const ShelfProduct& p : document.products) {
    out.products.push_back(p.product);
    if (!p.code.empty()) out.products.back().name = p.code + (p.product.name.empty() ? "" : " · " + p.product.name);
  }
  return out;
}

Problems check_shelf(const ShelfDocument& document) {
  constexpr std::string_view prefix = "/shelf";
  Problems out;
  for (Problem& p : check(shelf_of(document))) {
    if (p.code == "shelf_is_empty") continue;
    if (p.path.starts_with(prefix)) p.path.erase(0, prefix.size());
    if (out.size() < kProblemsMax) out.push_back(std::move(p));
  }
  return out;
}

namespace {

// Can a bowl of this range be mixed from the bottles there are?
bool has_bottle(const Range& range, const ShelfDocument& document) {
  const auto allowed = [&](double percent) {
    return std::find(range.developer_percents.begin(), range.developer_percents.end(), percent) !=
           range.developer_percents.end();
  };
  return std::any_of(document.products.begin(), document.products.end(), [&](const ShelfProduct& p) {
    return p.product.cls == ProductClass::developer && allowed(p.product.peroxide_percent);
  });
}

}  // namespace

Problems gaps(const ShelfDocument& document) {
  Problems out;
  for (std::size_t i = 0; i < document.ranges.size(); ++i) {
    const Range& range = document.ranges[i];
    const std::string path = pointer("/ranges", i);
    const bool empty = std::none_of(document.products.begin(), document.products.end(),
                                    [&](const ShelfProduct& p) { return p.product.range == range.id; });
    if (empty) out.push_back({"range_is_empty", path, {{"range", range.name}}});
    if (range.developer_percents.empty() || has_bottle(range, document)) continue;
    std::string strengths;
    for (const double percent : range.developer_percents)
      strengths += (strengths.empty() ? "" : ", ") + number_text(percent);
    out.push_back({"no_developer_for", path, {{"range", range.name}, {"strengths", strengths}}});
  }
  return out;
}

}  // namespace strandline::wire
