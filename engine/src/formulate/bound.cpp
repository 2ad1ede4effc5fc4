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
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

#include "strandline/optics.h"

namespace strandline {

HWY_EXPORT(LowerBounds);

namespace {

// Groups of like scenarios: halved again and again at the median of the feature that varies most. Features are cube
// roots of a few band means of R at a few loads, of each curve.
std::vector<int> group_scenarios(const ZoneTable& zone, int cells) {
  constexpr int kThirds = 3;
  const size_t stride = static_cast<size_t>(zone.stride);
  std::vector<std::vector<float>> features;
  std::vector<float> row[3];  // blend, white, pigmented
  for (auto& r : row) r.resize(stride);
  const size_t curves = zone.has_contrast ? 3 : 1;
  for (int j = 0; j <= cells; j += std::max(1, cells / 3))
    for (int part = 0; part < kThirds; ++part) {
      std::vector<float> sum[3];
      for (auto& v : sum) v.assign(static_cast<size_t>(zone.scenarios), 0);
      for (int b = part * kBands / kThirds; b < (part + 1) * kBands / kThirds; ++b) {
        node_reflectance(zone, b, load_node(j), row[0].data(), zone.has_contrast ? row[1].data() : nullptr,
                         row[2].data());
        for (size_t c = 0; c < curves; ++c)
          for (size_t s = 0; s < sum[c].size(); ++s) sum[c][s] += row[c][s];
      }
      for (size_t c = 0; c < curves; ++c) {
        for (float& v : sum[c]) v = std::cbrt(v);
        features.push_back(std::move(sum[c]));
      }
    }
  std::vector<int> order(static_cast<size_t>(zone.scenarios)), group(order.size());
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

constexpr size_t kGroups = kScenarioGroups;
using ByGroup = std::array<double, kGroups>;

// What the scenarios of each group have in common at one node.
struct GroupNode {
  ByGroup mean{}, sd{}, far{};
};

GroupNode group_node(const float* r, const std::vector<int>& group, const ByGroup& count) {
  GroupNode n;
  for (size_t s = 0; s < group.size(); ++s) n.mean[static_cast<size_t>(group[s])] += static_cast<double>(r[s]);
  for (size_t g = 0; g < kGroups; ++g) n.mean[g] /= count[g];
  for (size_t s = 0; s < group.size(); ++s) {
    const size_t g = static_cast<size_t>(group[s]);
    const double off = std::abs(static_cast<double>(r[s]) - n.mean[g]);
    n.sd[g] += off * off;
    n.far[g] = std::max(n.far[g], off);
  }
  for (size_t g = 0; g < kGroups; ++g) n.sd[g] = std::sqrt(n.sd[g] / count[g]);
  return n;
}

// Makes one curve, band by band.
class CurveMaker {
 public:
  CurveMaker(BoundCurve& curve, int cells, const std::vector<int>& group)
      : curve_(curve), group_(group), cells_(static_cast<size_t>(cells)), node_(cells_ + 1), slope_(cells_) {
    curve_.chords.assign(kBands * cells_ * 2 * kGroups, 0);
    for (int g : group) members_[static_cast<size_t>(g)] += 1;
    for (size_t g = 0; g < kGroups; ++g) count_[g] = std::max(1.0, members_[g]);
    for (int j = 0; j < cells; ++j)
      width_.push_back(static_cast<double>(load_node(j + 1)) - static_cast<double>(load_node(j)));
    spread_.resize(cells_ / kCellsPerBin + 1);
    furthest_.resize(spread_.size());
  }

  // R of every scenario at the nodes of this band, rows of `stride`.
  void add(int band, const std::vector<float>& values, int stride) {
    for (size_t j = 0; j <= cells_; ++j)
      node_[j] = group_node(&values[j * static_cast<size_t>(stride)], group_, count_);
    for (size_t j = 0; j < cells_; ++j)
      for (size_t g = 0; g < kGroups; ++g) slope_[j][g] = (node_[j + 1].mean[g] - node_[j].mean[g]) / width_[j];
    for (size_t j = 0; j < cells_; ++j) add_cell(static_cast<size_t>(band), j);
  }

  // Remainders. False where the curve is not convex and falling, or the chords are too coarse.
  bool finish() {
    const size_t bins = spread_.size();
    curve_.lost.assign(bins * kGroups, 0);
    ByGroup most{}, out{};
    // What is lost at smaller cells must hold for every larger cell too.
    for (size_t bin = bins; bin-- > 0;)
      for (size_t g = 0; g < kGroups; ++g) {
        most[g] = std::max(most[g], spread_[bin][g]);
        out[g] = std::max(out[g], furthest_[bin][g]);
        const double y0 = std::cbrt(std::max(0.0, 1 - out[g]));
        if (coarse_[g] > 0.05) fine_ = false;
        curve_.lost[bin * kGroups + g] =
            static_cast<float>(most[g] * most[g] * remainder_factor(y0) + 0.34 * coarse_[g] + 2e-5);
      }
    return fine_;
  }

 private:
  void add_cell(size_t band, size_t j) {
    const GroupNode &left = node_[j], &right = node_[j + 1];
    const double from = static_cast<double>(load_node(static_cast<int>(j))), noise = kNodeNoise / width_[j];
    float* to = &curve_.chords[(band * cells_ + j) * 2 * kGroups];
    ByGroup &most = spread_[j / kCellsPerBin], &out = furthest_[j / kCellsPerBin];
    for (size_t g = 0; g < kGroups; ++g) {
      if (members_[g] == 0) continue;
      const double own = slope_[j][g];
      to[g] = static_cast<float>(left.mean[g] - own * from);
      to[g + kGroups] = static_cast<float>(own);
      // A convex curve lies above its neighbours' chords drawn on.
      const double rise = j + 1 < cells_ ? slope_[j + 1][g] - own : -own, fall = j ? own - slope_[j - 1][g] : rise;
      if (own > noise || rise < -noise || fall < -noise) fine_ = false;
      const double gap = chord_gap(width_[j], fall, rise, j == 0), least = right.mean[g] - 2 * kNodeNoise;
      // Single scenarios may bend more than their mean; their gap is at most the whole group's.
      const double alone = gap * count_[g];
      most[g] = std::max(most[g], (std::max(left.sd[g], right.sd[g]) + alone) / least);
      out[g] = std::max(out[g], (std::max(left.far[g], right.far[g]) + alone) / least);
      coarse_[g] = std::max(coarse_[g], gap / least);
    }
  }

  BoundCurve& curve_;
  const std::vector<int>& group_;
  size_t cells_;
  ByGroup members_{}, count_{}, coarse_{};
  std::vector<double> width_;
  std::vector<GroupNode> node_;
  std::vector<ByGroup> slope_, spread_, furthest_;
  bool fine_ = true;
};

}  // namespace

BoundTable bound_table(const ZoneTable& zone, float load_max) {
  BoundTable t;
  t.cells = load_cell(load_max) + 1;
  t.has_contrast = zone.has_contrast;
  const std::vector<int> group = group_scenarios(zone, t.cells);
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
  CurveMaker blend(t.blend, t.cells, group);
  std::optional<CurveMaker> white, pigmented;
  if (t.has_contrast) white.emplace(t.white, t.cells, group), pigmented.emplace(t.pigmented, t.cells, group);
  BandNodes nodes;
  for (int b = 0; b < kBands; ++b) {
    band_nodes(zone, b, t.cells, t.has_contrast, nodes);
    blend.add(b, nodes.blend, zone.stride);
    if (white) white->add(b, nodes.white, zone.stride), pigmented->add(b, nodes.pigmented, zone.stride);
  }
  t.certified = blend.finish() && t.certified;
  if (white) t.certified = white->finish() && t.certified;
  if (pigmented) t.certified = pigmented->finish() && t.certified;
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
