// A proven lower bound of the mean loss of a recipe on a zone, some ten times cheaper than the loss itself
// (docs/model.md, "The bound"). Scenarios are put into kScenarioGroups groups of like ones; R of a group's mean is
// tabulated over the dye load, band by band, as chords of a convex curve; the loss is convex, so its value at a
// group's mean colour is no more than the group's mean loss; what the cube root of CIELAB loses is bounded in closed
// form.
#pragma once

#include <limits>
#include <vector>

#include "search/curve_nodes.h"

namespace strandline {

inline constexpr int kScenarioGroups = 8;

// Chords of one curve: [band][cell][intercept, slope, spread][group].
struct BoundCurve {
  std::vector<float> chords;
  float furthest = 1;  // the scenario furthest from its group's mean, in spreads
};

// One zone under one setting, for its wish. Requires loads up to `load_max` in every band.
struct BoundTable {
  int cells = 0;
  BoundCurve blend, white, pigmented;  // the last two only where there is contrast
  std::vector<float> weight;           // [group] share of the scenarios
  std::vector<float> contrast;         // [group] 1 where every scenario has both kinds of fibre, else 0
  bool has_contrast = false;
  float coarse = 0;       // how far chords may lie above R, relative
  bool certified = true;  // the checks of the proof passed; else bounds are 0
};

BoundTable bound_table(const ZoneTable& zone, const ZoneLoss& loss, float load_max);

// For each of `count` loads (kBands floats each): a number no larger than the mean loss. Beyond `enough` it need not be
// the best that is known.
void lower_bounds(const BoundTable& table, const ZoneLoss& loss, const float* loads, int count, float* out,
                  float enough = std::numeric_limits<float>::infinity());

}  // namespace strandline
