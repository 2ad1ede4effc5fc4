// formulate.shades200.ms and shades400.ms: bigger shelves, a search that is stopped and says what is left, and the
// memory of the whole program.
#include <sys/resource.h>

#include <chrono>
#include <cmath>

#include "one_zone.h"

namespace {

using namespace strandline;
using scoreboard::OneZone;

struct Big {
  double median_ms = 0, worst_ms = 0, stopped_objective = 0, stopped_bound = 0, stopped_ms = 0, best = 0;
};

Big search_shelf(int shades, int heads) {
  const Shelf shelf = scoreboard::invented_shelf(shades, {3, 6, 9, 12}, {1});
  const Domain domain = strandline::domain(shelf, {});
  Big big;
  std::vector<double> ms;
  for (int h = 0; h < heads; ++h) {
    const OneZone zone(static_cast<std::uint64_t>(h), shelf);
    const auto s = scoreboard::search_one(domain, zone);
    if (!s.list.complete) std::exit(1);
    ms.push_back(s.ms);
    big.worst_ms = std::max(big.worst_ms, s.ms);
    if (h > 0) continue;
    // The same again, stopped after half of its time.
    const auto begin = std::chrono::steady_clock::now();
    FormulateOptions options;
    options.cancelled = [&] {
      const auto now = std::chrono::steady_clock::now();
      return std::chrono::duration<double, std::milli>(now - begin).count() > s.ms / 2;
    };
    const auto stopped = scoreboard::search_one(domain, zone, options);
    big.best = s.list.candidates[0].objective;
    if (stopped.list.bound > big.best) std::exit(1);
    big.stopped_ms = stopped.ms;
    big.stopped_objective = stopped.list.candidates.empty() ? NAN : stopped.list.candidates[0].objective;
    big.stopped_bound = stopped.list.bound;
  }
  big.median_ms = scoreboard::median(ms);
  return big;
}

std::string note(const Big& b) {
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  char buffer[400];
  std::snprintf(buffer, sizeof buffer,
                "4 strengths, 64 scenarios, one core; worst %.0f ms; stopped after %.0f ms it has %.3f and proves %.3f "
                "(the best is %.3f); peak memory of the program %.0f MiB; %s",
                b.worst_ms, b.stopped_ms, b.stopped_objective, b.stopped_bound, b.best,
                static_cast<double>(use.ru_maxrss) / 1024, kernel_target());
  return buffer;
}

}  // namespace

int main() {
  const Big two = search_shelf(200, 6);
  const std::string two_note = note(two);
  const Big four = search_shelf(400, 5);
  scoreboard::print({{"formulate.shades200.ms", two.median_ms, "ms", "median of 6 heads, " + two_note},
                     {"formulate.shades400.ms", four.median_ms, "ms", "median of 5 heads, " + note(four)}});
}
