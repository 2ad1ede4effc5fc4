// clang-format off: the order of these includes is Highway's.
#include "search/curve_nodes.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/search/curve_nodes.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/predict/curve-inl.h"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {

// R of every scenario at one band and load. `white` and `pigmented` may be null.
void NodeReflectance(const KernelConstants& k, const ZoneTable& zone, int band, float load, float* blend, float* white,
                     float* pigmented) {
  const D d;
  const int lanes = static_cast<int>(hn::Lanes(d)), stride = zone.stride;
  for (int s = 0; s < stride; s += lanes) {
    const V m = hn::LoadU(d, zone.blend_m.data() + s);
    const V black = hn::NegMulAdd(K(0.01F), m, K(0.01F));
    const V rest = hn::NegMulAdd(m, K(k.c_star), black);
    V sum = hn::Zero(d), kind[2] = {sum, sum}, share[2] = {sum, sum};
    for (int p = 0; p < zone.populations; ++p) {
      const V u = hn::LoadU(d, zone.uptake.data() + p * stride + s);
      const V own = hn::LoadU(d, zone.share.data() + p * stride + s);
      const V base = hn::LoadU(d, zone.base.data() + (p * kBands + band) * stride + s);
      const V e = CurveE(k, hn::MulAdd(u, K(load * zone.prefer[p * kBands + band]), base));
      sum = hn::Add(sum, hn::Div(hn::Mul(own, e), hn::MulAdd(rest, e, m)));
      if (!white) continue;
      const V r = hn::Sub(hn::Div(K(1.0F), e), K(k.c_star));
      kind[zone.white[p]] = hn::MulAdd(own, r, kind[zone.white[p]]);
      share[zone.white[p]] = hn::Add(share[zone.white[p]], own);
    }
    hn::StoreU(hn::Div(hn::Sub(hn::Div(K(1.0F), sum), black), m), d, blend + s);
    if (!white) continue;
    hn::StoreU(hn::Div(kind[1], hn::Max(share[1], K(1e-6F))), d, white + s);
    hn::StoreU(hn::Div(kind[0], hn::Max(share[0], K(1e-6F))), d, pigmented + s);
  }
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
#include <algorithm>
#include <cmath>

#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {

HWY_EXPORT(NodeReflectance);

namespace {

constexpr double kNodeNoise = 2e-6;  // of R in single precision

// Sums by group of what lies at the positions.
void add_stats(const std::vector<float>& r, const GroupWeights& w, size_t groups, NodeStats& out) {
  double mean[kGroupsMostOfScenarios] = {}, square[kGroupsMostOfScenarios] = {};
  for (size_t i = 0; i < r.size(); i += groups)
    for (size_t g = 0; g < groups; ++g) {
      const double z = static_cast<double>(w.unit[i + g] * r[i + g]), part = static_cast<double>(w.part[i + g]) * z;
      mean[g] += part;
      square[g] += part * z;
    }
  for (size_t g = 0; g < groups; ++g) {
    constexpr double kRounding = 1e-6;  // of the squares, relative
    out.mean.push_back(mean[g]);
    out.spread.push_back(std::sqrt(std::max(0.0, square[g] - mean[g] * mean[g]) + kRounding * mean[g] * mean[g]));
  }
}

// How far, at most, a convex curve lies below its chord over a cell of this width, where the slope changes by `fall`
// at its left end and by `rise` at its right; no cell lies left of the first.
double chord_gap(double width, double fall, double rise, bool first) {
  const double up = std::max(0.0, rise), down = std::max(0.0, fall);
  return (first ? width * up : up + down > 0 ? width * up * down / (up + down) : 0) + 2 * kNodeNoise;
}

}  // namespace

float load_node(int cell) {
  if (cell == 0) return 0;
  return std::bit_cast<float>(static_cast<unsigned>(cell + kFirstCell) << kMantissaShift) - kLoadOffset;
}

void node_reflectance(const ZoneTable& zone, int band, float load, float* blend, float* white, float* pigmented) {
  HWY_DYNAMIC_DISPATCH(NodeReflectance)(kernel_constants(), zone, band, load, blend, white, pigmented);
}

Luminance luminance(const ZoneTable& zone, float load) {
  const size_t stride = static_cast<size_t>(zone.stride);
  Luminance sum;
  std::vector<float> row[3];
  std::vector<float>* to[3] = {&sum.blend, &sum.white, &sum.pigmented};
  for (int c = 0; c < 3; ++c) row[c].assign(stride, 0), to[c]->assign(stride, 0);
  for (int b = 0; b < kBands; ++b) {
    node_reflectance(zone, b, load, row[0].data(), row[1].data(), row[2].data());
    for (int c = 0; c < 3; ++c)
      for (size_t s = 0; s < stride; ++s) (*to[c])[s] += kernel_constants().y[b] * std::max(row[c][s], 1e-3F);
  }
  return sum;
}

void node_stats(const GroupedZone& z, int band, int cells, NodeStats* blend, NodeStats* white, NodeStats* pigmented) {
  const size_t stride = static_cast<size_t>(z.zone.stride), groups = static_cast<size_t>(z.groups);
  std::vector<float> r(stride), w(stride), p(stride);
  for (NodeStats* s : {blend, white, pigmented})
    if (s) s->mean.clear(), s->spread.clear();
  for (int j = 0; j <= cells; ++j) {
    node_reflectance(z.zone, band, load_node(j), r.data(), white ? w.data() : nullptr, white ? p.data() : nullptr);
    add_stats(r, z.blend, groups, *blend);
    if (white) add_stats(w, z.white, groups, *white), add_stats(p, z.pigmented, groups, *pigmented);
  }
}

void chords(const NodeStats& nodes, int groups, int g, double furthest, std::vector<Chord>& out, ChordCheck& check) {
  const int cells = static_cast<int>(nodes.mean.size()) / groups - 1;
  auto mean = [&](int j) { return nodes.mean[static_cast<size_t>(j * groups + g)]; };
  auto spread = [&](int j) { return nodes.spread[static_cast<size_t>(j * groups + g)]; };
  auto node = [](int j) { return static_cast<double>(load_node(j)); };
  auto slope = [&](int j) { return (mean(j + 1) - mean(j)) / (node(j + 1) - node(j)); };
  out.resize(static_cast<size_t>(cells));
  double before = 0, own = slope(0);
  for (int j = 0; j < cells; ++j) {
    // The last curve goes on falling, less and less.
    const double after = j + 1 < cells ? slope(j + 1) : 0, width = node(j + 1) - node(j), noise = kNodeNoise / width;
    const double rise = after - own, fall = j > 0 ? own - before : rise;
    if (own > noise || rise < -noise || fall < -noise) check.convex = false;
    const double gap = chord_gap(width, fall, rise, j == 0);
    check.coarse = std::max(check.coarse, gap / (mean(j + 1) - 2 * kNodeNoise));
    // A single scenario lies below its own chord by no more than all together by theirs.
    out[static_cast<size_t>(j)] = {static_cast<float>(mean(j) - own * node(j)), static_cast<float>(own),
                                   static_cast<float>(std::max(spread(j), spread(j + 1)) + furthest * gap)};
    before = own, own = after;
  }
}

bool certifiable(const ZoneTable& zone) {
  constexpr double kRoot = 216.0 / 24389.0;
  const CurveCubes& curve = curve_cubes();
  return 1 / curve.e_inf - curve.c_star > kRoot &&
         *std::max_element(zone.exact_m.begin(), zone.exact_m.end()) <= Constants{}.blend_m_highest + 1e-12;
}

}  // namespace strandline
#endif
