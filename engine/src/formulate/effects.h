// What each part of a bowl is there for: the result without it.
#pragma once

#include "formulate/groups.h"

namespace strandline {

// One per colour part, none where there is only one. Requires a formula that chemistry() accepts.
std::vector<PartEffect> part_effects(const Formula& formula, const std::vector<const SearchZone*>& zones,
                                     const Draws& draws, const Shelf& shelf);

}  // namespace strandline
