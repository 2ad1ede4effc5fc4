// From single bowls to the bowls of the head: which zones share one, found lazily and exactly.
#pragma once

#include <vector>

#include "formulate/pour.h"
#include "formulate/search.h"

namespace strandline {

inline constexpr int kBowlsMost = 8;  // more than any policy allows

// One bowl chosen: its zones, its recipe, and the next best for the same zones.
struct Chosen {
  std::vector<int> zones;  // indices of SearchZone
  Candidate best, runner_up;
  bool has_runner_up = false;
};

struct Choice {
  std::vector<Chosen> bowls;
  double objective = 0;
  double bound = 0;  // no choice costs less; the objective itself unless a search was stopped
};

struct ChoiceInput {
  const Head& head;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const Domain& domain;
  const std::vector<SearchZone>& zones;
  const Draws& draws;
  double total_weight = 1;
  std::function<const ZoneTable&(int setting, int zone)> table;  // of Domain::settings and `zones`
  std::vector<Step> before = {};                                 // done before these bowls, on the head as it was read
  char first_label = 'A';
};

// Lists what one bowl could be for some zones, ordered by the single-precision objective: search.h in earnest, a full
// enumeration in tests. `mixing_price` false: the zones' own part only.
using BowlLists = std::function<BowlList(const std::vector<int>& zones, bool mixing_price)>;

class Chooser {
 public:
  Chooser(const ChoiceInput& in, std::vector<ZoneGroup> groups, BowlLists lists);

  // The cheapest cover of both span kinds with at most `bowls_max` bowls. A set of groups is searched only when its
  // lower bound (what its zones cost at best each by itself) does not rule it out. Where a search was stopped: the
  // cheapest of what was found.
  Choice choose(int bowls_max);
  // One bowl for these zones out of a list: exact in double precision, law and stock kept, the best first.
  Chosen chosen(const std::vector<int>& zones, std::vector<Candidate> list) const;
  // What leaving these zones costs.
  double leave_cost(const ZoneGroup& group) const;

 private:
  struct Kind {
    std::vector<ZoneGroup> groups;
    std::vector<double> least;                  // per mask: a lower bound, exact where searched to the end
    std::vector<bool> searched;                 // per mask
    std::vector<std::vector<Candidate>> exact;  // per mask, best first
    std::vector<double> leave;                  // per group
  };
  // The cheapest way to share at most `most` bowls between the two kinds, at these costs per mask.
  struct Split {
    double cost = 0;
    std::vector<int> masks[2];
  };
  Split cheapest(int most, const std::vector<double> (&costs)[2]) const;
  void search(Kind& kind, int mask);

  const ChoiceInput& in_;
  BowlLists lists_;
  std::vector<Kind> kinds_;
  bool stopped_ = false;  // some list is not complete
};

// The kept candidates for one bowl, exact and allowed, best first. Ties within 1e-6 go by setting and shares.
std::vector<Candidate> exact_list(const ChoiceInput& in, std::vector<Candidate> kept, const std::vector<int>& zones);

// J of one recipe for some zones, exact, without the price of the bowl and of its money.
double exact_objective(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones);

}  // namespace strandline
