// What zones look like after some steps, by the nominal numbers alone.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "strandline/predict.h"
#include "strandline/review.h"

namespace strandline {

// In document order. Problems: those of the steps.
Result<std::vector<std::pair<std::string, Looks>>> nominal_looks(const Head& head, const std::vector<Step>& steps,
                                                                 const Shelf& shelf);

}  // namespace strandline
