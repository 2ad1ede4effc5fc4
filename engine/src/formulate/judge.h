// The colourist's own bowls under the same rules as the search's.
#pragma once

#include "mix/settings.h"
#include "mix/situation.h"
#include "strandline/visit.h"

namespace strandline {

// Ratio, strength and longest time that the range allows; a shorter time breaks nothing, as lengths may get the last
// minutes of a mix.
Problems range_rules(const Setting& setting, const std::string& label);

// House rules, range rules, stock and law that a bowl breaks on the zones it is meant for; `head` as it is when it goes
// on.
Problems broken_rules(const Head& head, const Bowl& bowl, const Shelf& shelf, const FormulaPolicy& policy);

// Which bowl serves each zone last, and what stands against its wish. `before` = as the hair is before the last step.
std::vector<ZonePlan> judged(const Situation& before, const std::vector<Target>& targets, const Prediction& prediction,
                             const std::vector<PlannedBowl>& bowls, const Shelf& shelf, const FormulaPolicy& policy);

}  // namespace strandline
