#include "pipeline/minutes.h"

#include <algorithm>
#include <cmath>

#include "formulate/reasons.h"

namespace strandline {
namespace {

const Development* development_of(const Timeline& timeline, const PlannedBowl& b, const std::string& zone) {
  const auto own = std::find_if(timeline.developments.begin(), timeline.developments.end(),
                                [&](const Development& d) { return d.bowl == b.bowl.label && d.zone == zone; });
  return own == timeline.developments.end() ? nullptr : &*own;
}

// A zone of a bowl that is on for other minutes than it should be.
struct Off {
  const std::string* zone;
  double minutes, wanted;
};

// One sentence for a bowl, about the zone that is furthest off.
void tell(Problems& notes, const char* code, const char* wanted, const std::string& bowl, const std::vector<Off>& all) {
  if (all.empty()) return;
  const Off& most = *std::max_element(all.begin(), all.end(), [](const Off& a, const Off& b) {
    return std::abs(a.minutes - a.wanted) < std::abs(b.minutes - b.wanted);
  });
  notes.push_back({code,
                   "",
                   {{"bowl", bowl},
                    {"zone", *most.zone},
                    {"zones", figure(static_cast<double>(all.size()), 0)},
                    {"minutes", figure(most.minutes, 0)},
                    {wanted, figure(most.wanted, 0)}}});
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
    std::vector<Off> early, long_on;
    for (const std::string& zone : b.bowl.zones) {
      const Development* d = development_of(timeline, b, zone);
      if (!d || !range) continue;
      const double minutes = d->leaves_at - d->last_touch, asked = d->target_at - d->last_touch;
      if (timeline.developed_to == DevelopTo::minimum && d->leaves_at < d->target_at - kMinute)
        early.push_back({&zone, minutes, asked});
      // What was asked for is told by the rules of the range.
      if (minutes > std::max(range->minutes.max, asked) + kMinute / 2)
        long_on.push_back({&zone, minutes, range->minutes.max});
    }
    tell(notes, "comes_off_early", "planned", b.bowl.label, early);
    tell(notes, "stays_too_long", "longest", b.bowl.label, long_on);
  }
  return notes;
}

}  // namespace strandline
