#pragma once

#include <iosfwd>

#include "strandline/visit.h"

namespace strandline::cli::en {

// The usual cautions of the work, and the date of the skin test; printed with everything that may go on a
// head.
void print_cautions(const Visit& visit, std::ostream& out);

}  // namespace strandline::cli::en
