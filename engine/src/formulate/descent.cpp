#include "formulate/descent.h"

#include <algorithm>
#include <cmath>

namespace strandline {
namespace {

constexpr int kTogether = 8;  // branches divided at once, twice as many boxes

struct Child {
  Branch branch;
  int natural = 0;
  double sum = 0;  // what is known of its objective so far
};

// Adds what each zone's box says, zone by zone; what exceeds the limit is dropped at once.
void bound(const Terrain& t, double limit, std::vector<Child>& children, long long& boxes) {
  float low[2 * kTogether * kBoxBands], high[2 * kTogether * kBoxBands], own[2 * kTogether];
  for (size_t i = 0; i < children.size(); ++i)
    box_of(*t.ground, children[i].branch, t.ratio, low + i * kBoxBands, high + i * kBoxBands);
  for (const Terrain::Zone& zone : t.zones) {
    if (children.empty()) return;
    box_bounds(*zone.made->box, *zone.loss, low, high, static_cast<int>(children.size()), own);
    boxes += static_cast<long long>(children.size());
    size_t kept = 0;
    for (size_t i = 0; i < children.size(); ++i) {
      Child c = children[i];
      c.sum += std::max(zone.floor, zone.price[c.natural] + zone.share * static_cast<double>(own[i])) -
               zone.least(c.natural);
      if (c.sum > limit) continue;
      children[kept] = c;
      if (kept != i) {
        std::copy_n(low + i * kBoxBands, kBoxBands, low + kept * kBoxBands);
        std::copy_n(high + i * kBoxBands, kBoxBands, high + kept * kBoxBands);
      }
      ++kept;
    }
    children.resize(kept);
  }
  for (Child& c : children) c.branch.bound = std::max(c.branch.bound, c.sum);
}

}  // namespace

Descent descend(const Terrain& t, const Branch& from, double limit, const std::function<bool()>& cancelled) {
  constexpr long long kBoxesMost = 8192;
  constexpr size_t kSinglesMost = 512;
  Descent d;
  std::vector<Child> children;
  d.left.push_back(from);
  while (!d.left.empty() && d.boxes < kBoxesMost && d.singles.size() < kSinglesMost && !cancelled()) {
    children.clear();
    for (int i = 0; i < kTogether && !d.left.empty(); ++i) {
      const Branch b = d.left.back();
      d.left.pop_back();
      const int part = widest_part(*t.ground, b);
      const ShadeNode& node = t.ground->node(b, part);
      for (int half : {node.left, node.right}) {
        Child c{b};
        c.branch.node[part] = half;
        if (!holds_recipes(*t.ground, c.branch) || least_price_per_g(*t.ground, c.branch) > t.price_most) continue;
        c.natural = most_natural(*t.ground, c.branch);
        c.sum = least_price(t, c.branch);
        if (std::isfinite(c.sum) && c.sum <= limit) children.push_back(c);
      }
    }
    bound(t, limit, children, d.boxes);
    std::sort(children.begin(), children.end(),
              [](const Child& a, const Child& b) { return a.branch.bound > b.branch.bound; });
    for (const Child& c : children) (single(*t.ground, c.branch) ? d.singles : d.left).push_back(c.branch);
  }
  return d;
}

}  // namespace strandline
