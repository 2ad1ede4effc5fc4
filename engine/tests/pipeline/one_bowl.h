// What the tests of the running visit mix: a tint on the small shelf, in an order and with a clock that are nobody's
// policy.
#pragma once

#include "engine/tests/support.h"

namespace strandline::testing_support {

// Two areas, no bowl yet; so many points of each curve are sampled.
inline Visit clocked_visit(int sample_points = 64) {
  Visit v;
  v.head = two_areas();
  v.shelf = small_shelf();
  SchedulePolicy& p = v.policy.schedule;
  p.cover_areas = {AreaKind::crown, AreaKind::top,     AreaKind::nape,          AreaKind::other,
                   AreaKind::sides, AreaKind::temples, AreaKind::front_hairline};
  p.lighten_areas = p.cover_areas;
  p.prepare = {5, 1}, p.remove_packet = {2, 0.5};
  p.first_check = 15, p.check_every_min = 5, p.check_every_max = 10, p.check_minutes = 1;
  p.late_tolerance = 10, p.sample_points = sample_points, p.node_limit = 60000;
  return v;
}

// Bowl A, 35 minutes.
inline Bowl tint_on(std::vector<std::string> zones) {
  Bowl a;
  a.label = "A";
  a.formula.range = "tint";
  a.formula.minutes = 35;
  a.formula.parts = {{"shade-1", 30}, {"developer-6", 30}};
  a.zones = std::move(zones);
  return a;
}

}  // namespace strandline::testing_support
