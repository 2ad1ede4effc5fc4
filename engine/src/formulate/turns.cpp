#include "formulate/turns.h"

#include <algorithm>

#include "formulate/own.h"
#include "strandline/misread.h"

namespace strandline {
namespace {

Own as_own(const Recipe& r, const Shelf& shelf) {
  Own o;
  o.range = find_range(shelf, r.range);
  for (const Share& s : r.shares)
    if (const Product* p = find_product(shelf, s.product)) o.shares.emplace_back(p, s.eighths / 8.0);
  o.developer_percent = r.developer_percent, o.ratio = r.ratio, o.minutes = r.minutes;
  return o;
}

}  // namespace

void add_turns(const TurnInput& in, std::vector<PlannedBowl>& bowls) {
  for (const Misreading& m : kMisreadings) {
    const auto head = misread(in.head, m);
    if (!head) continue;
    const Situation now = at_start(*head, in.scenarios);
    const std::vector<SearchZone> zones = search_zones(now, in.targets, in.policy);
    for (PlannedBowl& b : bowls) {
      if (in.cancelled()) return;
      if (b.runner_up.shares.empty()) continue;
      std::vector<int> served;
      double weight = 0;
      for (size_t i = 0; i < zones.size(); ++i)
        if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), zones[i].draws->id) != b.bowl.zones.end())
          served.push_back(static_cast<int>(i)), weight += zones[i].weight;
      if (served.empty()) continue;
      Judge judge(now, zones, served, weight, in.shelf, in.policy, b.grams,
                  longer_than_told(step_of(b), zones, served));
      const Own other = as_own(b.runner_up, in.shelf);
      const double gain = judge.objective(as_own(b.recipe, in.shelf)) - judge.objective(other);
      if (gain > in.policy.indifference_levels && judge.allowed(other))
        b.turns.push_back({std::string(code(m.reading)), m.by, gain});
    }
  }
}

}  // namespace strandline
