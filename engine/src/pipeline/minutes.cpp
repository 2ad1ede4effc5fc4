#include "pipeline/minutes.h"

#include <algorithm>

#include "formulate/reasons.h"

namespace strandline {
namespace {

const Development* development_of(const Timeline& timeline, const PlannedBowl& b, const std::string& zone) {
  const auto own = std::find_if(timeline.developments.begin(), timeline.developments.end(),
                                [&](const Development& d) { return d.bowl == b.bowl.label && d.zone == zone; });
  return own == timeline.developments.end() ? nullptr : &*own;
}

}  // namespace

void leave_on(std::vector<PlannedBowl>& bowls, const Timeline& timeline) {
  for (PlannedBowl& b : bowls)
    for (size_t z = 0; z < b.on.size(); ++z)
      if (const Development* d = development_of(timeline, b, b.bowl.zones[z]))
        b.on[z] = {d->leaves_at - d->last_touch, d->leaves_at - (d->first_touch + d->last_touch) / 2};
}

Problems told_of(const Visit& visit, const std::vector<PlannedBowl>& bowls, const Timeline& timeline) {
  constexpr double kMinute = 1;
  Problems notes;
  for (const PlannedBowl& b : bowls) {
    const Range* range = find_range(visit.shelf, b.bowl.formula.range);
    for (const std::string& zone : b.bowl.zones) {
      const Development* d = development_of(timeline, b, zone);
      if (!d || !range) continue;
      const double minutes = d->leaves_at - d->last_touch, longest = range->minutes.max;
      if (timeline.developed_to == DevelopTo::minimum && d->leaves_at < d->target_at - kMinute)
        notes.push_back({"comes_off_early",
                         "",
                         {{"bowl", b.bowl.label},
                          {"zone", zone},
                          {"minutes", figure(minutes, 0)},
                          {"planned", figure(d->target_at - d->last_touch, 0)}}});
      // What was asked for is told by the rules of the range.
      if (minutes > std::max(longest, d->target_at - d->last_touch) + kMinute / 2)
        notes.push_back({"stays_too_long",
                         "",
                         {{"bowl", b.bowl.label},
                          {"zone", zone},
                          {"minutes", figure(minutes, 0)},
                          {"longest", figure(longest, 0)}}});
    }
  }
  return notes;
}

}  // namespace strandline
