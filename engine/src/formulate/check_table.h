// What to mix for each level that the check after lightening or removing may show.
#pragma once

#include "formulate/enumerate.h"
#include "formulate/situation.h"
#include "strandline/route.h"

namespace strandline {

struct CheckInput {
  const Head& head;
  const std::vector<Target>& targets;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const FormulateOptions& options;
  const Domain& domain;
};

// One table per bowl of the step to come that goes on hair which `first` touched. `now` is the hair at the check.
std::vector<RouteStep::IfCheckShows> check_tables(const CheckInput& in, const Situation& now, const RouteStep& first,
                                                  const std::vector<PlannedBowl>& bowls);

}  // namespace strandline
