// What a simulated truth says of a head and a bowl, as the engine is told it.
#pragma once

#include "evidence/truth.h"
#include "strandline/formula.h"
#include "strandline/head.h"
#include "strandline/treatment.h"

namespace strandline {

// One zone, "area/span", read as the colourist knows it.
Head head_of(const truth::Known& known);

// A shelf of one range "r" of the bowl's class with one shade and one bottle, and the bowl mixed from it.
struct Kit {
  Shelf shelf;
  Formula formula;
};
Kit kit_of(const truth::Bowl& bowl);
Result<BowlChemistry> bowl_of(const truth::Bowl& bowl);

}  // namespace strandline
