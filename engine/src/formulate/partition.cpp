#include "formulate/partition.h"

#include <cstddef>
#include <limits>

namespace strandline {

using std::size_t;

std::vector<Cover> covers(const std::vector<double>& best, const std::vector<double>& leave, int bowls_most,
                          double bowl_price) {
  const size_t masks = best.size();
  const double never = std::numeric_limits<double>::infinity();
  // by_mask[k][mask]: the cheapest cover of `mask` with exactly k bowls; the lowest group is served or left first.
  std::vector<std::vector<Cover>> by_mask(static_cast<size_t>(bowls_most) + 1, std::vector<Cover>(masks));
  for (int k = 0; k <= bowls_most; ++k)
    for (size_t mask = 0; mask < masks; ++mask) {
      Cover& c = by_mask[static_cast<size_t>(k)][mask];
      if (mask == 0) {
        c.cost = k == 0 ? 0 : never;
        continue;
      }
      size_t lowest = 0;
      while (!(mask >> lowest & 1)) ++lowest;
      const Cover& without = by_mask[static_cast<size_t>(k)][mask & ~(size_t{1} << lowest)];
      c = without;
      c.cost += leave[lowest];
      if (k == 0) continue;
      const size_t rest = mask & ~(size_t{1} << lowest);
      for (size_t part = rest;; part = (part - 1) & rest) {
        const size_t bowl = part | (size_t{1} << lowest);
        const Cover& other = by_mask[static_cast<size_t>(k) - 1][mask & ~bowl];
        const double cost = best[bowl] + bowl_price + other.cost;
        if (cost < c.cost) {
          c = other;
          c.masks.push_back(static_cast<int>(bowl));
          c.cost = cost;
        }
        if (part == 0) break;
      }
    }
  std::vector<Cover> out;
  for (auto& row : by_mask) out.push_back(row[masks - 1]);
  return out;
}

}  // namespace strandline
