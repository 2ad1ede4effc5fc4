// What would change the answer: readings under which the runner-up would be the better bowl.
#pragma once

#include <functional>

#include "mix/situation.h"

namespace strandline {

struct TurnInput {
  const Head& head;  // as it was read
  const std::vector<Target>& targets;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  int scenarios = kSearchScenarios;
  std::function<bool()> cancelled = [] { return false; };  // true: what was found so far is told
};

// For each bowl the misreadings (misread.h) that turn the answer. Requires bowls of the first step.
void add_turns(const TurnInput& in, std::vector<PlannedBowl>& bowls);

}  // namespace strandline
