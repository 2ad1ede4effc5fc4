// Which first step: of every way on the grid (range × strength × time) the one whose hair serves the wish best.
#pragma once

#include <algorithm>
#include <optional>

#include "mix/domain.h"
#include "mix/first_steps.h"
#include "mix/groups.h"
#include "mix/situation.h"

namespace strandline {

// Everything that a route is worked out from; it must outlive what refers to it.
struct RouteTask {
  const Head& head;
  const std::vector<Target>& targets;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const FormulateOptions& options;
  const Domain& domain;
};

// What one way leaves behind on the zones it touches.
struct Tried {
  FirstStep step;
  Formula formula;
  double furthest_short = 0;  // levels that the darkest pigmented fibres stay below their wish
  double objective = 0;       // of the zones touched, by the rough judgement below
};

// Of the ways that bring every zone to its level the gentlest few, each judged by what can follow; where none does, the
// one that comes nearest. None where it would not bring more than it costs.
std::optional<Tried> best_way(const RouteTask& task, const Situation& now, Opening opening,
                              const std::vector<const SearchZone*>& zones);

std::vector<std::string> ids(const std::vector<const SearchZone*>& zones);

inline bool among(const std::vector<std::string>& all, const std::string& id) {
  return std::find(all.begin(), all.end(), id) != all.end();
}

}  // namespace strandline
