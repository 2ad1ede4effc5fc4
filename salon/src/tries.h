// Tries that failed, and how long nobody may try again.
#pragma once

#include <cstdint>

namespace strandline::salon {

struct Tries {
  int failed = 0;
  std::int64_t last = 0;  // s since 1970

  struct Limits {
    int free = 0, first_s = 0, most_s = 0, forgotten_h = 0;
  };
  void failed_at(std::int64_t now, const Limits& limits);
  // Seconds to wait from `now`; never more than the most, even when the clock was set back.
  std::int64_t wait(std::int64_t now, const Limits& limits) const;
};

}  // namespace strandline::salon
