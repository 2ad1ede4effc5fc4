// Compiled once per processor target by bound.cpp. Lanes are scenario groups (bounds) or scenarios (tables).
#if defined(STRANDLINE_BOUND_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_BOUND_INL
#undef STRANDLINE_BOUND_INL
#else
#define STRANDLINE_BOUND_INL
#endif

#include "engine/src/search/ends-inl.h"

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

using G = hn::CappedTag<float, kScenarioGroups>;
using GV = hn::Vec<G>;

HWY_INLINE GV GK(float x) { return hn::Set(G(), x); }

// Sum over the bands of weight × (mean, spread) of one curve.
struct Sum {
  GV mean, spread;
};

// Ends of the mean root; a sum of chords lies above the mean by no more than `coarse` of it.
HWY_INLINE Root<G> RootOfSum(const Sum& s, float coarse, float furthest) {
  return RootsOf(G(), hn::Mul(s.mean, GK(1 - coarse)), s.mean, s.spread, furthest);
}

// Mean over the groups; contrast is left out where the rest is beyond `enough` already.
HWY_INLINE float BoundOf(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* load,
                         float enough) {
  const G d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  int cell[kBands];
  for (int b = 0; b < kBands; ++b)
    cell[b] = (b * t.cells + HWY_MIN(load_cell(load[b]), t.cells - 1)) * 3 * kScenarioGroups;
  // One band of one curve, lanes of groups from `chord` on.
  auto at = [&](const float* chord, int b) HWY_ATTR {
    return Sum{hn::MulAdd(hn::LoadU(d, chord + kScenarioGroups), GK(load[b]), hn::LoadU(d, chord)),
               hn::LoadU(d, chord + 2 * kScenarioGroups)};
  };
  auto add = [](Sum& to, float weight, const Sum& s) HWY_ATTR {
    to.mean = hn::MulAdd(GK(weight), s.mean, to.mean);
    to.spread = hn::MulAdd(GK(weight), s.spread, to.spread);
  };
  GV sum = hn::Zero(d);
  for (int g = 0; g < kScenarioGroups; g += lanes) {
    Sum x{hn::Zero(d), hn::Zero(d)}, y = x, zz = x;
    for (int b = 0; b < kBands; ++b) {
      const Sum r = at(t.blend.chords.data() + cell[b] + g, b);
      add(x, k.x[b], r), add(y, k.y[b], r), add(zz, k.z[b], r);
    }
    const float far = t.blend.furthest;
    const Ends<G> fx = MeanRoot(RootOfSum(x, t.coarse, far)), fy = MeanRoot(RootOfSum(y, t.coarse, far)),
                  fz = MeanRoot(RootOfSum(zz, t.coarse, far));
    const GV loss = LeastLoss(d, z, fy, {hn::Sub(fx.low, fy.high), hn::Sub(fx.high, fy.low)},
                              {hn::Sub(fy.low, fz.high), hn::Sub(fy.high, fz.low)});
    sum = hn::MulAdd(hn::LoadU(d, t.weight.data() + g), loss, sum);
  }
  const float without = hn::GetLane(hn::SumOfLanes(d, sum));
  if (!t.has_contrast || without > enough) return without;
  for (int g = 0; g < kScenarioGroups; g += lanes) {
    Sum white{hn::Zero(d), hn::Zero(d)}, pigmented = white;
    for (int b = 0; b < kBands; ++b) {
      add(white, k.y[b], at(t.white.chords.data() + cell[b] + g, b));
      add(pigmented, k.y[b], at(t.pigmented.chords.data() + cell[b] + g, b));
    }
    const Ends<G> fw = MeanRoot(RootOfSum(white, t.coarse, t.white.furthest));
    const Ends<G> fp = MeanRoot(RootOfSum(pigmented, t.coarse, t.pigmented.furthest));
    const GV apart = hn::Max(hn::Max(hn::Sub(fw.low, fp.high), hn::Sub(fp.low, fw.high)), hn::Zero(d));
    const GV beyond = hn::MulSub(GK(116.0F), apart, GK(static_cast<float>(z.contrast_free)));
    const GV price = hn::Mul(GK(static_cast<float>(z.contrast)), hn::LoadU(d, t.contrast.data() + g));
    sum = hn::MulAdd(hn::LoadU(d, t.weight.data() + g), hn::Mul(price, hn::Max(beyond, hn::Zero(d))), sum);
  }
  return hn::GetLane(hn::SumOfLanes(d, sum));
}

inline void LowerBounds(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* loads, int count,
                        float enough, float* out) {
  constexpr float kRounding = 2e-4F;  // of the sums, the roots and the loss in single precision
  for (int i = 0; i < count; ++i) out[i] = HWY_MAX(0.0F, BoundOf(k, t, z, loads + i * kBands, enough) - kRounding);
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
