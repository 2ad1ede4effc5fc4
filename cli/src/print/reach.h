#pragma once

#include <iosfwd>

#include "strandline/wire/answer.h"

namespace strandline::cli {

// One grid per zone: a row per level, a column per tone; ● can be had today, · cannot.
// The map of each zone, and for each wish in levels what is nearest to it and what stays.
void print_reach(const wire::ReachAnswer& answer, const std::vector<ZoneAim>& wishes, std::ostream& out);

}  // namespace strandline::cli
