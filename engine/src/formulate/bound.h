// A proven lower bound of the mean loss of a recipe on a zone, some twenty times cheaper than the loss itself
// (docs/model.md, "The bound"). Scenarios are put into kScenarioGroups groups of like ones; R of a group's mean is
// tabulated over the dye load, band by band, as chords of a convex curve; the loss is convex, so its value at a
// group's mean colour is no more than the group's mean loss; what the cube root of CIELAB loses is bounded in closed
// form.
#pragma once

#include <limits>
#include <vector>

#include "formulate/curve_nodes.h"

namespace strandline {

inline constexpr int kScenarioGroups = 16;

// Chords of one curve: [band][cell][intercept, slope][group], and how far below them the mean cube root may lie.
struct BoundCurve {
  std::vector<float> chords;
  std::vector<float> lost;  // [bin of the smallest cell][group]: 1 − mean ∛X / ∛(X of the chords), at most
};

// One zone under one setting. Requires loads up to `load_max` in every band.
struct BoundTable {
  int cells = 0;
  BoundCurve blend, white, pigmented;  // the last two only where there is contrast
  std::vector<float> weight;           // [group] share of the scenarios
  std::vector<float> contrast;         // [group] 1 where every scenario has both kinds of fibre, else 0
  bool has_contrast = false;
  bool certified = true;  // the checks of the proof passed; else bounds are 0
};

inline constexpr int kCellsPerBin = 8;

BoundTable bound_table(const ZoneTable& zone, float load_max);

// For each of `count` loads (kBands floats each): a number no larger than the mean loss. Beyond `enough` it need not be
// the best that is known.
void lower_bounds(const BoundTable& table, const ZoneLoss& loss, const float* loads, int count, float* out,
                  float enough = std::numeric_limits<float>::infinity());

}  // namespace strandline
