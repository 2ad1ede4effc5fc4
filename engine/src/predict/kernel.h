// The fast path: one recipe on one zone in all scenarios at once, single precision, every processor (Highway).
//
// For scenario s, population p and band b: τ = base + u·v·k; 1/(R + c*) by the curve's cubes; populations seen together
// by Stearns–Noechel; XYZ by the 31 weights; L*a*b*; then the loss or ΔE00. Errors against the double routine stay
// below 2e-4 in the mean loss (tested), so callers re-evaluate what they keep in double.
#pragma once

#include <vector>

#include "strandline/colour.h"
#include "strandline/loss.h"
#include "strandline/scenario.h"
#include "strandline/treatment.h"

namespace strandline {

// One zone under one process setting, ready for any dye load. Lanes are scenarios, padded to `stride`; the doubles are
// the same numbers for the exact routine, not padded.
struct ZoneTable {
  int scenarios = 0, stride = 0, populations = 0;
  std::vector<float> base;     // [population][band][stride]: optical depth before the new dye
  std::vector<float> uptake;   // [population][stride]
  std::vector<float> share;    // [population][stride]
  std::vector<float> prefer;   // [population][band]: selectivity at the nominal porosity
  std::vector<float> blend_m;  // [stride]
  std::vector<bool> white;     // [population]
  bool has_contrast = false;   // white and pigmented fibres are both there
  double exposure = 0;         // mean over the scenarios
  std::vector<double> exact_base, exact_uptake, exact_share, exact_prefer, exact_m;
};

// The table of a zone before a bowl of this chemistry, its load left out.
ZoneTable zone_table(const ZoneDraws& zone, const BowlChemistry& bowl, const Draws& draws);
// The table of a zone left as it is.
ZoneTable zone_table(const ZoneDraws& zone, const Draws& draws);

// The recipe's colour in one scenario.
struct ScenarioColour {
  Lab lab;
  double contrast = 0;  // |L* white − L* pigmented|
};

// Mean loss over the scenarios for each of `count` loads (each kBands floats, row by row).
void mean_losses(const ZoneTable& zone, const ZoneLoss& loss, const float* loads, int count, float* out);
// The same for one load in double precision, scalar, in a fixed order: the number that counts.
double exact_mean_loss(const ZoneTable& zone, const ZoneLoss& loss, const Spectrum& load);
// Mean ΔE00 to the target for each load.
void mean_delta_e_2000(const ZoneTable& zone, const Lab& target, const float* loads, int count, float* out);
// Every scenario's colour for one load.
std::vector<ScenarioColour> colours(const ZoneTable& zone, const float* load);
// What the dispatch picked, e.g. "AVX3".
const char* kernel_target();

}  // namespace strandline
