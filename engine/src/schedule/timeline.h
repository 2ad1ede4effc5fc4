// From the plan found to what people read.
#pragma once

#include "schedule/looks.h"
#include "schedule/tail.h"

namespace strandline {

// Tasks, both clocks of every application and the order with its reasons. Requires that the tail fits at
// plan.basin.
Timeline make_timeline(const Instance& instance, const PlannedJobs& plan, const std::vector<TailStep>& tail,
                       const std::vector<Look>& looks);

}  // namespace strandline
