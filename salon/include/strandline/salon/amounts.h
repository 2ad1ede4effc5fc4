// How much mix a head really takes, against what was planned: learned from what was left in the bowl (M15), for each
// colourist and each client. Pure: visits in, a factor out, which goes into the plan as data.
#pragma once

#include "strandline/salon/ended.h"

namespace strandline::salon {

// knowledge/policy/amounts.json.
struct AmountRules {
  double client_sd = 0;     // of the logarithm of what one head takes against the average
  double colourist_sd = 0;  // of how much one colourist lays on
  double visit_sd = 0;      // of one visit against another of the same two
  double gate = 0;          // a visit that took so many times more or less than planned is taken for a slip
  double least = 0, most = 0;
  double waste_share = 0;  // that a plan mixes on purpose: of the house policy
};
// Problems: missing_key {key}, out_of_range {value, min, max} with its place.
Result<AmountRules> read_amount_rules(const wire::Json& json);

struct MixFactor {
  double factor = 1;  // of the usual grams
  int visits = 0;     // of this client that were weighed
};

// Of a client whom a colourist colours; either "" = nobody in particular.
MixFactor mix_factor(const std::vector<EndedVisit>& visits, const std::string& person, const std::string& by,
                     const AmountRules& rules);

}  // namespace strandline::salon
