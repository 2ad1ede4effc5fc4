// M11: how far hair has grown.
#pragma once

#include "strandline/units.h"

namespace strandline {

// Centimetres grown in `weeks` ≥ 0 at the usual pace, with its spread from person to person.
Reading regrowth_cm(double weeks);

}  // namespace strandline
