#include "schedule/tail.h"

#include <algorithm>

#include "schedule/search.h"

namespace strandline {
namespace {

constexpr int kLastBasinTime = static_cast<int>(24 * 60 * kTicksPerMinute);

// Earliest time at or after `from` at which the person can work for `ticks`; kNever = too late for that.
int ready(const Instance::Hands& person, int from, int ticks) {
  const int start = std::max(from, person.from);
  return start + ticks <= person.until ? start : kNever;
}

}  // namespace

std::optional<std::vector<TailStep>> lay_tail(const Instance& instance, int basin) {
  const auto& request = instance.request;
  std::vector<TailStep> steps;
  int at = basin, previous = -1;
  for (std::size_t t = 0; t < request.tail.size(); ++t) {
    const auto& task = request.tail[t];
    const int ticks = nearest_ticks(task.minutes.mean);
    int who = -1, best = kNever;
    for (int p = 0; p < static_cast<int>(request.people.size()); ++p) {
      if (!has(request.people[p], task.at_basin ? Skill::basin : Skill::finish)) continue;
      const int start = ready(instance.people[p], at, ticks);
      if (start < best || (start == best && p == previous)) best = start, who = p;
    }
    if (best == kNever || (task.at_basin && best > at)) return std::nullopt;
    const bool taken = task.at_basin && std::ranges::any_of(request.basin_taken, [&](const Window& w) {
                         return ticks_down(w.from) < best + ticks && best < ticks_up(w.until);
                       });
    if (taken) return std::nullopt;
    steps.push_back({static_cast<int>(t), who, best, best + ticks});
    at = best + ticks;
    previous = who;
  }
  return steps;
}

int next_basin_time(const Instance& instance, int ticks) {
  for (int basin = ticks; basin <= kLastBasinTime; ++basin)
    if (lay_tail(instance, basin)) return basin;
  return kNever;
}

}  // namespace strandline
