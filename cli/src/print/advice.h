#pragma once

#include <iosfwd>

#include "src/print/swatch.h"
#include "strandline/wire/advice.h"

namespace strandline::cli {

// Own bowls: fine, or the smallest change; then what wrong readings would do.
void print_review(const wire::ReviewAnswer& answer, const Visit& visit, std::ostream& out);
// Bowls made otherwise, with the difference that remains.
void print_remade(const wire::RemadeAnswer& answer, const Shelf& shelf, std::ostream& out);

}  // namespace strandline::cli
