// Woven strands: how many packets a bowl fills.
#pragma once

#include "strandline/formulate.h"

namespace strandline {

// Every one of these zones is woven.
bool all_woven(const Head& head, const std::vector<std::string>& zones);

// "in_packets" {packets, grams each} where some of the bowl's zones are woven and its mix is a cream;
// none else: a liquid runs over packets and the hair between them. About, as widths and partings
// are (knowledge/amounts).
Reasons packets_of(const Head& head, const PlannedBowl& bowl, const Shelf& shelf, const FormulaPolicy& policy);

}  // namespace strandline
