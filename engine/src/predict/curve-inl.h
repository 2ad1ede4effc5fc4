// The curve of reflectance and CIELAB's root, compiled once per processor target wherever they are needed.
// clang-format off: the guards toggle once per target.
#ifndef STRANDLINE_KERNEL_CONSTANTS
#define STRANDLINE_KERNEL_CONSTANTS
#include "predict/kernel.h"

namespace strandline {

// The curve and the white-normalised weights in single precision.
struct KernelConstants {
  int terms;
  float s[8], t[8], e_inf, c_star;
  float x[kBands], y[kBands], z[kBands];
};
const KernelConstants& kernel_constants();

}  // namespace strandline
#endif

#if defined(STRANDLINE_CURVE_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_CURVE_INL
#undef STRANDLINE_CURVE_INL
#else
#define STRANDLINE_CURVE_INL
#endif

#include <hwy/contrib/math/math-inl.h>
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

using D = hn::ScalableTag<float>;
using V = hn::Vec<D>;

HWY_INLINE V K(float x) { return hn::Set(D(), x); }

// Cube root of x > 0: exponent divided by three, then two Halley steps (relative error about 1e-7).
template <class DF>
HWY_INLINE hn::Vec<DF> CbrtOf(DF d, hn::Vec<DF> x) {
  const hn::RebindToSigned<DF> di;
  const auto bits = hn::ConvertTo(d, hn::BitCast(di, x));
  const auto guess = hn::MulAdd(bits, hn::Set(d, 1.0f / 3.0f), hn::Set(d, 709921077.0f));
  hn::Vec<DF> y = hn::BitCast(d, hn::ConvertTo(di, guess));
  for (int i = 0; i < 2; ++i) {
    const auto y3 = hn::Mul(hn::Mul(y, y), y);
    y = hn::Mul(y, hn::Div(hn::Add(y3, hn::Add(x, x)), hn::Add(hn::Add(y3, y3), x)));
  }
  return y;
}

// CIE f(t): cube root, or its tangent line below (6/29)³.
HWY_INLINE V F(V t) {
  const V line = hn::MulAdd(t, K(static_cast<float>(841.0 / 108.0)), K(static_cast<float>(4.0 / 29.0)));
  return hn::IfThenElse(hn::Gt(t, K(static_cast<float>(216.0 / 24389.0))), CbrtOf(D(), hn::Max(t, K(1e-9f))), line);
}

// 1/(R + c*) at optical depth τ.
HWY_INLINE V CurveE(const KernelConstants& k, V tau) {
  V e = K(k.e_inf);
  for (int j = 0; j < k.terms; ++j) {
    const V left = hn::Max(hn::NegMulAdd(K(k.t[j]), tau, K(k.s[j])), hn::Zero(D()));
    e = hn::NegMulAdd(hn::Mul(left, left), left, e);
  }
  return e;
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
