#include "formulate/partition.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <functional>
#include <limits>

namespace strandline {
namespace {

// Every way to put groups 0 … n−1 into bowls or leave them, by plain recursion.
double brute(const std::vector<double>& best, const std::vector<double>& leave, int bowls, double price) {
  const int n = static_cast<int>(leave.size());
  double cheapest = std::numeric_limits<double>::infinity();
  std::vector<int> masks;
  std::function<void(int, double)> go = [&](int g, double left) {
    if (g == n) {
      if (static_cast<int>(masks.size()) != bowls) return;
      double sum = left;
      for (int m : masks) sum += best[static_cast<size_t>(m)] + price;
      cheapest = std::min(cheapest, sum);
      return;
    }
    go(g + 1, left + leave[static_cast<size_t>(g)]);
    for (size_t i = 0; i < masks.size(); ++i) {
      masks[i] |= 1 << g;
      go(g + 1, left);
      masks[i] &= ~(1 << g);
    }
    masks.push_back(1 << g);
    go(g + 1, left);
    masks.pop_back();
  };
  go(0, 0);
  return cheapest;
}

RC_GTEST_PROP(Partition, IsTheCheapestOfAllCovers, ()) {
  const int n = *rc::gen::inRange(1, 5);
  std::vector<double> best(size_t{1} << n), leave(static_cast<size_t>(n));
  for (double& b : best) b = *rc::gen::inRange(0, 1000) / 100.0;
  for (double& l : leave) l = *rc::gen::inRange(0, 1000) / 100.0;
  const auto found = covers(best, leave, 3, 0.5);
  for (int k = 0; k <= 3; ++k) {
    const double expected = brute(best, leave, k, 0.5);
    if (expected == std::numeric_limits<double>::infinity())
      RC_ASSERT(found[static_cast<size_t>(k)].cost == expected);
    else
      RC_ASSERT(std::abs(found[static_cast<size_t>(k)].cost - expected) < 1e-9);
  }
}

}  // namespace
}  // namespace strandline
