// From a choice to what a colourist reads: bowls in grams with their reasons, zones with what stands against them.
#pragma once

#include "formulate/choose.h"

namespace strandline {

Recipe recipe_of(const Domain& domain, const Candidate& candidate);

// Bowls A, B … in the order of the choice.
std::vector<PlannedBowl> planned_bowls(const ChoiceInput& in, const Choice& choice);

// Every zone of the head after these bowls.
Result<std::vector<ZonePlan>> planned_zones(const ChoiceInput& in, const std::vector<Target>& targets,
                                            const std::vector<PlannedBowl>& bowls, const PredictOptions& options);

// Products of which these bowls together need more than there is.
std::vector<std::string> short_of(const std::vector<PlannedBowl>& bowls, const Shelf& shelf);

// The shelf after these bowls were mixed.
Shelf left_after(Shelf shelf, const std::vector<PlannedBowl>& bowls);

}  // namespace strandline
