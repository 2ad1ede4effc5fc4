// Groups of like scenarios: what a bound takes together.
#pragma once

#include <vector>

#include "predict/kernel.h"

namespace strandline {

inline constexpr int kGroupsMostOfScenarios = 16;

// How one curve of each scenario goes into its group's mean (docs/model.md, "The bound"). [position], as below.
struct GroupWeights {
  std::vector<float> part;  // ω: adds to 1 over a group; 0 at places that are not filled
  std::vector<float> unit;  // R × unit is averaged
  double furthest = 1;      // no member lies further from its group's mean than this many spreads
};

// A zone's scenarios in groups. Position m·groups + g is member m of group g.
struct GroupedZone {
  ZoneTable zone;  // the single-precision columns by position
  int groups = 1;
  std::vector<float> weight;    // [group] share of the scenarios
  std::vector<float> contrast;  // [group] 1 where every scenario has both kinds of fibre, else 0
  GroupWeights blend, white, pigmented;
};

// Alike are scenarios whose losses are: colours at about the wanted depth, in the currency of the loss, halved again
// and again along the direction in which they differ most. Requires a power of two of groups, at most
// kGroupsMostOfScenarios; loads up to `load_max` are looked at.
GroupedZone group_scenarios(const ZoneTable& zone, const ZoneLoss& loss, float load_max, int groups);

}  // namespace strandline
