// clang-format off: the order of these includes is Highway's.
#include "search/bound.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/search/bound.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/search/bound-inl.h"
// clang-format on

#if HWY_ONCE
#include <algorithm>

namespace strandline {

HWY_EXPORT(LowerBounds);

namespace {

void fill(BoundCurve& curve, int cells, int band, int g, const std::vector<Chord>& chords) {
  for (int j = 0; j < cells; ++j) {
    const Chord& chord = chords[static_cast<size_t>(j)];
    float* to = &curve.chords[static_cast<size_t>((band * cells + j) * 3 * kScenarioGroups + g)];
    to[0] = chord.base;
    to[kScenarioGroups] = chord.slope;
    to[2 * kScenarioGroups] = chord.spread;
  }
}

}  // namespace

BoundTable bound_table(const ZoneTable& zone, const ZoneLoss& loss, float load_max) {
  BoundTable t;
  t.cells = load_cell(load_max) + 1;
  t.has_contrast = zone.has_contrast;
  const GroupedZone grouped = group_scenarios(zone, loss, load_max, kScenarioGroups);
  t.weight = grouped.weight;
  t.contrast = grouped.contrast;
  const size_t size = static_cast<size_t>(kBands * t.cells * 3 * kScenarioGroups);
  NodeStats nodes[3];
  const GroupWeights* weights[3] = {&grouped.blend, &grouped.white, &grouped.pigmented};
  BoundCurve* curves[3] = {&t.blend, &t.white, &t.pigmented};
  const size_t count = t.has_contrast ? 3 : 1;
  for (size_t c = 0; c < count; ++c) {
    curves[c]->chords.assign(size, 0);
    curves[c]->furthest = static_cast<float>(weights[c]->furthest);
  }
  ChordCheck check;
  std::vector<Chord> own;
  for (int b = 0; b < kBands; ++b) {
    node_stats(grouped, b, t.cells, &nodes[0], t.has_contrast ? &nodes[1] : nullptr, &nodes[2]);
    for (size_t c = 0; c < count; ++c)
      for (int g = 0; g < kScenarioGroups; ++g) {
        if (!(t.weight[static_cast<size_t>(g)] > 0)) continue;
        chords(nodes[c], kScenarioGroups, g, weights[c]->furthest, own, check);
        fill(*curves[c], t.cells, b, g, own);
      }
  }
  t.coarse = static_cast<float>(check.coarse + 2e-5);
  t.certified = certifiable(zone) && check.convex && check.coarse <= 0.05;
  return t;
}

void lower_bounds(const BoundTable& table, const ZoneLoss& loss, const float* loads, int count, float* out,
                  float enough) {
  if (!table.certified) {
    std::fill_n(out, count, 0.0F);
    return;
  }
  HWY_DYNAMIC_DISPATCH(LowerBounds)(kernel_constants(), table, loss, loads, count, enough, out);
}

}  // namespace strandline
#endif
