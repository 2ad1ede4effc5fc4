#pragma once

#include <iosfwd>

#include "strandline/schedule.h"

namespace strandline::cli {

// The clock drawn in characters: a lane for each pair of hands and each developing zone, then the tasks as a
// list.
void print_timeline(const Timeline& timeline, std::ostream& out);

}  // namespace strandline::cli
