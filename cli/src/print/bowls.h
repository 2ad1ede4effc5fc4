#pragma once

#include <iosfwd>

#include "strandline/wire/answer.h"

namespace strandline::cli {

// Each bowl with its grams in the order they are weighed, where it goes, and why.
void print_bowls(const wire::FormulateAnswer& answer, std::ostream& out);
// Totals, reasons, notes and why the search stopped.
void print_summary(const wire::FormulateAnswer& answer, std::ostream& out);

}  // namespace strandline::cli
