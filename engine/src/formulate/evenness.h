// Evenness at join lines: where two spans of an area meet, the bowls are chosen together.
#pragma once

#include "formulate/choose.h"

namespace strandline {

// Of the formulas kept for each bowl the combination with the least sum of objectives and prices of unevenness, as far
// as changing one bowl at a time finds it; the sum is never above that of the best of each. Adds the price to
// `choice.objective`. The price is ≥ 0, so the objective without it stays a lower bound. Zones that stay as they are
// count as neighbours.
void even_out(const ChoiceInput& in, Choice& choice);

// The price of unevenness as the bowls of `choice` are now.
double unevenness(const ChoiceInput& in, const Choice& choice);

}  // namespace strandline
