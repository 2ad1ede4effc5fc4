// A worked head: its document, what its first answer must and should be, and the one fact that changes it.
#pragma once

#include <cmath>
#include <functional>

#include "offer.h"

namespace strandline::cases {

struct Check {
  const char* name;  // "1.M2": case and mark
  std::function<bool(const Offer&)> holds;
};
using Checks = std::vector<Check>;

struct Case {
  const char* document;  // wire/cases/<document>.json
  Checks musts, shoulds;
  std::function<void(Visit&)> flip;
  Checks flipped;
};

std::vector<Case> deeper_and_even();    // 1 to 4
std::vector<Case> lighter_and_toned();  // 5 to 8
std::vector<Case> bright_and_white();   // 9 to 11
std::vector<Case> repaired();           // 12 to 14

inline Span& span_of(Visit& v, const std::string& zone) {
  for (Area& a : v.head.areas)
    for (Span& s : a.spans)
      if (a.id + "/" + s.id == zone) return s;
  throw std::out_of_range(zone);
}
inline ZoneAim& aim_for(Visit& v, const std::string& zone) {
  for (ZoneAim& a : v.aims)
    if (a.zone == zone) return a;
  throw std::out_of_range(zone);
}
// Between zones, levels.
inline double step(const Offer& o, const std::string& a, const std::string& b) {
  return std::abs(o.level(a) - o.level(b));
}
// In tenths of a level, as it is told.
inline bool within(const Offer& o, const std::string& zone, Bound level) {
  return level.holds(std::round(10 * o.level(zone)) / 10);
}

inline bool meets(Weeks told, Bound weeks) { return weeks.meets(told.from, told.until); }
inline bool line(const Offer& o, Bound weeks) { return meets(o.plan.after.line, weeks); }
inline bool lasts(const Offer& o, Bound weeks) { return meets(o.plan.after.lasts, weeks); }
inline bool rebook(const Offer& o, Bound weeks) { return meets(o.plan.after.rebook, weeks); }

}  // namespace strandline::cases
