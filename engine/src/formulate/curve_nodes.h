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

using NodeValues = std::vector<float>;  // [band][node][scenario]

struct CurveNodes {
  int cells = 0, scenarios = 0;
  NodeValues blend;             // populations seen together
  NodeValues white, pigmented;  // the mean of each kind; empty unless there is contrast and it was asked for
  const float* at(const NodeValues& v, int band, int node) const {
    return v.data() + static_cast<size_t>((band * (cells + 1) + node) * scenarios);
  }
};

CurveNodes curve_nodes(const ZoneTable& zone, int cells, bool with_contrast);

// How far, at most, a convex curve lies below its chord over a cell of this width, where the slope changes by `fall`
// at its left end and by `rise` at its right; no cell lies left of the first.
double chord_gap(double width, double fall, double rise, bool first);

// What (y + 2)/(3(y² + y + 1)²) is: the exact factor of the cube root's remainder.
double remainder_factor(double y);

}  // namespace strandline
