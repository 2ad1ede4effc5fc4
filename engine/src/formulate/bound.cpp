// clang-format off: the order of these includes is Highway's.
#include "formulate/bound.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/formulate/bound.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/formulate/bound-inl.h"
// clang-format on

#if HWY_ONCE
#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "strandline/optics.h"

namespace strandline {

HWY_EXPORT(LowerBounds);

namespace {

// Groups of like scenarios: halved again and again at the median of the feature that varies most. Features are cube
// roots of a few band means of R at a few loads, of each curve.
std::vector<int> group_scenarios(const CurveNodes& n, bool contrast) {
  std::vector<std::vector<float>> features;
  auto add = [&](const NodeValues& v) {
    constexpr int kThirds = 3;
    for (int j = 0; j <= n.cells; j += std::max(1, n.cells / 3))
      for (int part = 0; part < kThirds; ++part) {
        std::vector<float> f(static_cast<size_t>(n.scenarios));
        for (int s = 0; s < n.scenarios; ++s) {
          float sum = 0;
          for (int b = part * kBands / kThirds; b < (part + 1) * kBands / kThirds; ++b) sum += n.at(v, b, j)[s];
          f[static_cast<size_t>(s)] = std::cbrt(sum);
        }
        features.push_back(std::move(f));
      }
  };
  add(n.blend);
  if (contrast) add(n.white), add(n.pigmented);
  std::vector<int> order(static_cast<size_t>(n.scenarios)), group(order.size());
  std::iota(order.begin(), order.end(), 0);
  auto split = [&](auto&& self, size_t begin, size_t end, int first, int count) -> void {
    if (count == 1) {
      for (size_t i = begin; i < end; ++i) group[static_cast<size_t>(order[i])] = first;
      return;
    }
    const std::vector<float>* widest = &features[0];
    float most = -1;
    for (const auto& f : features) {
      float low = 1e9F, high = -1e9F;
      for (size_t i = begin; i < end; ++i) {
        low = std::min(low, f[static_cast<size_t>(order[i])]);
        high = std::max(high, f[static_cast<size_t>(order[i])]);
      }
      if (high - low > most) most = high - low, widest = &f;
    }
    std::sort(order.begin() + static_cast<long>(begin), order.begin() + static_cast<long>(end), [&](int a, int b) {
      const float x = (*widest)[static_cast<size_t>(a)], y = (*widest)[static_cast<size_t>(b)];
      return x != y ? x < y : a < b;
    });
    const size_t middle = begin + (end - begin) / 2;
    self(self, begin, middle, first, count / 2);
    self(self, middle, end, first + count / 2, count / 2);
  };
  split(split, 0, order.size(), 0, kScenarioGroups);
  return group;
}

// Chords and remainders of one curve. False where the curve is not convex and falling, or the chords are too coarse.
bool fill(BoundCurve& curve, const CurveNodes& n, const NodeValues& v, const std::vector<int>& group) {
  const int cells = n.cells, bins = cells / kCellsPerBin + 1;
  const size_t groups = kScenarioGroups;
  curve.chords.assign(static_cast<size_t>(kBands * cells) * 2 * groups, 0);
  std::vector<double> count(groups, 0), mean((static_cast<size_t>(cells) + 1) * groups), sd = mean, far = mean;
  std::vector<double> spread(static_cast<size_t>(bins) * groups, 0), furthest = spread, coarse(groups, 0);
  for (int g : group) count[static_cast<size_t>(g)] += 1;
  bool fine = true;
  for (int b = 0; b < kBands; ++b) {
    std::fill(mean.begin(), mean.end(), 0);
    std::fill(sd.begin(), sd.end(), 0);
    std::fill(far.begin(), far.end(), 0);
    for (int j = 0; j <= cells; ++j) {
      const float* r = n.at(v, b, j);
      const size_t row = static_cast<size_t>(j) * groups;
      for (size_t s = 0; s < group.size(); ++s) mean[row + static_cast<size_t>(group[s])] += static_cast<double>(r[s]);
      for (size_t g = 0; g < groups; ++g) mean[row + g] /= std::max(1.0, count[g]);
      for (size_t s = 0; s < group.size(); ++s) {
        const size_t at = row + static_cast<size_t>(group[s]);
        const double off = std::abs(static_cast<double>(r[s]) - mean[at]);
        sd[at] += off * off;
        far[at] = std::max(far[at], off);
      }
      for (size_t g = 0; g < groups; ++g) sd[row + g] = std::sqrt(sd[row + g] / std::max(1.0, count[g]));
    }
    auto slope = [&](int j, size_t g) {
      const size_t row = static_cast<size_t>(j) * groups + g;
      return (mean[row + groups] - mean[row]) /
             (static_cast<double>(load_node(j + 1)) - static_cast<double>(load_node(j)));
    };
    for (int j = 0; j < cells; ++j)
      for (size_t g = 0; g < groups; ++g) {
        if (count[g] == 0) continue;
        const size_t row = static_cast<size_t>(j) * groups + g;
        const double left = static_cast<double>(load_node(j)), width = static_cast<double>(load_node(j + 1)) - left;
        const double own = slope(j, g);
        const size_t to = (static_cast<size_t>(b * cells + j) * 2) * groups + g;
        curve.chords[to] = static_cast<float>(mean[row] - own * left);
        curve.chords[to + groups] = static_cast<float>(own);
        // A convex curve lies above its neighbours' chords drawn on: the gap of this cell is at most …
        const double rise = j + 1 < cells ? slope(j + 1, g) - own : -own, fall = j > 0 ? own - slope(j - 1, g) : rise;
        if (own > kNodeNoise / width || rise < -kNodeNoise / width || fall < -kNodeNoise / width) fine = false;
        const double gap = chord_gap(width, fall, rise, j == 0);
        // Single scenarios may bend more than their mean; their gap is at most the whole group's.
        const double least = mean[row + groups] - 2 * kNodeNoise, alone = gap * count[g];
        const double relative_sd = (std::max(sd[row], sd[row + groups]) + alone) / least;
        const double relative_far = (std::max(far[row], far[row + groups]) + alone) / least;
        coarse[g] = std::max(coarse[g], gap / least);
        // The bins of smaller cells must hold for every larger cell too.
        for (int bin = 0; bin <= j / kCellsPerBin; ++bin) {
          const size_t at = static_cast<size_t>(bin) * groups + g;
          spread[at] = std::max(spread[at], relative_sd);
          furthest[at] = std::max(furthest[at], relative_far);
        }
      }
  }
  curve.lost.assign(static_cast<size_t>(bins) * groups, 0);
  for (size_t i = 0; i < curve.lost.size(); ++i) {
    const double y0 = std::cbrt(std::max(0.0, 1 - furthest[i]));
    const double e = coarse[i % groups];
    if (e > 0.05) fine = false;
    curve.lost[i] = static_cast<float>(spread[i] * spread[i] * remainder_factor(y0) + 0.34 * e + 2e-5);
  }
  return fine;
}

}  // namespace

BoundTable bound_table(const ZoneTable& zone, float load_max) {
  BoundTable t;
  t.cells = load_cell(load_max) + 1;
  t.has_contrast = zone.has_contrast;
  const CurveNodes n = curve_nodes(zone, t.cells, true);
  const std::vector<int> group = group_scenarios(n, zone.has_contrast);
  t.weight.assign(kScenarioGroups, 0);
  t.contrast.assign(kScenarioGroups, 1);
  for (size_t s = 0; s < group.size(); ++s) {
    const size_t g = static_cast<size_t>(group[s]);
    t.weight[g] += 1 / static_cast<float>(group.size());
    double share[2] = {0, 0};
    for (int p = 0; p < zone.populations; ++p)
      share[zone.white[static_cast<size_t>(p)]] += zone.exact_share[static_cast<size_t>(p) * group.size() + s];
    if (share[0] <= 0.0101 || share[1] <= 0.0101) t.contrast[g] = 0;
  }
  const double m_most = *std::max_element(zone.exact_m.begin(), zone.exact_m.end());
  t.certified = m_most <= Constants{}.blend_m_highest + 1e-12;
  t.certified = fill(t.blend, n, n.blend, group) && t.certified;
  if (t.has_contrast) {
    t.certified = fill(t.white, n, n.white, group) && t.certified;
    t.certified = fill(t.pigmented, n, n.pigmented, group) && t.certified;
  }
  return t;
}

void lower_bounds(const BoundTable& table, const ZoneLoss& loss, const float* loads, int count, float* out) {
  if (!table.certified) {
    std::fill_n(out, count, 0.0F);
    return;
  }
  HWY_DYNAMIC_DISPATCH(LowerBounds)(kernel_constants(), table, loss, loads, count, out);
}

}  // namespace strandline
#endif
