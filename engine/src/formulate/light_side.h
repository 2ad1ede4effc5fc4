// The safe side first: lighter today, deepened at the basin where that is wanted.
#pragma once

#include "formulate/choose.h"

namespace strandline {

// Share of the scenarios, weighted over its zones, in which this bowl comes out darker than the wish by more than half
// a level.
double too_dark(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones);

// The same zones share the same bowls; each bowl that may well come out too dark becomes the one of its kept formulas
// that seldom does and costs least. No bowls where none may, or where none is seldom enough.
Choice on_the_light_side(const ChoiceInput& in, const Choice& best);

}  // namespace strandline
