// Bands: where neighbouring zones come out visibly apart. Nobody gets one unsaid.
#pragma once

#include "strandline/formulate.h"

namespace strandline {

// Neighbours are spans that meet in one area, and spans beside each other in areas that meet (packets apart: their
// contrast is the wish). The widest first.
std::vector<Band> bands(const Head& head, const std::vector<Target>& targets, const std::vector<ZonePlan>& zones);

// One note for each band.
Problems told_bands(const std::vector<Band>& bands);

}  // namespace strandline
