// From single bowls to the bowls of the head: which zones share one, found lazily and exactly.
#pragma once

#include <functional>
#include <vector>

#include "formulate/pour.h"
#include "formulate/search.h"

namespace strandline {

inline constexpr int kBowlsMost = 8;  // more than any policy allows

// One bowl chosen: its zones, its recipe, and the next best formulas for the same zones.
struct Chosen {
  std::vector<int> zones;  // indices of SearchZone
  Candidate best;
  std::vector<Candidate> others;  // with other tubes or another strength, best first
  std::vector<Candidate> list;    // all that was kept, best first
};

struct Choice {
  std::vector<Chosen> bowls;
  double objective = 0;
  double bound = 0;   // no choice costs less; what is certified of the objective without unevenness
  double uneven = 0;  // of it: the price of unevenness at join lines (evenness.h)
};

struct ChoiceInput {
  const Head& head;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const Domain& domain;
  const std::vector<SearchZone>& zones;
  const Draws& draws;
  double total_weight = 1;
  std::function<const ZoneTable&(int setting, int zone, double minutes)> table;  // of Domain::settings and `zones`
  std::vector<Step> before = {};  // done before these bowls, on the head as it was read
  char first_label = 'A';
  std::map<int, double> minutes = {};  // as Wish::minutes
  std::function<bool()> cancelled = [] { return false; };
};

// Lists what one bowl could be for some zones, ordered by the single-precision objective: BowlSearch::find in earnest.
using BowlLists = std::function<BowlList(const Wish&)>;

class Chooser {
 public:
  Chooser(const ChoiceInput& in, std::vector<ZoneGroup> groups, BowlLists lists);

  // The cheapest cover of both span kinds with at most `bowls_max` bowls. A set of groups is searched only when the
  // cheapest cover under what is known asks for it, and no further than a cover of it may still be the cheapest. Where
  // a search was stopped: the cheapest of what was found.
  Choice choose(int bowls_max);
  // One bowl for these zones out of a list: exact in double precision, law and stock kept, the best first.
  Chosen chosen(const std::vector<int>& zones, std::vector<Candidate> list) const;
  int sets() const;  // of groups that were searched
  // What leaving these zones costs.
  double leave_cost(const ZoneGroup& group) const;

 private:
  struct Kind {
    std::vector<ZoneGroup> groups;
    std::vector<double> alone;                  // per group: no bowl that serves it pays less for it
    std::vector<double> leave;                  // per group
    std::vector<double> least;                  // per mask: a lower bound, exact where it is found
    std::vector<std::vector<Candidate>> exact;  // per mask, best first; empty where it was not found
    std::vector<bool> found;                    // per mask
    std::vector<bool> whole;                    // per mask: the list holds the best of other tubes too
  };
  // The cheapest way to share at most `most` bowls between the two kinds, at these costs per mask.
  struct Split {
    double cost = 0;
    std::vector<int> masks[2];
  };
  Split cheapest(int most, const std::vector<double> (&costs)[2]) const;
  Split cheapest_bounded(int most) const { return cheapest(most, {kinds_[0].least, kinds_[1].least}); }
  Split cheapest_found(int most) const;
  // A mask is no longer of interest where it costs more than `worth`.
  void search(Kind& kind, int mask, double worth);
  void search_others(Kind& kind, size_t mask);
  void raise(Kind& kind, size_t mask, double least);

  const ChoiceInput& in_;
  BowlLists lists_;
  std::vector<Kind> kinds_;
  bool stopped_ = false;  // some list is not complete
};

// The wish for one bowl on these zones, poured.
Wish bowl_wish(const ChoiceInput& in, const std::vector<int>& zones);

// The kept candidates for one bowl, exact and allowed, best first. Ties within 1e-6 go by setting and shares. Where it
// is cancelled, those that were exact by then, at least the first that is allowed.
std::vector<Candidate> exact_list(const ChoiceInput& in, std::vector<Candidate> kept, const std::vector<int>& zones);

// Those of a list that a colourist would call another formula than `best` and than each other; none better than it.
std::vector<Candidate> other_formulas(const ChoiceInput& in, const std::vector<Candidate>& list, const Candidate& best);

// J of one recipe for some zones, exact, without the price of the bowl and of its money; `minutes`: for how long it is
// on each of them.
double exact_objective(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones,
                       std::vector<double>* minutes = nullptr);

// For how long the candidate is on each of these zones: as it was judged, else at best.
std::vector<double> minutes_on(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones);

}  // namespace strandline
