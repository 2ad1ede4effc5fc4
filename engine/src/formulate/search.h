// The certified search for one bowl: the same lists as enumerate(), while most recipes are ruled out many at a time.
// Branches of recipes wait in order of their bounds; the lowest are divided first (descent.h); single recipes get the
// closer bound of bound.h, and what may still be among the best is evaluated.
#pragma once

#include <functional>
#include <limits>
#include <map>
#include <memory>
#include <vector>

#include "formulate/best_few.h"
#include "formulate/descent.h"

namespace strandline {

// Which candidates may be used; empty = all.
using Allowed = std::function<bool(const Candidate&)>;

struct SearchCounts {
  long long recipes = 0;      // recipe and setting pairs answered for
  long long boxes = 0;        // branches bounded, many recipes each
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

class BowlSearch {
 public:
  // The references must outlive the search.
  BowlSearch(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws, double total_weight,
             const FormulaPolicy& policy, const FormulateOptions& options);
  ~BowlSearch();

  struct Wish {
    std::vector<int> zones;    // indices of SearchZone, served by one bowl
    Allowed allowed;           // empty = all
    bool mixing_price = true;  // false: the zones' own part only, a bound for every bowl that serves them
    double worth = std::numeric_limits<double>::infinity();  // what costs more is not wanted
  };
  // kKept best of the domain and what lies within rounding of them.
  BowlList find(const Wish& wish);
  std::vector<Candidate> best(const Wish& wish) { return find(wish).candidates; }

  // Zone tables are shared with whoever re-evaluates.
  const ZoneTable& table(int setting, int zone);
  const SearchCounts& counts() const { return counts_; }

 private:
  struct Run;  // one call of find
  SettingZone& made(int setting, int zone);
  bool may_serve(int setting, int zone) const;
  Terrain terrain(int setting, const Wish& wish) const;
  void start(Run& run);
  bool divide(Run& run);
  void bound_singles(Run& run);
  void evaluate_some(Run& run);
  double evaluate(const Branch& branch, const Wish& wish) const;
  Candidate candidate(const Branch& branch, double objective) const;

  const Domain& domain_;
  const std::vector<SearchZone>& zones_;
  const Draws& draws_;
  double total_weight_;
  const FormulaPolicy& policy_;
  const FormulateOptions& options_;
  std::vector<Ground> grounds_;                     // per RecipeSet
  std::vector<std::unique_ptr<SettingZone>> made_;  // [setting][zone], when first needed
  SearchCounts counts_;
};

}  // namespace strandline
