// From single bowls to the bowls of the head: which zones share one, found lazily and exactly.
#pragma once

#include <functional>
#include <vector>

#include "mix/groups.h"
#include "mix/pour.h"
#include "search/search.h"

namespace strandline {

inline constexpr int kBowlsMost = 8;  // more than any policy allows
inline constexpr int kBestKept = 4;   // whatever lies within rounding of the best is among them

// One bowl chosen: its zones, its recipe, and the next best formulas for the same zones.
struct Chosen {
  std::vector<int> zones;         // indices of SearchZone
  Candidate best;                 // the plainest, or what evenness or stock made of it
  Candidate certified;            // what costs least
  std::vector<Candidate> others;  // with other tubes or another strength, the plainest first
  std::vector<Candidate> list;    // all that was kept, the plainest first, the certified best among them
  bool joined = false;            // bowls that became one: no recipe was certified for all of it, only what it costs
  double gap() const { return best.objective - certified.objective; }
};

struct Choice {
  std::vector<Chosen> bowls;
  double objective = 0;
  double bound = 0;          // no choice costs less; what is certified of the objective without unevenness
  double uneven = 0;         // of it: the price of unevenness at join lines (evenness.h)
  double plain_gap() const;  // of it: what plainness costs
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
  std::function<std::vector<Candidate>(const Wish&, const BowlSearch::Judged&)> plainest = {};  // BowlSearch::plainest
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
    std::vector<bool> closed;                   // per mask: it holds zones whose white asks for bowls of their own
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
  void raise(Kind& kind, size_t mask, double least);

  const ChoiceInput& in_;
  BowlLists lists_;
  std::vector<Kind> kinds_;
  void keep_apart(Kind& kind);
  bool stopped_ = false;  // some list is not complete
};

// The wish for one bowl on these zones, poured.
Wish bowl_wish(const ChoiceInput& in, const std::vector<int>& zones);

// The kept candidates for one bowl, exact and allowed, best first. Ties within 1e-6 go by setting and shares. Where it
// is cancelled, those that were exact by then, at least the first that is allowed.
std::vector<Candidate> exact_list(const ChoiceInput& in, std::vector<Candidate> kept, const std::vector<int>& zones);

// The bowl for a wish: of all within the policy's indifference of the best of `exact` (exact_list of what was found for
// it) the plainest. Requires that `exact` is not empty.
Chosen plain_bowl(const ChoiceInput& in, const Wish& wish, const std::vector<Candidate>& exact);

// The plainest that the wish allows of all within the policy's indifference of the certified best for its zones, the
// plainest first; empty where it allows none of them.
std::vector<Candidate> plain_list(const ChoiceInput& in, Wish wish, const Candidate& certified);

// The same where the best of these zones is known otherwise: what they cost together, and each of them in levels.
std::vector<Candidate> plain_list_within(const ChoiceInput& in, Wish wish, double best,
                                         const std::vector<double>& at_best);

// Those of a list that a colourist would call another formula than `best` and than each other, in its order.
std::vector<Candidate> other_formulas(const ChoiceInput& in, const std::vector<Candidate>& list, const Candidate& best);

// J of one recipe for some zones, exact, without the price of the bowl and of its money; `minutes`: for how long it is
// on each of them; `by_zone`: levels that each costs, not weighted.
double exact_objective(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones,
                       std::vector<double>* minutes = nullptr, std::vector<double>* by_zone = nullptr);

// For how long the candidate is on each of these zones: as it was judged, else at best.
std::vector<double> minutes_on(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones);

}  // namespace strandline
