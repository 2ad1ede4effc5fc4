// From what every set of groups found to the bowls of the head.
#pragma once

#include <vector>

#include "formulate/enumerate.h"
#include "formulate/pour.h"

namespace strandline {

// One bowl chosen: its zones, its recipe, and the next best for the same zones.
struct Chosen {
  std::vector<int> zones;  // indices of SearchZone
  Candidate best, runner_up;
  bool has_runner_up = false;
};

struct Choice {
  std::vector<Chosen> bowls;
  double objective = 0;
  double fewer_objective = 0;  // with one bowl less
  bool has_fewer = false;
};

struct ChoiceInput {
  const Head& head;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const Domain& domain;
  const std::vector<SearchZone>& zones;
  const Draws& draws;
  double total_weight = 1;
};

// Re-evaluates the kept candidates in double precision, drops what the law list or the stock forbids, and finds the
// cheapest cover of both span kinds with at most policy.bowls_max bowls.
Choice choose(const ChoiceInput& in, const std::vector<ZoneGroup>& groups, const std::vector<Enumeration>& by_kind);

// J of one recipe for some zones, exact, without the price of the bowl.
double exact_objective(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones);

}  // namespace strandline
