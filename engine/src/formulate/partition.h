// Which zones share which bowl: the cheapest way to cover the head with at most so many bowls.
#pragma once

#include <vector>

namespace strandline {

// One bowl of the partition: the groups it serves, as a bit mask.
struct Cover {
  std::vector<int> masks;  // one per bowl
  double cost = 0;         // Σ best[mask] + bowls · bowl_price + Σ leave of the uncovered groups
};

// For k = 0 … bowls_most bowls: the cheapest cover. best[mask] = cost of serving exactly these groups from one bowl
// (infinity where none may); leave[g] = cost of leaving a group as it is. Sizes: best 2^n, leave n.
std::vector<Cover> covers(const std::vector<double>& best, const std::vector<double>& leave, int bowls_most,
                          double bowl_price);

}  // namespace strandline
