#include "formulate/groups.h"

#include <cmath>
#include <limits>

#include "predict/view.h"

namespace strandline {
namespace {

// How unlike two zones are: wish, looks and white share, in ΔE*ab.
double unlike(const SearchZone& x, const SearchZone& y) {
  auto distance = [](const Lab& a, const Lab& b) { return std::hypot(a.l - b.l, a.a - b.a, a.b - b.b); };
  const Constants c;
  const ZoneView vx = view(x.draws->nominal, x.draws->kinds, c), vy = view(y.draws->nominal, y.draws->kinds, c);
  return distance(x.target->lab, y.target->lab) + distance(vx.lab, vy.lab) + 0.5 * std::abs(vx.contrast - vy.contrast);
}

}  // namespace

std::vector<ZoneGroup> group_zones(const std::vector<SearchZone>& zones) {
  std::vector<ZoneGroup> all;
  for (const bool scalp : {true, false}) {
    std::vector<ZoneGroup> groups;
    for (size_t i = 0; i < zones.size(); ++i)
      if (touches_scalp(*zones[i].span) == scalp) groups.push_back({{static_cast<int>(i)}, scalp});
    while (groups.size() > kGroupsMost) {
      size_t best_i = 0, best_j = 1;
      double best = std::numeric_limits<double>::infinity();
      for (size_t i = 0; i < groups.size(); ++i)
        for (size_t j = i + 1; j < groups.size(); ++j) {
          const double d =
              unlike(zones[static_cast<size_t>(groups[i].zones[0])], zones[static_cast<size_t>(groups[j].zones[0])]);
          if (d < best) best = d, best_i = i, best_j = j;
        }
      groups[best_i].zones.insert(groups[best_i].zones.end(), groups[best_j].zones.begin(), groups[best_j].zones.end());
      groups.erase(groups.begin() + static_cast<long>(best_j));
    }
    all.insert(all.end(), groups.begin(), groups.end());
  }
  return all;
}

}  // namespace strandline
