// What follows the visit.
#pragma once

#include <iosfwd>

#include "strandline/wire/answer.h"

namespace strandline::cli {

void print_after(const Afterwards& after, std::ostream& out);

}  // namespace strandline::cli
