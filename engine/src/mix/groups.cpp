#include "mix/groups.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "generated/tables.h"
#include "predict/view.h"

namespace strandline {
namespace {

// What the house's rules look at: zones that differ here may not be allowed the same bowls.
bool same_history(const Span& x, const Span& y) {
  auto origins = [](const Span& s) {
    std::vector<ColourOrigin> all;
    for (const Population& p : s.populations) all.push_back(p.origin);
    std::sort(all.begin(), all.end());
    return all;
  };
  auto services = [](const Span& s) {
    std::vector<std::pair<ServiceKind, double>> all;
    for (const Service& one : s.services) all.emplace_back(one.kind, one.weeks_ago.value_or(-1));
    std::sort(all.begin(), all.end());
    return all;
  };
  return x.history_unknown == y.history_unknown && x.extension == y.extension &&
         x.stretch_returns == y.stretch_returns && x.wet_stretch_percent == y.wet_stretch_percent &&
         origins(x) == origins(y) && services(x) == services(y);
}

// How unlike two zones are: wish, looks and white share, in ΔE*ab; porosity and resistance by what they may do to a
// colour (by choice); another history is further off than any colour.
double unlike(const SearchZone& x, const SearchZone& y) {
  constexpr double kHistory = 1000, kPorosity = 5, kResistance = 10;
  auto distance = [](const Lab& a, const Lab& b) { return std::hypot(a.l - b.l, a.a - b.a, a.b - b.b); };
  const Constants c;
  const ZoneView vx = view(x.draws->nominal, x.draws->kinds, c), vy = view(y.draws->nominal, y.draws->kinds, c);
  return distance(x.target->lab, y.target->lab) + distance(vx.lab, vy.lab) + 0.5 * std::abs(vx.contrast - vy.contrast) +
         kPorosity * std::abs(x.span->porosity.value - y.span->porosity.value) +
         kResistance * std::abs(x.span->resistance - y.span->resistance) +
         (same_history(*x.span, *y.span) ? 0 : kHistory) + (apart_by_white(x, y) ? kHistory : 0);
}

}  // namespace

bool apart_by_white(const SearchZone& a, const SearchZone& b) {
  constexpr double kSame = 1e-9;
  constexpr Constants c;
  const double white = std::max(a.white, b.white);
  if (white < tables::natural_for_white[0][0]) return false;
  const bool both = std::min(a.white, b.white) >= tables::natural_for_white[0][0];
  return std::abs(a.white - b.white) > c.own_bowl_from_white + kSame ||
         (both && std::abs(a.span->resistance - b.span->resistance) >= c.own_bowl_from_resistance - kSame);
}

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
