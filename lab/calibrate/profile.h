// Spread of the constants along their profiles, put into the posterior in place of the bottom's curvature.
#pragma once

#include "fit.h"

namespace strandline::calibrate {

// For each constant (nuisances keep theirs): the others are refitted with it held one posterior sd away on either side.
// In a quadratic valley the cost rises by a half; where it rises by less on the mean of both sides, the valley is wider
// than its bottom says and the constant's spread grows by √(½ / rise), and shrinks where it rises by more. Correlations
// stay.
Fit with_profile_spread(const Problem& problem, Fit f);

}  // namespace strandline::calibrate
