// What each part of a bowl is there for: the result without it.
#pragma once

#include "mix/groups.h"

namespace strandline {

// One per colour part, none where there is only one. Requires a formula that chemistry() accepts. `longer`: minutes by
// which it is on each zone longer than it says, from when half of the zone was touched.
std::vector<PartEffect> part_effects(const Formula& formula, const std::vector<const SearchZone*>& zones,
                                     const std::vector<double>& longer, const Draws& draws, const Shelf& shelf);

}  // namespace strandline
