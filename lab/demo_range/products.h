// The demo shelf as a value.
#pragma once

#include "strandline/shelf.h"

namespace strandline::demo {

// Every range and product of the invented shelf.
Shelf shelf();

}  // namespace strandline::demo
