// The demo shelf as a value.
#pragma once

#include "strandline/shelf.h"

namespace strandline::demo {

// Every range and product of the invented shelf. `worst_miss` receives the largest ΔE00 between a swatch and its name.
Shelf shelf(double* worst_miss);

}  // namespace strandline::demo
