// What a colourist would point at before mixing: bands, hot regrowth, uneven ends, green.
#pragma once

#include "strandline/assess.h"

namespace strandline {

// Notes with their place, from the colours of `zones` (document order). Thresholds are common practice.
Problems findings(const Head& head, const std::vector<ZoneColour>& zones);

}  // namespace strandline
