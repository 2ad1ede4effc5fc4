// Why a bowl is as it is, and why a wish cannot be had today: codes with parameters.
#pragma once

#include "mix/domain.h"
#include "mix/groups.h"
#include "mix/recipes.h"
#include "mix/settings.h"
#include "strandline/formulate.h"

namespace strandline {

Reasons reasons_for(const PlannedBowl& bowl, const std::vector<const SearchZone*>& zones, const Shelf& shelf);

// Empty where the zone lands: within half a level, in the tone, white covered.
Reasons reasons_against(const SearchZone& zone, const ZoneResult& result, const Domain& domain,
                        const FormulaPolicy& policy);

std::string figure(double value, int decimals = 1);

}  // namespace strandline
