// Full enumeration of the certified domain: for every set of zone groups, the best recipes that may serve it, each
// zone for whichever of the range's times costs least there.
// The oracle of tests and scoreboards: vectorised, nothing pruned. What people use is search.h.
#pragma once

#include <vector>

#include "mix/domain.h"
#include "mix/groups.h"
#include "search/best_few.h"

namespace strandline {

// Everything one kind of span needs: groups, their zones, and what every set of groups (bit mask) found.
struct Enumeration {
  // best[mask] for mask in 1 … 2^groups − 1, ordered by (objective, setting, shares); empty where nothing is allowed.
  std::vector<std::vector<Candidate>> best;
  long long recipes = 0, evaluations = 0;
  bool cancelled = false;
};

// `grams` of mix per set of groups: money, law and stock count; without it recipes alone.
Enumeration enumerate(const Domain& domain, const std::vector<SearchZone>& zones, const std::vector<ZoneGroup>& groups,
                      const Draws& draws, double total_weight, const FormulaPolicy& policy,
                      const FormulateOptions& options, const std::vector<MixGrams>& grams = {});

}  // namespace strandline
