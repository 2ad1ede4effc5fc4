// A head at some point of its visits: what is in its fibres in every scenario, and what a colourist would read on it.
#pragma once

#include "mix/groups.h"
#include "strandline/scenario.h"

namespace strandline {

struct Situation {
  Head head;               // readings as they would be now
  Draws draws;             // fibres as they are now
  std::vector<Step> done;  // since the head was read
};

Situation at_start(const Head& head, int scenarios);
// After one more step. Readings follow the fibres: level, tone, porosity, resistance, and how the colour came about.
// Problems: a step that names an unknown zone, product or range.
Result<Situation> after(Situation now, const Step& step, const Shelf& shelf);

// The same with some of its scenarios only.
Situation with_scenarios(const Situation& now, const std::vector<size_t>& scenarios);

// The zones that have a wish, as a search sees them. The situation and the targets must outlive them.
std::vector<SearchZone> search_zones(const Situation& now, const std::vector<Target>& targets,
                                     const FormulaPolicy& policy);

}  // namespace strandline
