#pragma once

#include <iosfwd>

#include "strandline/wire/answer.h"

namespace strandline::cli {

// One grid per zone: a row per level, a column per tone; ● can be had today, · cannot.
void print_reach(const wire::ReachAnswer& answer, std::ostream& out);

}  // namespace strandline::cli
