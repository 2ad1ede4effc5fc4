// The certified search for one bowl: the same lists as enumerate(), while most recipes are only bounded. A recipe's
// bound on a zone is worked out once and serves every set of zones that the zone belongs to.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <vector>

#include "formulate/best_few.h"
#include "formulate/bound.h"
#include "formulate/enumerate.h"

namespace strandline {

// Which candidates may be used; empty = all.
using Allowed = std::function<bool(const Candidate&)>;

struct SearchCounts {
  long long recipes = 0;      // recipe and setting pairs answered for
  long long evaluations = 0;  // recipe × zone × scenario, in full
  bool cancelled = false;     // the lists are then the best seen, not proven best
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
  };
  // kKept best of the domain and what lies within rounding of them, ordered; empty where nothing is allowed.
  std::vector<Candidate> best(const Wish& wish);

  // Zone tables are shared with whoever re-evaluates.
  const ZoneTable& table(int setting, int zone);
  const SearchCounts& counts() const { return counts_; }

 private:
  struct Pair;  // one setting on one zone
  struct Set;   // what the recipes of one set cost before any optics
  struct Open;  // a recipe that may still be among the best
  Pair& pair(int setting, int zone);
  bool may_serve(int setting, int zone) const;
  void prepare(const std::vector<int>& settings, const std::vector<int>& zones);
  const std::vector<float>& loads(int setting);
  std::vector<double> bounds(int setting, const Wish& wish);
  double evaluate(const Open& open, const Wish& wish);

  const Domain& domain_;
  const std::vector<SearchZone>& zones_;
  const Draws& draws_;
  double total_weight_;
  const FormulaPolicy& policy_;
  const FormulateOptions& options_;
  std::vector<std::unique_ptr<Pair>> pairs_;  // [setting][zone], made when first needed
  std::vector<Set> sets_;
  std::vector<std::vector<float>>
      loads_;  // [setting] loads of every recipe; settings of one set and ratio share the first
  SearchCounts counts_;
};

}  // namespace strandline
