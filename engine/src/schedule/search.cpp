#include "schedule/search.h"

#include <algorithm>

#include "schedule/branch.h"
#include "schedule/tail.h"

namespace strandline {
namespace {

constexpr int kSeedShare = 10;  // of the node limit, for each plan in a fixed sequence

// A first plan from a fixed sequence lets the search drop states from the start.
void seed_from_sequences(const Instance& instance, Search& search) {
  for (const bool lightening_first : {true, false}) {
    const auto sequence = in_sequence(instance, lightening_first);
    Search first(sequence, kNever, instance.node_limit / kSeedShare);
    first.run();
    if (first.best()) search.seed(first.best()->jobs());
    if (first.best() || !first.stopped()) continue;
    for (int p = 0; p < static_cast<int>(instance.people.size()); ++p) {
      if (!instance.people[p].apply) continue;
      const auto single = in_sequence(applied_by(instance, p), lightening_first);
      Search alone(single, kNever, instance.node_limit / kSeedShare);
      alone.run();
      if (alone.best()) search.seed(alone.best()->jobs());
    }
  }
}

// A plan with everybody there keeps to the hours of the people.
bool within_hours(const Instance& instance, const Layout& layout, int basin) {
  return std::ranges::all_of(layout.jobs(), [&](const Job& job) {
    const auto& person = instance.people[job.person];
    return basin - job.start() >= person.from && basin - job.end <= person.until;
  });
}

}  // namespace

ShortestSearch search(const Instance& instance) {
  ShortestSearch report;
  Search free(instance, kNever, instance.node_limit);
  seed_from_sequences(instance, free);
  free.run();
  report.nodes = free.nodes();
  report.proven = !free.stopped();
  if (!free.best()) return report;

  // Hours of people and of the basin: try basin times from the shortest plan on.
  int last_arrival = 0, last_leaving = 0;
  for (const auto& person : instance.people) {
    last_arrival = std::max(last_arrival, person.from);
    if (person.until != kNever) last_leaving = std::max(last_leaving, person.until);
  }
  const int shortest = free.best()->furthest();
  int longest_stay = 0;
  for (const auto& app : instance.apps) longest_stay = std::max(longest_stay, app.max);
  // Later than this nobody new arrives, and whoever leaves is missed by every plan alike.
  const int last = std::max(shortest + last_arrival, last_leaving + longest_stay + last_arrival);
  Cost best;
  for (int basin = next_basin_time(instance, shortest); basin != kNever; basin = next_basin_time(instance, basin + 1)) {
    if (basin >= best.ticks) break;
    if (within_hours(instance, *free.best(), basin)) {
      const Cost cost{basin + free.best()->inversions() * instance.soft_cost, free.best()->extras()};
      if (cost < best) best = cost, report.best = Shortest{*free.best(), basin};
      break;
    }
    Search fixed(instance, basin, instance.node_limit - report.nodes);
    fixed.run();
    report.nodes += fixed.nodes();
    report.proven = report.proven && !fixed.stopped();
    if (fixed.best() && fixed.cost() < best) best = fixed.cost(), report.best = Shortest{*fixed.best(), basin};
    if (basin > last || report.nodes >= instance.node_limit) break;
  }
  return report;
}

}  // namespace strandline
