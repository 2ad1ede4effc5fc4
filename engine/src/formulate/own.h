// A bowl that a colourist mixed, as shares: what it costs in levels, and every bowl one change away.
#pragma once

#include <functional>
#include <map>
#include <tuple>

#include "mix/domain.h"
#include "mix/groups.h"
#include "mix/on_hair.h"
#include "mix/situation.h"
#include "strandline/visit.h"

namespace strandline {

struct Own {
  const Range* range = nullptr;
  std::vector<std::pair<const Product*, double>> shares;  // of the colour part, sum 1
  double developer_percent = 0, ratio = 0, minutes = 0;
  bool damp_hair = false;
};

// Requires a formula that chemistry() accepts, of a known range.
Own own(const Formula& formula, const Shelf& shelf);
Formula pour(const Own& own, double grams, const Shelf& shelf, const FormulaPolicy& policy);

// A changed bowl and what was changed.
struct Edit {
  Own own;
  Reasons changes;
  double objective = 0;
};

// J of bowls for some zones, in single precision; tables are kept per process.
class Judge {
 public:
  // Everything must outlive the judge. `longer`: minutes by which the bowl is on each zone of `served` longer than its
  // formula says, from when half of the zone was touched.
  Judge(const Situation& now, const std::vector<SearchZone>& zones, std::vector<int> served, double total_weight,
        const Shelf& shelf, const FormulaPolicy& policy, double grams, std::vector<double> longer);
  double objective(const Own& own);
  // One change away, within the range's rules and the house's.
  std::vector<Edit> edits(const Edit& from) const;
  bool allowed(const Own& own) const;

 private:
  const Situation& now_;
  const std::vector<SearchZone>& zones_;
  std::vector<int> served_;
  double total_weight_;
  const Shelf& shelf_;
  const FormulaPolicy& policy_;
  double grams_;
  std::vector<double> longer_;
  std::map<std::tuple<const Range*, double, double, double, bool>, std::vector<ZoneTable>> tables_;
};

// The smallest change (one, else two) that brings the bowl to `wanted` or below; the best of that size. Where it is
// cancelled, of those looked at by then.
std::optional<Edit> smallest_change(Judge& judge, const Own& own, double wanted,
                                    const std::function<bool()>& cancelled);

}  // namespace strandline
