// clang-format off: the order of these includes is Highway's.
#include "formulate/curve_nodes.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/formulate/curve_nodes.cpp"
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

namespace strandline {

HWY_EXPORT(NodeReflectance);

float load_node(int cell) {
  if (cell == 0) return 0;
  return std::bit_cast<float>(static_cast<unsigned>(cell + kFirstCell) << kMantissaShift) - kLoadOffset;
}

void node_reflectance(const ZoneTable& zone, int band, float load, float* blend, float* white, float* pigmented) {
  HWY_DYNAMIC_DISPATCH(NodeReflectance)(kernel_constants(), zone, band, load, blend, white, pigmented);
}

void band_nodes(const ZoneTable& zone, int band, int cells, bool with_kinds, BandNodes& out) {
  const size_t stride = static_cast<size_t>(zone.stride), size = (static_cast<size_t>(cells) + 1) * stride;
  out.blend.resize(size);
  if (with_kinds) out.white.resize(size), out.pigmented.resize(size);
  for (int j = 0; j <= cells; ++j) {
    const size_t at = static_cast<size_t>(j) * stride;
    node_reflectance(zone, band, load_node(j), &out.blend[at], with_kinds ? &out.white[at] : nullptr,
                     with_kinds ? &out.pigmented[at] : nullptr);
  }
}

double chord_gap(double width, double fall, double rise, bool first) {
  const double up = std::max(0.0, rise), down = std::max(0.0, fall);
  return (first ? width * up : up + down > 0 ? width * up * down / (up + down) : 0) + 2 * kNodeNoise;
}

double remainder_factor(double y) {
  const double q = y * y + y + 1;
  return (y + 2) / (3 * q * q);
}

}  // namespace strandline
#endif
