// The best bowl for zones of a head out of part of the shelf.
#pragma once

#include "mix/situation.h"
#include "strandline/review.h"

namespace strandline {

// Products that may be used; developers always may.
using Usable = std::function<bool(const Product&)>;
Shelf part_of(Shelf shelf, const Usable& usable);

// The best bowl for these zones, ready to mix. Absent where nothing is allowed.
std::optional<PlannedBowl> best_bowl(const Head& head, const Situation& now, const std::vector<Target>& targets,
                                     const std::vector<std::string>& zones, const Shelf& shelf,
                                     const FormulaPolicy& policy, const FormulateOptions& options,
                                     const std::string& label);

// An own bowl where it goes on.
struct Found {
  Situation now;  // the head as it finds it: after the bowls of earlier steps
  Step step;      // itself, for as long as the clock leaves it on each zone
};
// `bowls` are in order of their steps, each on for as long as in `steps`. Problems: those of the bowls.
Result<std::vector<Found>> found_by(const Visit& visit, const std::vector<Bowl>& bowls, const std::vector<Step>& steps,
                                    int scenarios);
// The same with the clock's own minutes.
Result<std::vector<Found>> found_by(const Visit& visit, const std::vector<Bowl>& bowls, int scenarios);

// A later step puts another bowl on this zone.
bool followed(const Bowl& bowl, const std::string& zone, const std::vector<Bowl>& all);

// Every zone of the bowl after it and after `instead`. Problems: those of the bowls.
Result<std::vector<ZoneDifference>> differences(const Visit& visit, const Found& own, const Formula& instead);

// A wish for every zone of the bowl to look as this bowl makes it; weights are those of the visit's own wishes.
Result<std::vector<Target>> as_it_makes(const Visit& visit, const Found& own);

// A formula ready to mix, for the zones and the step of this bowl.
PlannedBowl mixed(const Bowl& bowl, const Formula& formula, double objective, const Shelf& shelf);
// The same shares at as many grams as the own bowl has; as it was where law or stock forbid it.
PlannedBowl in_grams_of(const Bowl& own, PlannedBowl bowl, const Shelf& shelf, const FormulaPolicy& policy);

// The maker of the formula's range.
std::string maker_of(const Formula& formula, const Shelf& shelf);

}  // namespace strandline
