// Where lengths cannot follow the wish, regrowth that goes there alone would stand against them.
#pragma once

#include "strandline/pipeline.h"

namespace strandline {

// The wishes of a plan with every such regrowth taken to what its lengths come to; empty where there is none, or where
// a way over several steps is recommended, by which the lengths follow. `out` is planned, its ways known.
std::vector<Target> to_the_lengths(const Visit& visit, const VisitPlan& out);

// `instead`, planned for those wishes, with the plan for what was wished as its first other way, and why.
void offer_first(VisitPlan& out, Plan instead);

}  // namespace strandline
