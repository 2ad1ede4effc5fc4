#pragma once

#include <iosfwd>
#include <vector>

#include "src/print/swatch.h"

namespace strandline::cli {

void print_today(const std::vector<wire::ZoneToday>& zones, const Paint& paint, std::ostream& out);
// Today beside planned, and how likely each lands; then what is out of reach and why.
void print_zones(const std::vector<wire::ZoneView>& zones, const Paint& paint, std::ostream& out);
// Which readings and constants the spread of each zone comes from.
void print_doubt(const std::vector<wire::ZoneView>& zones, std::ostream& out);

}  // namespace strandline::cli
