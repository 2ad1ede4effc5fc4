// formulate() from any point of a visit: the certified search on the hair as it is by then.
#pragma once

#include <functional>
#include <optional>

#include "mix/situation.h"

namespace strandline {

// These bowls for as long as a clock leaves them on, their own minutes taken as wanted; empty where no clock holds
// them.
using Clock = std::function<std::optional<std::vector<PlannedBowl>>(std::vector<PlannedBowl>)>;

struct From {
  const Situation& now;
  const Head& head;        // as it was read; what people are told starts there
  char first_label = 'A';  // of the bowls
  bool other_ways = true;
  Clock clock = {};  // none: every zone leaves when its time is over
};

Result<Plan> formulate_from(const From& from, const std::vector<Target>& targets, const Shelf& shelf,
                            const FormulaPolicy& policy, const FormulateOptions& options);

}  // namespace strandline
