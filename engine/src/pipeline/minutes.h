// How long the clock leaves each zone of a bowl on.
#pragma once

#include "strandline/pipeline.h"

namespace strandline {

// The bowls' own minutes become the clock's. A zone that it does not tell of keeps its own.
void leave_on(std::vector<PlannedBowl>& bowls, const Timeline& timeline);

// Where the clock takes a bowl off before the time that was asked for ("comes_off_early"), or leaves it on a zone for
// longer than its range allows ("stays_too_long").
Problems told_of(const Visit& visit, const std::vector<PlannedBowl>& bowls, const Timeline& timeline);

}  // namespace strandline
