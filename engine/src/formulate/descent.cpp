#include "formulate/descent.h"

#include <algorithm>

namespace strandline {
namespace {

constexpr int kTogether = 8;  // branches divided at once, twice as many boxes

// Bounds of the branches, prices included.
void bound(const Terrain& t, std::vector<Branch>& branches, std::vector<double>& prices) {
  const int count = static_cast<int>(branches.size());
  float low[2 * kTogether * kBoxBands], high[2 * kTogether * kBoxBands], own[2 * kTogether];
  for (int i = 0; i < count; ++i)
    box_of(*t.ground, branches[static_cast<size_t>(i)], t.ratio, low + i * kBoxBands, high + i * kBoxBands);
  for (const Terrain::Zone& zone : t.zones) {
    box_bounds(zone.made->box, *zone.loss, low, high, count, own);
    for (int i = 0; i < count; ++i) prices[static_cast<size_t>(i)] += zone.share * static_cast<double>(own[i]);
  }
  for (int i = 0; i < count; ++i) {
    Branch& b = branches[static_cast<size_t>(i)];
    b.bound = std::max(b.bound, prices[static_cast<size_t>(i)]);
  }
}

}  // namespace

Descent descend(const Terrain& t, const Branch& from, double limit, const std::function<bool()>& cancelled) {
  constexpr long long kBoxesMost = 8192;
  constexpr size_t kSinglesMost = 512;
  Descent d;
  std::vector<Branch> children;
  std::vector<double> prices;
  d.left.push_back(from);
  while (!d.left.empty() && d.boxes < kBoxesMost && d.singles.size() < kSinglesMost && !cancelled()) {
    children.clear();
    prices.clear();
    for (int i = 0; i < kTogether && !d.left.empty(); ++i) {
      const Branch b = d.left.back();
      d.left.pop_back();
      const int part = widest_part(*t.ground, b);
      const ShadeNode& node = t.ground->node(b, part);
      for (int child : {node.left, node.right}) {
        Branch c = b;
        c.node[part] = child;
        if (!holds_recipes(*t.ground, c)) continue;
        const double price = least_price(*t.ground, c, t.prices);
        if (price > limit) continue;
        children.push_back(c);
        prices.push_back(price);
      }
    }
    bound(t, children, prices);
    d.boxes += static_cast<long long>(children.size());
    std::sort(children.begin(), children.end(), [](const Branch& a, const Branch& b) { return a.bound > b.bound; });
    for (const Branch& c : children) {
      if (c.bound > limit) continue;
      (single(*t.ground, c) ? d.singles : d.left).push_back(c);
    }
  }
  return d;
}

}  // namespace strandline
