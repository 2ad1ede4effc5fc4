// What a shade promises that is known by its name alone: "7 copper" (M18).
#pragma once

#include "strandline/head.h"
#include "strandline/treatment.h"

namespace strandline {

// Developer, ratio and full time of a class by common practice (knowledge/uptake), and its alkali, permanent tint = 1.
ReferenceProcess usual_process(ProductClass cls, const Constants& constants);
double usual_alkali(ProductClass cls, const Constants& constants);
// A bowl of this process, whole and without a load, its alkali that of a permanent tint; and the usual bowl of a class.
BowlChemistry bare_bowl(ProductClass cls, const ReferenceProcess& process);
BowlChemistry usual_bowl(ProductClass cls, const Constants& constants);

// Hair after a bowl without dye, and how much of each band's load shows on it: depth = its own + shows · load.
struct ShownLoad {
  Fibre bare;
  Spectrum shows{};
};
// `bowl` is taken without its own load; away from the scalp.
ShownLoad shown_load(const Fibre& hair, const BowlChemistry& bowl, const Constants& constants);
// The load of a bowl that brings `hair` to `wanted` (D65/10°), as near as three plain absorbers come to it. Zero where
// the hair takes nothing of this bowl.
Spectrum load_for(const Fibre& hair, const Lab& wanted, const BowlChemistry& bowl, const Constants& constants);

// The load of a shade of this class, 1…10 and tone word, in its usual bowl: what natural hair of its own level needs to
// come out at that level and tone. Direct colour and correctors promise their colour on white hair, without a level (0)
// the hue of their word.
// A class may be known to come out deeper or lighter than its name by a part of a level (promise_demi).
// Example: promised_load(ProductClass::permanent, 7, Tone::copper, Constants{}).
Spectrum promised_load(ProductClass cls, double level, Tone tone, const Constants& constants);
// The same by a range's own reference bowl.
Spectrum promised_load(const BowlChemistry& usual, double level, Tone tone, const Constants& constants);
// Does this level, 0 = none, and tone say a colour without a swatch? Without a level only a hue of a corrector or a
// direct colour does.
bool names_colour(ProductClass cls, double level, Tone tone);

// The level a shade of this class comes out at on natural hair of the level it is named by.
double promised_level(ProductClass cls, double level, const Constants& constants);

}  // namespace strandline
