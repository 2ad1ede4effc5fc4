// Colour already on the hair, worked out from how it looks (M9).
#pragma once

#include "strandline/fibre.h"
#include "strandline/head.h"

namespace strandline {

// The fibre whose colour is what was read at `level`: pigment first, then the dye that explains the rest.
// `natural_level` is the level the hair grew at.
Fibre fibre_as_read(const Population& population, double level, double natural_level);

}  // namespace strandline
