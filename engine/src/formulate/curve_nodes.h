// R of every scenario at the nodes of a grid over the dye load, band by band: what bounds are tabulated from.
#pragma once

#include <bit>
#include <vector>

#include "predict/kernel.h"

namespace strandline {

// Cells over the load k: found from the bits of k + kLoadOffset, kCellsPerOctave to an octave, linear inside.
inline constexpr float kLoadOffset = 0.02F;
inline constexpr int kCellsPerOctave = 16;
inline constexpr int kMantissaShift = 23 - 4;
inline constexpr int kFirstCell = static_cast<int>(std::bit_cast<unsigned>(kLoadOffset) >> kMantissaShift);
inline int load_cell(float load) {  // of load ≥ 0; 0 at load 0
  return static_cast<int>(std::bit_cast<unsigned>(load + kLoadOffset) >> kMantissaShift) - kFirstCell;
}
float load_node(int cell);  // left end of the cell

inline constexpr double kNodeNoise = 2e-6;  // of R in single precision

// One band: R of every scenario at the nodes 0 … cells, [node][scenario]. One band at a time keeps the memory small.
struct BandNodes {
  std::vector<float> blend;             // populations seen together
  std::vector<float> white, pigmented;  // the mean of each kind, where it was asked for
};

// R of every scenario at one band and load; `white` and `pigmented` may be null. Rows of zone.stride numbers.
void node_reflectance(const ZoneTable& zone, int band, float load, float* blend, float* white, float* pigmented);
// Into `out`, which keeps its memory; rows of zone.stride numbers.
void band_nodes(const ZoneTable& zone, int band, int cells, bool with_kinds, BandNodes& out);

// How far, at most, a convex curve lies below its chord over a cell of this width, where the slope changes by `fall`
// at its left end and by `rise` at its right; no cell lies left of the first.
double chord_gap(double width, double fall, double rise, bool first);

// What (y + 2)/(3(y² + y + 1)²) is: the exact factor of the cube root's remainder.
double remainder_factor(double y);

}  // namespace strandline
