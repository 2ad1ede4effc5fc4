// clang-format off: the order of these includes is Highway's.
#include "search/box_bound.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/search/box_bound.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/search/box_bound-inl.h"
// clang-format on

#if HWY_ONCE
#include <algorithm>

namespace strandline {

HWY_EXPORT(BoxBounds);

namespace {

// One band and group, from the darkest cell on: what spreads at larger loads counts too.
void fill(BoxTable& t, int b, int g, const std::vector<Chord>& chords) {
  const KernelConstants& k = kernel_constants();
  const float wx = k.x[b], wy = k.y[b], wz = k.z[b];
  const float weights[kBoxChannels] = {wx, wy, wz, 0, 0, 0, std::max(0.0F, wx - wy), std::max(0.0F, wy - wz)};
  float spread = 0;
  for (int j = t.cells - 1; j >= 0; --j) {
    const Chord& chord = chords[static_cast<size_t>(j)];
    spread = std::max(spread, chord.spread);
    float* row = &t.rows[static_cast<size_t>((b * t.cells + j) * 2 * kBoxRow + g * kBoxChannels)];
    for (int c = 0; c < kBoxChannels; ++c)
      row[c] = weights[c] * chord.base, row[kBoxRow + c] = weights[c] * chord.slope;
    row[3] = wx * spread, row[4] = wy * spread, row[5] = wz * spread;
  }
}

}  // namespace

BoxTable box_table(const ZoneTable& zone, const ZoneLoss& loss, float load_max) {
  BoxTable t;
  t.cells = load_cell(load_max) + 1;
  t.rows.assign(static_cast<size_t>(kBands * t.cells * 2 * kBoxRow), 0);
  const GroupedZone grouped = group_scenarios(zone, loss, load_max, kBoxGroups);
  std::copy(grouped.weight.begin(), grouped.weight.end(), t.weight);
  ChordCheck check;
  NodeStats nodes;
  std::vector<Chord> own;
  for (int b = 0; b < kBands; ++b) {
    node_stats(grouped, b, t.cells, &nodes, nullptr, nullptr);
    for (int g = 0; g < kBoxGroups; ++g) {
      if (!(t.weight[g] > 0)) continue;
      chords(nodes, kBoxGroups, g, grouped.blend.furthest, own, check);
      fill(t, b, g, own);
    }
  }
  t.certified = certifiable(zone) && check.convex && check.coarse <= 0.05;
  t.coarse = static_cast<float>(check.coarse + 2e-5);
  t.furthest = static_cast<float>(grouped.blend.furthest);
  return t;
}

void box_bounds(const BoxTable& table, const ZoneLoss& loss, const float* low, const float* high, int count,
                float* out) {
  if (!table.certified) {
    std::fill_n(out, count, 0.0F);
    return;
  }
  HWY_DYNAMIC_DISPATCH(BoxBounds)(table, loss, low, high, count, out);
}

}  // namespace strandline
#endif
