// Compiled once per processor target by bound.cpp. Lanes are scenario groups (bounds) or scenarios (tables).
#if defined(STRANDLINE_BOUND_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_BOUND_INL
#undef STRANDLINE_BOUND_INL
#else
#define STRANDLINE_BOUND_INL
#endif

#include "engine/src/formulate/ends-inl.h"

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

using G = hn::CappedTag<float, kScenarioGroups>;
using GV = hn::Vec<G>;

HWY_INLINE GV GK(float x) { return hn::Set(G(), x); }

// CIE f of the chords' value (an upper end), and the cube root less what it may lose (a lower end).
HWY_INLINE Ends<G> EndsOf(GV x, GV lost) {
  const GV root = RootOf(G(), x);
  return {hn::NegMulAdd(root, lost, root), UpperOf(G(), x)};
}

// X, Y and Z of the chords of some groups at one load; even and odd bands apart, so that sums need not wait for each
// other.
struct Sums {
  GV x, y, z;
};

HWY_INLINE Sums BlendAt(const KernelConstants& k, const float* chords, const int* cell, const float* load) {
  const G d;
  Sums s[2] = {{hn::Zero(d), hn::Zero(d), hn::Zero(d)}, {hn::Zero(d), hn::Zero(d), hn::Zero(d)}};
  for (int b = 0; b < kBands; ++b) {
    const float* chord = chords + cell[b];
    Sums& own = s[b & 1];
    const GV r = hn::MulAdd(hn::LoadU(d, chord + kScenarioGroups), GK(load[b]), hn::LoadU(d, chord));
    own.x = hn::MulAdd(GK(k.x[b]), r, own.x);
    own.y = hn::MulAdd(GK(k.y[b]), r, own.y);
    own.z = hn::MulAdd(GK(k.z[b]), r, own.z);
  }
  return {hn::Add(s[0].x, s[1].x), hn::Add(s[0].y, s[1].y), hn::Add(s[0].z, s[1].z)};
}

// Mean over the groups; contrast is left out where the rest is beyond `enough` already.
HWY_INLINE float BoundOf(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* load,
                         float enough) {
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
    const Sums at = BlendAt(k, t.blend.chords.data() + g, cell, load);
    const GV lost = hn::LoadU(d, t.blend.lost.data() + bin + g);
    const Ends<G> fx = EndsOf(at.x, lost), fy = EndsOf(at.y, lost), fz = EndsOf(at.z, lost);
    const GV loss = LeastLoss(d, z, fy, {hn::Sub(fx.low, fy.high), hn::Sub(fx.high, fy.low)},
                              {hn::Sub(fy.low, fz.high), hn::Sub(fy.high, fz.low)});
    sum = hn::MulAdd(hn::LoadU(d, t.weight.data() + g), loss, sum);
  }
  const float without = hn::GetLane(hn::SumOfLanes(d, sum));
  if (!t.has_contrast || without > enough) return without;
  for (int g = 0; g < kScenarioGroups; g += lanes) {
    GV white = hn::Zero(d), pigmented = white;
    for (int b = 0; b < kBands; ++b) {
      const float* w = t.white.chords.data() + cell[b] + g;
      const float* p = t.pigmented.chords.data() + cell[b] + g;
      const GV weight = GK(k.y[b]), at = GK(load[b]);
      white = hn::MulAdd(weight, hn::MulAdd(hn::LoadU(d, w + kScenarioGroups), at, hn::LoadU(d, w)), white);
      pigmented = hn::MulAdd(weight, hn::MulAdd(hn::LoadU(d, p + kScenarioGroups), at, hn::LoadU(d, p)), pigmented);
    }
    const Ends<G> fw = EndsOf(white, hn::LoadU(d, t.white.lost.data() + bin + g));
    const Ends<G> fp = EndsOf(pigmented, hn::LoadU(d, t.pigmented.lost.data() + bin + g));
    const GV apart = hn::Max(hn::Max(hn::Sub(fw.low, fp.high), hn::Sub(fp.low, fw.high)), hn::Zero(d));
    const GV beyond = hn::MulSub(GK(116.0F), apart, GK(static_cast<float>(z.contrast_free)));
    const GV price = hn::Mul(GK(static_cast<float>(z.contrast)), hn::LoadU(d, t.contrast.data() + g));
    sum = hn::MulAdd(hn::LoadU(d, t.weight.data() + g), hn::Mul(price, hn::Max(beyond, hn::Zero(d))), sum);
  }
  return hn::GetLane(hn::SumOfLanes(d, sum));
}

void LowerBounds(const KernelConstants& k, const BoundTable& t, const ZoneLoss& z, const float* loads, int count,
                 float enough, float* out) {
  constexpr float kRounding = 2e-4F;  // of the sums, the roots and the loss in single precision
  for (int i = 0; i < count; ++i) out[i] = HWY_MAX(0.0F, BoundOf(k, t, z, loads + i * kBands, enough) - kRounding);
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
