// Which readings and constants the spread of a prediction comes from (M13).
#pragma once

#include "predict/steps.h"
#include "strandline/predict.h"

namespace strandline {

// Fills `doubt` of every zone of `prediction`: the variance of L* with one source drawn and the others nominal, over
// the sum of these variances; and adds a note a zone on the sources that matter most. Sources that act together are
// thereby left out; they are small where the model is nearly linear over the spread.
void attribute(const Head& head, const std::vector<ReadyStep>& steps, const ParallelFor& parallel,
               Prediction& prediction);

}  // namespace strandline
