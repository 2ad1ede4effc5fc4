// What a shade promises that is known by its name alone: "7 copper" (M18).
#pragma once

#include "strandline/head.h"
#include "strandline/treatment.h"

namespace strandline {

// The usual bowl of a class without its load: developer, ratio and full time of common practice (knowledge/uptake).
BowlChemistry usual_bowl(ProductClass cls, const Constants& constants);
// The ratio of that bowl, grams of developer per gram of colour; 0 = used as it is.
double usual_ratio(ProductClass cls, const Constants& constants);

// The load of a bowl that brings `hair` to `wanted` (D65/10°), as near as three plain absorbers come to it. `bowl` is
// taken without its own load; away from the scalp. Zero where the hair takes nothing of this bowl.
Spectrum load_for(const Fibre& hair, const Lab& wanted, const BowlChemistry& bowl, const Constants& constants);

// The load of a shade of this class, 1…10 and tone word, in its usual bowl: what natural hair of its own level needs to
// come out at that level and tone. Direct colour and correctors promise their colour on white hair.
// A class may be known to come out deeper or lighter than its name by a part of a level (promise_demi).
// Example: promised_load(ProductClass::permanent, 7, Tone::copper, Constants{}).
Spectrum promised_load(ProductClass cls, double level, Tone tone, const Constants& constants);

// The level a shade of this class comes out at on natural hair of the level it is named by.
double promised_level(ProductClass cls, double level, const Constants& constants);

}  // namespace strandline
