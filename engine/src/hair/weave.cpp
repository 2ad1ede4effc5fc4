#include <algorithm>

#include "strandline/head.h"

namespace strandline {
namespace {

// The area whose stretch of scalp this hair stands on: its own, or the one that its packets come out of.
const Area& ground(const Head& head, const Area& area) {
  if (!area.woven) return area;
  const auto from =
      std::find_if(head.areas.begin(), head.areas.end(), [&](const Area& a) { return a.id == area.woven->from; });
  return from == head.areas.end() ? area : *from;
}

}  // namespace

double own_share(const Head& head, const Area& area) {
  if (area.woven) return area.woven->share;
  double left = 1;
  for (const Area& other : head.areas)
    if (other.woven && other.woven->from == area.id) left -= other.woven->share;
  return std::max(0.0, left);
}

double scalp_cm2(const Head& head, const Area& area) { return ground(head, area).scalp_cm2 * own_share(head, area); }

double hair_factor(const Head& head, const Area& area) { return ground(head, area).hair_factor; }

}  // namespace strandline
