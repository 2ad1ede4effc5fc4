// How much mix some zones take (M15).
#pragma once

#include <string>
#include <vector>

#include "strandline/head.h"
#include "strandline/shelf.h"

namespace strandline {

struct FormulaPolicy;

// Grams of mix by what is poured, > 0; 0 where the zones are none of the head's.
struct MixGrams {
  double cream = 0;   // worked in with a brush
  double liquid = 0;  // poured on, at the basin or from a bottle

  double of(const Range& range) const { return consistency(range) == Consistency::liquid ? liquid : cream; }
};

// What these zones ("area/span") take, waste and the client's own factor included. Requires check(head) empty.
// Example: mix_grams(head, {"crown/regrowth"}, policy).of(range).
MixGrams mix_grams(const Head& head, const std::vector<std::string>& zones, const FormulaPolicy& policy);

// Grams of hair between `from_cm` and `to_cm` of one cm² of scalp of an area whose longest fibres reach `length_cm`:
// fibres of all ages, so ever fewer reach far, and layers cut some of them above the tips.
double hair_g_per_scalp_cm2(const Hair& hair, double from_cm, double to_cm, double length_cm);

// How many packets the strands taken out of an area make, ≥ 1. Requires area.woven.
double packets(const Head& head, const Area& area);

}  // namespace strandline
