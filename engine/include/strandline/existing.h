// Colour already on the hair, worked out from how it looks (M9).
#pragma once

#include <array>

#include "strandline/fibre.h"
#include "strandline/head.h"

namespace strandline {

// The fibre whose colour is what was read at `level`: pigment first, then the dye that explains the rest.
// `natural_level` is the level the hair grew at; `lift_under` how much a tint on it lifted, against the usual bowl.
Fibre fibre_as_read(const Population& population, double level, double natural_level, double lift_under = 1);

// Three plain absorbers (yellow, red, blue) that stand for whatever colorants are there: optical depth of these
// amounts, each the depth at its peak (knowledge/uptake).
Spectrum plain_absorbers(const std::array<double, 3>& amounts);
// `base` with the amounts ≥ 0 of three plain absorbers (yellow, red, blue) instead of its dye that bring it nearest to
// `wanted` (damped Gauss–Newton on L*a*b*).
Fibre dyed_to(const Fibre& base, const Lab& wanted, const Pigments& pigments);
// The natural pigment after as much lightening as makes it just as light as `lightness`; untouched if it is already.
Fibre lifted_to(const Fibre& natural, double lightness, const Constants& constants);
// Natural hair that a tint (its exposure against that of the usual bowl), or a lightener and a toner after it, made
// look like `seen`.
Fibre tinted_to(const Fibre& natural, const Lab& seen, const Constants& constants, double lift_under = 1);
Fibre toned_to(const Fibre& natural, const Lab& seen, const Constants& constants);

}  // namespace strandline
