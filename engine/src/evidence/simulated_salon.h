// Two more simulated salons, by the engine's own equations with numbers that nobody is told: one just as the engine
// doubts, one less well behaved.
#pragma once

#include "evidence/truth_salon.h"

namespace strandline {

enum class SalonWorld {
  own_family,  // as the engine doubts: its constants drawn from their spread, once for each person
  restless,    // people now and then far from the rest, who change slowly, and ranges that suit some of them
  outside      // equations of its own (truth_salon.h)
};
inline constexpr int kSalonWorlds = 3;

std::vector<truth::Record> simulate_salon(SalonWorld world, const truth::SalonPlan& plan);

}  // namespace strandline
