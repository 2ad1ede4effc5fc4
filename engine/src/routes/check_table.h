// What to mix for each level that the check after lightening or removing may show.
#pragma once

#include "routes/best_way.h"
#include "strandline/route.h"

namespace strandline {

// One table per bowl of the step to come that goes on hair which `first` touched. `now` is the hair at the check.
std::vector<RouteStep::IfCheckShows> check_tables(const RouteTask& in, const Situation& now, const RouteStep& first,
                                                  const std::vector<PlannedBowl>& bowls);

}  // namespace strandline
