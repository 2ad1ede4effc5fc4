// R at the nodes of a grid over the dye load, band by band, and the chords between them: what bounds are tabulated
// from.
#pragma once

#include <bit>
#include <vector>

#include "search/scenario_groups.h"

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

// R of every scenario at one band and load, zone.stride numbers each; the means of white and of pigmented fibres where
// `white` and `pigmented` are not null.
void node_reflectance(const ZoneTable& zone, int band, float load, float* blend, float* white, float* pigmented);

// Luminance of every scenario under one load that is the same in all bands, 1 = white; 1e-3 where a kind is missing.
struct Luminance {
  std::vector<float> blend, white, pigmented;
};
Luminance luminance(const ZoneTable& zone, float load);

// Mean over a group of R × unit, and its spread (standard deviation), at nodes: [node][group].
struct NodeStats {
  std::vector<double> mean, spread;
};
// Of one band at the nodes 0 … cells. `white` and `pigmented` may be null.
void node_stats(const GroupedZone& zone, int band, int cells, NodeStats* blend, NodeStats* white, NodeStats* pigmented);

// One cell of one curve. The mean lies between chord·(1 − coarse) and the chord.
struct Chord {
  float base = 0, slope = 0;  // R × unit = base + slope·k
  float spread = 0;           // at most, anywhere in the cell
};
// What holds of all chords of a table.
struct ChordCheck {
  double coarse = 0;
  bool convex = true;  // convex and falling, as the proof asks
};
// The chords of group g.
void chords(const NodeStats& nodes, int groups, int g, double furthest, std::vector<Chord>& out, ChordCheck& check);

// The checks of the proof that are not about single curves: the constant of the blend, and that no reflectance lies
// where CIELAB is not a cube root.
bool certifiable(const ZoneTable& zone);

}  // namespace strandline
