// What an interval of X, Y, Z says about the loss; compiled once per processor target. Lanes are whatever is bounded.
// clang-format off: the guards toggle once per target.
#if defined(STRANDLINE_ENDS_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_ENDS_INL
#undef STRANDLINE_ENDS_INL
#else
#define STRANDLINE_ENDS_INL
#endif

#include "engine/src/predict/curve-inl.h"
#include "strandline/loss.h"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

template <class DF>
struct Ends {
  hn::Vec<DF> low, high;
};

template <class DF>
HWY_INLINE hn::Vec<DF> Same(DF d, double x) {
  return hn::Set(d, static_cast<float>(x));
}

// Ends of the cube root of a mean, and how much less the mean of the cube roots may be.
template <class DF>
struct Root {
  hn::Vec<DF> low, high;
  hn::Vec<DF> lost;  // the mean of the roots is at least low·(1 − lost)
};

template <class DF>
HWY_INLINE hn::Vec<DF> RootOf(DF d, hn::Vec<DF> x) {
  return CbrtOf(d, hn::Max(x, Same(d, 1e-9)));
}

// Of a mean between these ends: `spread` of what is averaged, at most, and no member further off than `furthest`
// spreads.
template <class DF>
HWY_INLINE Root<DF> RootsOf(DF d, hn::Vec<DF> x_low, hn::Vec<DF> x_high, hn::Vec<DF> spread, float furthest) {
  const auto one = Same(d, 1);
  x_low = hn::Max(x_low, Same(d, 1e-5));  // no curve comes near it; its chords drawn on may
  const auto ratio = hn::Div(spread, x_low);
  // A thousandth less than the root: RootOf takes nothing below 1e-9.
  const auto nearest = RootOf(d, hn::NegMulAdd(Same(d, static_cast<double>(furthest)), ratio, one));
  const auto y = hn::Max(hn::Sub(nearest, Same(d, 1e-3)), hn::Zero(d));
  const auto q = hn::MulAdd(y, hn::Add(y, one), one);
  const auto factor = hn::Div(hn::Add(y, Same(d, 2)), hn::Mul(hn::Mul(Same(d, 3), q), q));
  const auto lost = hn::MulAdd(hn::Mul(ratio, ratio), factor, Same(d, 2e-5));
  return {RootOf(d, x_low), RootOf(d, x_high), hn::Min(lost, one)};
}

// Ends of the mean of the roots.
template <class DF>
HWY_INLINE Ends<DF> MeanRoot(const Root<DF>& x) {
  return {hn::NegMulAdd(x.low, x.lost, x.low), x.high};
}

// Least of max(up·v, −down·v) over v in [low, high].
template <class DF>
HWY_INLINE hn::Vec<DF> LeastHinge(DF d, const Ends<DF>& v, double up, double down) {
  return hn::Max(hn::Max(hn::Mul(Same(d, up), v.low), hn::Mul(Same(d, -down), v.high)), hn::Zero(d));
}

// u·a + v·b over the box of a and b.
template <class DF>
HWY_INLINE Ends<DF> Along(DF d, const Ends<DF>& a, const Ends<DF>& b, double u, double v) {
  const auto uu = Same(d, u), vv = Same(d, v);
  const auto ua1 = hn::Mul(uu, a.low), ua2 = hn::Mul(uu, a.high), vb1 = hn::Mul(vv, b.low), vb2 = hn::Mul(vv, b.high);
  return {hn::Add(hn::Min(ua1, ua2), hn::Min(vb1, vb2)), hn::Add(hn::Max(ua1, ua2), hn::Max(vb1, vb2))};
}

// Least loss, contrast left out, where f(Y) and the differences f(X) − f(Y), f(Y) − f(Z) lie between these ends.
template <class DF>
HWY_INLINE hn::Vec<DF> LeastLoss(DF d, const ZoneLoss& z, const Ends<DF>& fy, const Ends<DF>& xy, const Ends<DF>& yz) {
  auto shifted = [&](const Ends<DF>& f, double scale, double offset) HWY_ATTR {
    return Ends<DF>{hn::MulSub(Same(d, scale), f.low, Same(d, offset)),
                    hn::MulSub(Same(d, scale), f.high, Same(d, offset))};
  };
  const Ends<DF> l = shifted(fy, 116, 16 + z.target.l);
  const Ends<DF> a = shifted(xy, 500, z.target.a), b = shifted(yz, 200, z.target.b);
  auto loss = LeastHinge(d, l, z.light, z.dark);
  loss = hn::Add(loss, LeastHinge(d, Along(d, a, b, z.axis.a, z.axis.b), z.warm, z.cool));
  return hn::Add(loss, LeastHinge(d, Along(d, a, b, z.axis.b, -z.axis.a), z.red, z.green));
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
