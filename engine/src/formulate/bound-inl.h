// Compiled once per processor target by bound.cpp. Lanes are scenario groups (bounds) or scenarios (tables).
#if defined(STRANDLINE_BOUND_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_BOUND_INL
#undef STRANDLINE_BOUND_INL
#else
#define STRANDLINE_BOUND_INL
#endif

#include "engine/src/predict/curve-inl.h"

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

using G = hn::CappedTag<float, kScenarioGroups>;
using GV = hn::Vec<G>;

HWY_INLINE GV GK(float x) { return hn::Set(G(), x); }

// CIE f of the chords' value (an upper end), and the cube root less what it may lose (a lower end).
struct Ends {
  GV low, high;
};

HWY_INLINE Ends EndsOf(GV x, GV lost) {
  const GV root = CbrtOf(G(), hn::Max(x, GK(1e-9F)));
  const GV line = hn::MulAdd(x, GK(static_cast<float>(841.0 / 108.0)), GK(static_cast<float>(4.0 / 29.0)));
  const GV high = hn::IfThenElse(hn::Gt(x, GK(static_cast<float>(216.0 / 24389.0))), root, line);
  return {hn::NegMulAdd(root, lost, root), high};
}

// Least of max(up·v, −down·v) over v in [low, high].
HWY_INLINE GV LeastHinge(GV low, GV high, double up, double down) {
  return hn::Max(hn::Max(hn::Mul(GK(static_cast<float>(up)), low), hn::Mul(GK(static_cast<float>(-down)), high)),
                 hn::Zero(G()));
}

HWY_INLINE float BoundOf(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* load) {
  const G d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  int cell[kBands], least = t.cells - 1;
  for (int b = 0; b < kBands; ++b) {
    const int at = HWY_MIN(load_cell(load[b]), t.cells - 1);
    cell[b] = (b * t.cells + at) * 2 * kScenarioGroups;
    least = HWY_MIN(least, at);
  }
  const int bin = least / kCellsPerBin * kScenarioGroups;
  GV sum = hn::Zero(d);
  for (int g = 0; g < kScenarioGroups; g += lanes) {
    GV x = hn::Zero(d), y = x, zz = x, white = x, pigmented = x;
    for (int b = 0; b < kBands; ++b) {
      const float* chord = t.blend.chords.data() + cell[b] + g;
      const GV r = hn::MulAdd(hn::LoadU(d, chord + kScenarioGroups), GK(load[b]), hn::LoadU(d, chord));
      x = hn::MulAdd(GK(k.x[b]), r, x);
      y = hn::MulAdd(GK(k.y[b]), r, y);
      zz = hn::MulAdd(GK(k.z[b]), r, zz);
    }
    const GV lost = hn::LoadU(d, t.blend.lost.data() + bin + g);
    const Ends fx = EndsOf(x, lost), fy = EndsOf(y, lost), fz = EndsOf(zz, lost);
    const GV l_low = hn::MulSub(GK(116.0F), fy.low, GK(static_cast<float>(16.0 + z.target.l)));
    const GV l_high = hn::MulSub(GK(116.0F), fy.high, GK(static_cast<float>(16.0 + z.target.l)));
    GV loss = LeastHinge(l_low, l_high, z.light, z.dark);
    const GV ta = GK(static_cast<float>(z.target.a)), tb = GK(static_cast<float>(z.target.b));
    const GV a_low = hn::MulSub(GK(500.0F), hn::Sub(fx.low, fy.high), ta);
    const GV a_high = hn::MulSub(GK(500.0F), hn::Sub(fx.high, fy.low), ta);
    const GV b_low = hn::MulSub(GK(200.0F), hn::Sub(fy.low, fz.high), tb);
    const GV b_high = hn::MulSub(GK(200.0F), hn::Sub(fy.high, fz.low), tb);
    // u·a + v·b over the box.
    auto span = [&](double u, double v, GV* low, GV* high) HWY_ATTR {
      const GV uu = GK(static_cast<float>(u)), vv = GK(static_cast<float>(v));
      const GV ua1 = hn::Mul(uu, a_low), ua2 = hn::Mul(uu, a_high), vb1 = hn::Mul(vv, b_low), vb2 = hn::Mul(vv, b_high);
      *low = hn::Add(hn::Min(ua1, ua2), hn::Min(vb1, vb2));
      *high = hn::Add(hn::Max(ua1, ua2), hn::Max(vb1, vb2));
    };
    GV low, high;
    span(z.axis.a, z.axis.b, &low, &high);
    loss = hn::Add(loss, LeastHinge(low, high, z.warm, z.cool));
    span(z.axis.b, -z.axis.a, &low, &high);
    loss = hn::Add(loss, LeastHinge(low, high, z.red, z.green));
    if (t.has_contrast) {
      for (int b = 0; b < kBands; ++b) {
        const float* w = t.white.chords.data() + cell[b] + g;
        const float* p = t.pigmented.chords.data() + cell[b] + g;
        const GV weight = GK(k.y[b]), at = GK(load[b]);
        white = hn::MulAdd(weight, hn::MulAdd(hn::LoadU(d, w + kScenarioGroups), at, hn::LoadU(d, w)), white);
        pigmented = hn::MulAdd(weight, hn::MulAdd(hn::LoadU(d, p + kScenarioGroups), at, hn::LoadU(d, p)), pigmented);
      }
      const Ends fw = EndsOf(white, hn::LoadU(d, t.white.lost.data() + bin + g));
      const Ends fp = EndsOf(pigmented, hn::LoadU(d, t.pigmented.lost.data() + bin + g));
      const GV apart = hn::Max(hn::Max(hn::Sub(fw.low, fp.high), hn::Sub(fp.low, fw.high)), hn::Zero(d));
      const GV beyond = hn::MulSub(GK(116.0F), apart, GK(static_cast<float>(z.contrast_free)));
      const GV price = hn::Mul(GK(static_cast<float>(z.contrast)), hn::LoadU(d, t.contrast.data() + g));
      loss = hn::MulAdd(price, hn::Max(beyond, hn::Zero(d)), loss);
    }
    sum = hn::MulAdd(hn::LoadU(d, t.weight.data() + g), loss, sum);
  }
  return hn::GetLane(hn::SumOfLanes(d, sum));
}

void LowerBounds(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* loads, int count,
                 float* out) {
  constexpr float kRounding = 2e-4F;  // of the sums, the roots and the loss in single precision
  for (int i = 0; i < count; ++i) out[i] = HWY_MAX(0.0F, BoundOf(k, t, z, loads + i * kBands) - kRounding);
}

// R of every scenario at one band and load: seen together, and (where there is contrast) the mean of each kind.
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
      const V r = hn::Sub(hn::Div(K(1.0F), e), K(k.c_star));
      kind[zone.white[p]] = hn::MulAdd(own, r, kind[zone.white[p]]);
      share[zone.white[p]] = hn::Add(share[zone.white[p]], own);
    }
    hn::StoreU(hn::Div(hn::Sub(hn::Div(K(1.0F), sum), black), m), d, blend + s);
    hn::StoreU(hn::Div(kind[1], hn::Max(share[1], K(1e-6F))), d, white + s);
    hn::StoreU(hn::Div(kind[0], hn::Max(share[0], K(1e-6F))), d, pigmented + s);
  }
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
