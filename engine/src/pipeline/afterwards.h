// What is told of the weeks after a visit, from what is offered first.
#pragma once

#include "strandline/pipeline.h"

namespace strandline {

// Of the recommended way, else of the plan's own bowls. Requires check(visit) empty.
Afterwards afterwards(const Visit& visit, const VisitPlan& plan);

}  // namespace strandline
