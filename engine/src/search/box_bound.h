// A lower bound of the mean loss for a whole box of loads at once: the first stage of the search (docs/model.md, "The
// bound"). Scenarios are put into a few groups; the reflectance of a group's mean falls with the load, so the ends of
// the box are the ends of its X, Y and Z.
#pragma once

#include <vector>

#include "search/curve_nodes.h"
#include "search/shade_tree.h"
#include "strandline/loss.h"

namespace strandline {

inline constexpr int kBoxGroups = 2;

// Of a group: X, Y, Z; the spread of each; and the positive parts of X − Y and Y − Z. Intercepts, then slopes.
inline constexpr int kBoxChannels = 8;
inline constexpr int kBoxRow = kBoxGroups * kBoxChannels;

// One zone under one setting, for its wish. Requires loads up to `load_max` in every band.
struct BoxTable {
  int cells = 0;
  std::vector<float> rows;        // [band][cell][intercept, slope][group][channel]
  float weight[kBoxGroups] = {};  // share of the scenarios
  float coarse = 0;               // how far chords may lie above R, relative
  float furthest = 0;             // the scenario furthest from its group's mean, in spreads
  bool certified = true;          // the checks of the proof passed; else bounds are 0
};

BoxTable box_table(const ZoneTable& zone, const ZoneLoss& loss, float load_max);

// For each of `count` boxes (rows of kBoxBands loads, low ≤ high): a number no larger than the mean loss of any load
// in it.
void box_bounds(const BoxTable& table, const ZoneLoss& loss, const float* low, const float* high, int count,
                float* out);

}  // namespace strandline
