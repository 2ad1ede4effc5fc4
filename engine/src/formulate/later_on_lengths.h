// The regrowth's own mix, combed through the lengths for the last minutes: one bowl less to mix, where it does not
// build up.
#pragma once

#include "formulate/choose.h"

namespace strandline {

struct Later {
  Alternative way;
  bool offered = false;
  Reasons why;  // "builds_up_on_lengths" where it would be too dark there
};

// For plans whose lengths have a wish and a regrowth bowl that may touch them. `way` is filled where offered.
Result<Later> later_on_lengths(const ChoiceInput& in, const std::vector<Target>& targets, const Choice& best,
                               const Plan& plan, const PredictOptions& options);

}  // namespace strandline
