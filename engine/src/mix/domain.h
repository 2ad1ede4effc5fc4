// What a shelf can mix: its settings with the recipes each may carry.
#pragma once

#include <vector>

#include "mix/recipes.h"
#include "mix/settings.h"
#include "strandline/treatment.h"

namespace strandline {

// The recipes and settings of a whole shelf.
struct Domain {
  const Shelf* shelf = nullptr;  // which must outlive it
  std::vector<RecipeSet> sets;
  struct OneSetting {
    Setting setting;
    int set = 0;
  };
  std::vector<OneSetting> settings;
};
Domain domain(const Shelf& shelf, const FormulaPolicy& policy);
// The settings alone, no recipes.
Domain domain_settings(const Shelf& shelf, const FormulaPolicy& policy);

// The chemistry of a setting without its load, so many minutes on the hair.
BowlChemistry bare_chemistry(const Setting& setting, double minutes);

}  // namespace strandline
