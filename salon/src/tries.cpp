#include "tries.h"

#include <algorithm>

namespace strandline::salon {

namespace {

constexpr std::int64_t hour_s = 3600;

}  // namespace

void Tries::failed_at(std::int64_t now, const Limits& limits) {
  if (now - last > limits.forgotten_h * hour_s) failed = 0;
  ++failed;
  last = now;
}

std::int64_t Tries::wait(std::int64_t now, const Limits& limits) const {
  if (failed < limits.free || now - last > limits.forgotten_h * hour_s) return 0;
  constexpr int doublings_most = 20;
  const std::int64_t whole = std::min<std::int64_t>(
      limits.most_s, std::int64_t{limits.first_s} << std::min(failed - limits.free, doublings_most));
  return std::clamp<std::int64_t>(last + whole - now, 0, whole);
}

}  // namespace strandline::salon
