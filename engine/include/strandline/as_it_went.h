// What the own bowls did in the times that really happened: `what_if` after the visit.
#pragma once

#include "strandline/pipeline.h"

namespace strandline {

// As what_if; the clock is `ran`, that of the visit as its marks left it, not one that is planned. A zone it does not
// tell of keeps the minutes of its bowl.
Result<VisitPlan> as_it_went(const Visit& visit, const Timeline& ran, const PredictOptions& options = {});

}  // namespace strandline
