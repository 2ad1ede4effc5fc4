// Which readings and constants the spread of a prediction comes from (M13).
#pragma once

#include "predict/steps.h"
#include "strandline/predict.h"

namespace strandline {

// As doubt_of, with the steps ready. Sources that act together are left out; they are small where the model is nearly
// linear over the spread.
std::vector<ZoneDoubt> attribute(const Head& head, const std::vector<ReadyStep>& steps, const ParallelFor& parallel);

}  // namespace strandline
