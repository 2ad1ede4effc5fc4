// What the simulated truth's shades are made of.
#pragma once

#include "evidence/truth_light.h"

namespace strandline::truth {

// What a shade leaves on the range's white hair: a brown with a bell of its tone, as deep as `level`.
Spectrum shade_of(double level, Word tone, const Light& bed, const Ladder& ladder, Random& random);
// The same of a brown that falls by 1/e over `efold` nm and a bell `strength` times the usual height.
Spectrum shade_like(double level, Word tone, double efold, double strength, const Light& bed, const Ladder& ladder);

}  // namespace strandline::truth
