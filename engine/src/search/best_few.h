// The best few candidates of a stream, by single-precision objectives.
#pragma once

#include <algorithm>
#include <cstdint>
#include <limits>
#include <tuple>
#include <vector>

#include "mix/recipes.h"

namespace strandline {

inline constexpr int kKept = 12;           // candidates kept per set of zones
inline constexpr double kRounding = 4e-4;  // largest error of the single-precision mean loss, doubled

// One recipe under one setting with its objective for one set of zones.
struct Candidate {
  double objective = std::numeric_limits<double>::infinity();  // J of M14, without the price of the bowl
  int set = 0;                                                 // index of the RecipeSet
  int setting = 0;                                             // index into Domain::settings
  Shares shares;
  std::uint64_t plain = 0;           // how plain it is for these zones (plainness.h), where that was asked
  std::vector<double> minutes = {};  // on each of the zones it was judged for, where that was done in full
};

// By objective, then setting and shares, so that order never depends on who found what first.
inline auto order_of(const Candidate& c) {
  return std::make_tuple(c.objective, c.setting, c.shares.product[0], c.shares.product[1], c.shares.product[2],
                         c.shares.eighths[0], c.shares.eighths[1]);
}
inline bool before(const Candidate& a, const Candidate& b) { return order_of(a) < order_of(b); }

inline bool same_recipe(const Candidate& a, const Candidate& b) {
  return a.setting == b.setting && std::equal(a.shares.product, a.shares.product + 3, b.shares.product) &&
         std::equal(a.shares.eighths, a.shares.eighths + 3, b.shares.eighths);
}

// The same tubes under the same setting, in whatever shares.
inline bool same_tubes(const Candidate& a, const Candidate& b) {
  return a.setting == b.setting && std::is_permutation(a.shares.product, a.shares.product + 3, b.shares.product);
}

inline int tubes(const Shares& s) { return (s.eighths[0] > 0) + (s.eighths[1] > 0) + (s.eighths[2] > 0); }

// The best few candidates, exact to rounding: what lies within kRounding of the worst kept stays too (up to three times
// as many).
class BestFew {
 public:
  BestFew() = default;
  // Starts empty; nothing above `limit` is wanted.
  explicit BestFew(double limit, int keep = kKept) : limit_(limit), keep_(static_cast<size_t>(keep)) {}
  void offer(const Candidate& c);
  void merge(const BestFew& other);
  // Nothing above it will be kept; infinite until enough were offered.
  double limit() const { return limit_; }
  std::vector<Candidate> take();
  void trim();

 private:
  std::vector<Candidate> kept_;
  double limit_ = std::numeric_limits<double>::infinity();
  size_t keep_ = kKept;
};

}  // namespace strandline
