// Beyond the certified domain: whole gram steps instead of eighths, and a fourth shade.
#pragma once

#include "formulate/choose.h"
#include "mix/situation.h"

namespace strandline {

struct Refined {
  PlannedBowl bowl;
  double objective = 0;  // of the grams as they are weighed, on the scale of PlannedBowl::objective
  bool fourth = false;   // it holds a shade more than the certified domain allows
};

// The best that steps of grams from part to part and one more shade reach from a certified bowl; a local best, so no
// claim beyond it. Absent where no step gains.
std::optional<Refined> refine(const ChoiceInput& in, const Situation& now, const PlannedBowl& certified);

// The same plan with every bowl refined, its bowls' refined_objective noted; absent where too little is gained
// (knowledge/loss/choosing.json).
Result<std::optional<Alternative>> closer(const ChoiceInput& in, const Situation& now,
                                          const std::vector<Target>& targets, Plan& plan,
                                          const PredictOptions& options);

}  // namespace strandline
