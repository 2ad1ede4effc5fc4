// A simulated salon whose results are learned from as they come.
#pragma once

#include <vector>

#include "evidence/simulated_salon.h"
#include "strandline/learned.h"

namespace strandline {

// One record as it would be learned from; the shelf holds every range of the simulated salon under its own id.
learned::Outcome outcome_of(const truth::Record& record);

struct LearnedVisit {
  double median_error = 0, median_untaught = 0;  // levels, of what was expected against what the hair became
  double within = 0;                             // share whose true level lay in the stated range
};

struct LearnedSalon {
  std::vector<LearnedVisit> visits;
  double worse = 0;  // share of people whose last visit was foreseen worse than untaught by half a level
  double set_aside = 0, wrong_learned = 0;  // shares: of true records set aside, of wrong ones learned from
  learned::Model model;
};

LearnedSalon learned_salon(SalonWorld world, const truth::SalonPlan& plan);

}  // namespace strandline
