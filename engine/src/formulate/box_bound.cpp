// clang-format off: the order of these includes is Highway's.
#include "formulate/box_bound.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/formulate/box_bound.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/formulate/box_bound-inl.h"
// clang-format on

#if HWY_ONCE
#include <algorithm>
#include <cmath>

namespace strandline {

HWY_EXPORT(BoxBounds);

namespace {

// Mean and spread of R over the scenarios at the nodes of one band.
struct NodeSpread {
  double mean = 0, sd = 0, far = 0;
};

NodeSpread spread_of(const float* r, int scenarios) {
  double sum = 0, squares = 0;
  float least = r[0];
  for (int s = 0; s < scenarios; ++s) {
    const double v = static_cast<double>(r[s]);
    sum += v, squares += v * v;
    least = std::min(least, r[s]);
  }
  const double mean = sum / scenarios;
  return {mean, std::sqrt(std::max(0.0, squares / scenarios - mean * mean)), mean - static_cast<double>(least)};
}

}  // namespace

BoxTable box_table(const ZoneTable& zone, float load_max) {
  BoxTable t;
  t.cells = load_cell(load_max) + 1;
  t.rows.assign(static_cast<size_t>(kBands * t.cells) * 2 * kBoxChannels, 0);
  t.certified = *std::max_element(zone.exact_m.begin(), zone.exact_m.end()) <= Constants{}.blend_m_highest + 1e-12;
  const KernelConstants& k = kernel_constants();
  const double scenarios = zone.scenarios, root = std::sqrt(scenarios);
  double coarse = 0, furthest = 0;
  BandNodes nodes;
  std::vector<NodeSpread> own(static_cast<size_t>(t.cells) + 1);
  for (int b = 0; b < kBands; ++b) {
    band_nodes(zone, b, t.cells, false, nodes);
    for (size_t j = 0; j < own.size(); ++j)
      own[j] = spread_of(&nodes.blend[j * static_cast<size_t>(zone.stride)], zone.scenarios);
    auto width = [](int j) { return static_cast<double>(load_node(j + 1)) - static_cast<double>(load_node(j)); };
    auto slope = [&](int j) {
      return (own[static_cast<size_t>(j) + 1].mean - own[static_cast<size_t>(j)].mean) / width(j);
    };
    const float wx = k.x[b], wy = k.y[b], wz = k.z[b];
    double spread = 0, far = 0;
    for (int j = t.cells - 1; j >= 0; --j) {
      const size_t left = static_cast<size_t>(j), right = left + 1;
      const double s = slope(j), rise = j + 1 < t.cells ? slope(j + 1) - s : -s, fall = j > 0 ? s - slope(j - 1) : rise;
      const double noise = kNodeNoise / width(j);
      if (s > noise || rise < -noise || fall < -noise) t.certified = false;
      const double gap = chord_gap(width(j), fall, rise, j == 0);
      coarse = std::max(coarse, gap / (own[right].mean - 2 * kNodeNoise));
      // A single scenario lies below its own chord by at most the sum of all gaps, √n of the mean gap in the mean
      // square.
      spread = std::max(spread, std::max(own[left].sd, own[right].sd) + root * gap);
      far = std::max(far, std::max(own[left].far, own[right].far) + scenarios * gap);
      furthest = std::max(furthest, far / spread);
      float* row = &t.rows[static_cast<size_t>(b * t.cells + j) * 2 * kBoxChannels];
      const float base = static_cast<float>(own[left].mean - s * static_cast<double>(load_node(j)));
      const float line = static_cast<float>(s), sd = static_cast<float>(spread);
      const float weights[kBoxChannels] = {wx, wy, wz, 0, 0, 0, std::max(0.0F, wx - wy), std::max(0.0F, wy - wz)};
      for (int c = 0; c < kBoxChannels; ++c) row[c] = weights[c] * base, row[kBoxChannels + c] = weights[c] * line;
      row[3] = wx * sd, row[4] = wy * sd, row[5] = wz * sd;
    }
  }
  if (coarse > 0.05) t.certified = false;
  // Half a millionth for rounding; the remainder of a cube root asks for the smallest of all scenarios.
  t.coarse = static_cast<float>(coarse + 2e-5);
  t.furthest = static_cast<float>(std::min(furthest, root)) * 1.0001F;
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
