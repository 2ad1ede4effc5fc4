// Compiled once per processor target by box_bound.cpp.
// clang-format off: the guards toggle once per target.
#if defined(STRANDLINE_BOX_BOUND_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_BOX_BOUND_INL
#undef STRANDLINE_BOX_BOUND_INL
#else
#define STRANDLINE_BOX_BOUND_INL
#endif

#include "engine/src/search/ends-inl.h"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

inline constexpr int kBoxBlock = 16;  // boxes summed before their roots are taken together

// Where the rows of this load's cells begin.
HWY_INLINE void FindRows(const BoxTable& t, const float* load, int* at) {
  const D d;
  const hn::RebindToSigned<D> di;
  const int lanes = static_cast<int>(hn::Lanes(d));
  const auto last = hn::Set(di, t.cells - 1), row = hn::Set(di, 2 * kBoxRow);
  for (int b = 0; b < kBoxBands; b += lanes) {
    const auto bits = hn::BitCast(di, hn::Add(hn::LoadU(d, load + b), K(kLoadOffset)));
    const auto cell = hn::Min(hn::Sub(hn::ShiftRight<kMantissaShift>(bits), hn::Set(di, kFirstCell)), last);
    const auto band = hn::Iota(di, b);
    hn::StoreU(hn::Mul(hn::Add(hn::Mul(band, hn::Set(di, t.cells)), cell), row), di, at + b);
  }
}

// Sums of the rows at one load, channel c of group g to out[(g·kBoxChannels + c)·kBoxBlock].
HWY_INLINE void SumRows(const BoxTable& t, const float* load, float* out) {
  using DR = hn::CappedTag<float, kBoxRow>;
  const DR d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  HWY_ALIGN int at[kBoxBands];
  HWY_ALIGN float sums[kBoxRow];
  FindRows(t, load, at);
  for (int c = 0; c < kBoxRow; c += lanes) {
    auto base = hn::Zero(d), slope = base, base2 = base, slope2 = base;
    for (int b = 0; b + 1 < kBands; b += 2) {
      const float *row = t.rows.data() + at[b] + c, *next = t.rows.data() + at[b + 1] + c;
      base = hn::Add(base, hn::LoadU(d, row));
      slope = hn::MulAdd(hn::LoadU(d, row + kBoxRow), hn::Set(d, load[b]), slope);
      base2 = hn::Add(base2, hn::LoadU(d, next));
      slope2 = hn::MulAdd(hn::LoadU(d, next + kBoxRow), hn::Set(d, load[b + 1]), slope2);
    }
    static_assert(kBands % 2 == 1);
    const float* row = t.rows.data() + at[kBands - 1] + c;
    base = hn::Add(base, hn::LoadU(d, row));
    slope = hn::MulAdd(hn::LoadU(d, row + kBoxRow), hn::Set(d, load[kBands - 1]), slope);
    hn::StoreU(hn::Add(hn::Add(base, base2), hn::Add(slope, slope2)), d, sums + c);
  }
  for (int c = 0; c < kBoxRow; ++c) out[c * kBoxBlock] = sums[c];
}

// Ends of (mean of roots of X) − (mean of roots of Y), the better of two ways: root by root, and from the ends of
// X − Y (∛X − ∛Y = (X − Y)/(∛X² + ∛X∛Y + ∛Y²)), which knows that both come from the same bands.
HWY_INLINE Ends<D> Difference(const Root<D>& x, const Root<D>& y, V low, V high) {
  const D d;
  auto q = [&](V a, V b) HWY_ATTR { return hn::MulAdd(a, hn::Add(a, b), hn::Mul(b, b)); };
  const V most = q(x.high, y.high), least = q(x.low, y.low);
  const V joint_low =
      hn::NegMulAdd(x.high, x.lost, hn::Div(low, hn::IfThenElse(hn::Ge(low, hn::Zero(d)), most, least)));
  const V joint_high =
      hn::MulAdd(y.high, y.lost, hn::Div(high, hn::IfThenElse(hn::Ge(high, hn::Zero(d)), least, most)));
  const Ends<D> mx = MeanRoot(x), my = MeanRoot(y);
  return {hn::Max(hn::Sub(mx.low, my.high), joint_low), hn::Min(hn::Sub(mx.high, my.low), joint_high)};
}

// Least loss of one group, some boxes in the lanes: sums at the dark and at the bright end, a channel every kBoxBlock.
HWY_INLINE V GroupLoss(const BoxTable& t, const ZoneLoss& z, const float* dark, const float* bright) {
  const D d;
  auto at = [&](const float* sums, int channel) HWY_ATTR { return hn::LoadU(d, sums + channel * kBoxBlock); };
  const V sure = K(1 - t.coarse);
  auto root = [&](int channel) HWY_ATTR {
    return RootsOf(d, hn::Mul(at(dark, channel), sure), at(bright, channel), at(bright, channel + 3), t.furthest);
  };
  const Root<D> x = root(0), y = root(1), zz = root(2);
  // X − Y = P − N with P, N ≥ 0; N = P − (X − Y) of the same chords.
  auto difference = [&](int first, int second, int positive) HWY_ATTR {
    const V p_low = at(dark, positive), p_high = at(bright, positive);
    const V n_low = hn::Sub(p_low, hn::Sub(at(dark, first), at(dark, second)));
    const V n_high = hn::Sub(p_high, hn::Sub(at(bright, first), at(bright, second)));
    constexpr float kSum = 1e-5F;  // of these sums in single precision
    return Ends<D>{hn::Sub(hn::MulSub(p_low, sure, n_high), K(kSum)),
                   hn::Add(hn::NegMulAdd(n_low, sure, p_high), K(kSum))};
  };
  const Ends<D> dxy = difference(0, 1, 6), dyz = difference(1, 2, 7);
  return LeastLoss(d, z, MeanRoot(y), Difference(x, y, dxy.low, dxy.high), Difference(y, zz, dyz.low, dyz.high));
}

inline void BoxBounds(const BoxTable& t, const ZoneLoss& z, const float* low, const float* high, int count,
                      float* out) {
  const D d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  constexpr float kRounding = 2e-4F;  // of the sums, the roots and the loss in single precision
  // Most colour: darkest, so the lower ends; least colour: the upper ends and the spread.
  // Lanes that no box fills hold anything.
  HWY_ALIGN float dark[kBoxRow * kBoxBlock], bright[kBoxRow * kBoxBlock];
  HWY_ALIGN float found[kBoxBlock];
  for (int begin = 0; begin < count; begin += kBoxBlock) {
    const int n = HWY_MIN(kBoxBlock, count - begin);
    for (int i = 0; i < n; ++i) {
      SumRows(t, high + (begin + i) * kBoxBands, dark + i);
      SumRows(t, low + (begin + i) * kBoxBands, bright + i);
    }
    for (int i = 0; i < n; i += lanes) {
      V sum = hn::Zero(d);
      for (int g = 0; g < kBoxGroups; ++g) {
        const int at = g * kBoxChannels * kBoxBlock + i;
        sum = hn::MulAdd(K(t.weight[g]), GroupLoss(t, z, dark + at, bright + at), sum);
      }
      hn::StoreU(hn::Max(hn::Sub(sum, K(kRounding)), hn::Zero(d)), d, found + i);
    }
    for (int i = 0; i < n; ++i) out[begin + i] = found[i];
  }
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
