// The certified search for one bowl: the same lists as enumerate(), while most recipes are ruled out many at a time.
// Branches of recipes wait in order of their bounds; the lowest are divided first (descent.h); single recipes get the
// closer bound of bound.h, and what may still be among the best is evaluated.
#pragma once

#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <vector>

#include "mix/groups.h"
#include "search/best_few.h"
#include "search/terrain.h"

namespace strandline {

struct SearchCounts {
  long long recipes = 0;      // recipe and setting pairs answered for
  long long boxes = 0;        // bounds of branches, many recipes each
  long long bounds = 0;       // single recipes bounded
  long long evaluations = 0;  // recipe × zone × scenario, in full
  bool cancelled = false;     // some list is the best seen, not proven best
};

// What a search found, and what is certain of the rest.
struct BowlList {
  std::vector<Candidate> candidates;  // ordered; empty where nothing is allowed
  // No recipe costs less. Far below the first candidate only where the search was stopped.
  double bound = 0;
  bool complete = true;
};

// What is asked of a search.
struct Wish {
  std::vector<int> zones;  // indices of SearchZone, served by one bowl
  Allowed allowed = {};
  double worth = std::numeric_limits<double>::infinity();  // what costs more is not wanted
  int keep = kKept;
  // Minutes that a zone has to be on, from its last touch; of its range's times whichever costs least where it is
  // absent.
  std::map<int, double> minutes = {};
  // Of the mix: its money is part of the objective, law and stock are kept. 0: nothing is poured, recipes alone.
  MixGrams grams{};
};

class BowlSearch {
 public:
  // The references must outlive the search.
  BowlSearch(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws, double total_weight,
             const FormulaPolicy& policy, const FormulateOptions& options);

  // The best of the domain and what lies within rounding of them. What earlier calls found speeds up later ones: their
  // recipes are tried first, and what a zone costs at best by itself bounds every bowl that serves it.
  BowlList find(const Wish& wish);
  std::vector<Candidate> best(const Wish& wish) { return find(wish).candidates; }
  // Of what costs no more than `wish.worth` the plainest recipes (plainness.h), as many of other tubes as `wish.keep`,
  // the plainest first; proven in that no recipe that `judge` lets pass is plainer. It tells the exact objective of a
  // recipe, or nothing where it is not wanted. Where it was stopped: those found by then.
  using Judged = std::function<std::optional<Candidate>(Candidate)>;
  std::vector<Candidate> plainest(const Wish& wish, const Judged& judge);

  // Zone tables are shared with whoever re-evaluates.
  const ZoneTable& table(int setting, int zone, double minutes) { return made_.table(setting, zone, minutes); }
  const SearchCounts& counts() const { return counts_; }

 private:
  struct Run;  // one call of find
  std::vector<double> minutes(const Wish& wish, int setting, int zone) const;
  bool start(Run& run);
  void judge_plainest(Run& run, const Judged& judge, std::vector<Candidate>& kept);
  double limit_by_known(const Run& run);
  bool divide(Run& run);
  void bound_singles(Run& run);
  void evaluate_some(Run& run);
  double evaluate(const Candidate& candidate, const Wish& wish);  // infinite where law or stock forbid it
  std::vector<double> evaluate(const std::vector<Candidate>& all, const Wish& wish);
  Candidate candidate(const Branch& branch) const;
  void heaviest_first(std::vector<int>& zones) const;
  void remember(Run& run, const BowlList& list);

  const Domain& domain_;
  const std::vector<SearchZone>& zones_;
  const Draws& draws_;
  double total_weight_;
  const FormulaPolicy& policy_;
  const FormulateOptions& options_;
  SettingZones made_;
  std::vector<Candidate> known_;  // good ones for some zones, the latest last
  std::vector<double> floors_;    // per zone: its part of any objective is no less
  SearchCounts counts_;
};

}  // namespace strandline
