#include "search/descent.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace strandline {
namespace {

constexpr int kTogether = 8;  // branches divided at once, twice as many boxes

constexpr int kTimesMost = 64;  // bits of Branch::dead

struct Child {
  Branch branch;
  size_t row = 0;  // of its box and its parts
  double sum = 0;  // what is known of its objective so far
};

// What each of some children costs a zone by its box, for every time that is not ruled out.
struct Parts {
  double of[2 * kTogether][kTimesMost];
  float low[2 * kTogether * kBoxBands], high[2 * kTogether * kBoxBands];

  // The least over the times.
  double least(const Terrain::Zone& zone, const Child& c) const {
    double sum = std::numeric_limits<double>::infinity();
    for (size_t k = 0; k < zone.times.size(); ++k)
      if (zone.alive(c.branch, k)) sum = std::min(sum, at(zone, c, k));
    return sum;
  }
  // A time that has no bit counts at its price alone.
  double at(const Terrain::Zone& zone, const Child& c, size_t time) const {
    const size_t bit = static_cast<size_t>(zone.first_bit) + time;
    return bit < kTimesMost ? of[c.row][bit] : zone.times[time].price;
  }
};

void bound_zone(const Terrain::Zone& zone, const std::vector<Child>& children, Parts& parts, long long& boxes) {
  float low[2 * kTogether * kBoxBands], high[2 * kTogether * kBoxBands], own[2 * kTogether];
  for (size_t k = 0; k < zone.times.size(); ++k) {
    const size_t bit = static_cast<size_t>(zone.first_bit) + k;
    if (bit >= kTimesMost) return;
    size_t rows[2 * kTogether], count = 0;
    for (const Child& c : children) {
      if (!zone.alive(c.branch, k)) continue;
      std::copy_n(parts.low + c.row * kBoxBands, kBoxBands, low + count * kBoxBands);
      std::copy_n(parts.high + c.row * kBoxBands, kBoxBands, high + count * kBoxBands);
      rows[count++] = c.row;
    }
    if (count == 0) continue;
    box_bounds(*zone.times[k].made->box, *zone.loss, low, high, static_cast<int>(count), own);
    boxes += static_cast<long long>(count);
    for (size_t i = 0; i < count; ++i)
      parts.of[rows[i]][bit] = zone.times[k].price + zone.share * static_cast<double>(own[i]);
  }
}

// Times with which the branch would be beyond the limit whatever the other zones take.
void rule_out(const Terrain& t, double limit, const Parts& parts, Child& c) {
  for (const Terrain::Zone& zone : t.zones) {
    if (zone.times.size() < 2) continue;
    const double others = c.sum - zone.part(parts.least(zone, c));
    std::uint64_t dead = 0;
    for (size_t k = 0; k < zone.times.size(); ++k) {
      const size_t bit = static_cast<size_t>(zone.first_bit) + k;
      if (bit < kTimesMost && zone.alive(c.branch, k) && others + zone.part(parts.at(zone, c, k)) > limit)
        dead |= std::uint64_t{1} << bit;
    }
    c.branch.dead |= dead;
  }
}

// Adds what each zone's box says, zone by zone; what exceeds the limit is dropped at once.
void bound(const Terrain& t, double limit, std::vector<Child>& children, long long& boxes) {
  Parts parts;
  for (size_t i = 0; i < children.size(); ++i) {
    children[i].row = i;
    box_of(*t.ground, children[i].branch, t.ratio, parts.low + i * kBoxBands, parts.high + i * kBoxBands);
  }
  for (const Terrain::Zone& zone : t.zones) {
    if (children.empty()) return;
    bound_zone(zone, children, parts, boxes);
    for (Child& c : children) c.sum += zone.part(parts.least(zone, c)) - zone.least();
    std::erase_if(children, [&](const Child& c) { return c.sum > limit; });
  }
  for (Child& c : children) {
    rule_out(t, limit, parts, c);
    c.branch.bound = std::max(c.branch.bound, c.sum);
  }
}

}  // namespace

Descent descend(const Terrain& t, const Branch& from, double limit, std::uint64_t frontier,
                const std::function<bool()>& cancelled) {
  constexpr long long kBoxesMost = 8192;
  constexpr size_t kSinglesMost = 512;
  Descent d;
  std::vector<Child> children;
  std::vector<Branch> later;
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
        if (t.plain) c.branch.plain = t.plain->least(*t.setting, c.branch);
        c.sum = least_price(t, c.branch);
        if (std::isfinite(c.sum) && c.sum <= limit) children.push_back(c);
      }
    }
    bound(t, limit, children, d.boxes);
    std::sort(children.begin(), children.end(), [](const Child& a, const Child& b) {
      return std::tie(a.branch.plain, a.branch.bound) > std::tie(b.branch.plain, b.branch.bound);
    });
    for (const Child& c : children)
      (single(*t.ground, c.branch) ? d.singles : c.branch.plain > frontier ? later : d.left).push_back(c.branch);
  }
  d.left.insert(d.left.end(), later.begin(), later.end());
  return d;
}

}  // namespace strandline
