// Compiled once per processor target by kernel.cpp.
// clang-format off: the guards toggle once per target.
#if defined(STRANDLINE_KERNEL_INL) == defined(HWY_TARGET_TOGGLE)
#ifdef STRANDLINE_KERNEL_INL
#undef STRANDLINE_KERNEL_INL
#else
#define STRANDLINE_KERNEL_INL
#endif

#include "engine/src/predict/curve-inl.h"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace strandline {
namespace HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;

struct Colour {
  V l, a, b, contrast;
};

// Colour of the scenarios s … s + lanes under the load (already multiplied by each population's preference).
template <bool kContrast>
HWY_INLINE Colour Evaluate(const KernelConstants& k, const ZoneTable& zone, const float* loads_by_population, int s) {
  const D d;
  const int populations = zone.populations, stride = zone.stride;
  const V m = hn::LoadU(d, zone.blend_m.data() + s);
  // D = M·R + 0.01(1 − M) and R = 1/e − c*, so 1/D = e/(M + rest·e).
  const V black = hn::NegMulAdd(K(0.01f), m, K(0.01f));
  const V rest = hn::NegMulAdd(m, K(k.c_star), black);
  const V inverse_m = hn::Div(K(1.0f), m);
  V x = hn::Zero(d), y = x, z = x, white_y = x, pigmented_y = x, white_share = x, pigmented_share = x;
  for (int b = 0; b < kBands; ++b) {
    V sum = hn::Zero(d);
    for (int p = 0; p < populations; ++p) {
      const V u = hn::LoadU(d, zone.uptake.data() + p * stride + s);
      const V share = hn::LoadU(d, zone.share.data() + p * stride + s);
      const V base = hn::LoadU(d, zone.base.data() + (p * kBands + b) * stride + s);
      const V e = CurveE(k, hn::MulAdd(u, K(loads_by_population[p * kBands + b]), base));
      const V den = hn::MulAdd(rest, e, m);
      if (kContrast) {
        const V both = hn::Div(share, hn::Mul(den, e));
        sum = hn::MulAdd(hn::Mul(both, e), e, sum);
        const V r = hn::NegMulAdd(share, K(k.c_star), hn::Mul(both, den));  // share·R
        if (zone.white[p])
          white_y = hn::MulAdd(K(k.y[b]), r, white_y);
        else
          pigmented_y = hn::MulAdd(K(k.y[b]), r, pigmented_y);
      } else {
        sum = hn::Add(sum, hn::Div(hn::Mul(share, e), den));
      }
    }
    const V r = hn::Mul(hn::Sub(hn::Div(K(1.0f), sum), black), inverse_m);
    x = hn::MulAdd(K(k.x[b]), r, x);
    y = hn::MulAdd(K(k.y[b]), r, y);
    z = hn::MulAdd(K(k.z[b]), r, z);
  }
  const V fx = F(x), fy = F(y), fz = F(z);
  Colour c;
  c.l = hn::MulSub(K(116.0f), fy, K(16.0f));
  c.a = hn::Mul(K(500.0f), hn::Sub(fx, fy));
  c.b = hn::Mul(K(200.0f), hn::Sub(fy, fz));
  c.contrast = hn::Zero(d);
  if (kContrast) {
    for (int p = 0; p < populations; ++p) {
      const V share = hn::LoadU(d, zone.share.data() + p * stride + s);
      if (zone.white[p])
        white_share = hn::Add(white_share, share);
      else
        pigmented_share = hn::Add(pigmented_share, share);
    }
    const V least = K(1e-6f);
    const V white = F(hn::Div(white_y, hn::Max(white_share, least)));
    const V pigmented = F(hn::Div(pigmented_y, hn::Max(pigmented_share, least)));
    const V contrast = hn::Mul(K(116.0f), hn::Abs(hn::Sub(white, pigmented)));
    // A kind that is hardly there contrasts with nothing.
    const auto there = hn::And(hn::Gt(white_share, K(0.01f)), hn::Gt(pigmented_share, K(0.01f)));
    c.contrast = hn::IfThenElseZero(there, contrast);
  }
  return c;
}

HWY_INLINE V Loss(const ZoneLoss& z, const Colour& c) {
  const V dl = hn::Sub(c.l, K(static_cast<float>(z.target.l)));
  const V da = hn::Sub(c.a, K(static_cast<float>(z.target.a)));
  const V db = hn::Sub(c.b, K(static_cast<float>(z.target.b)));
  const V ax = K(static_cast<float>(z.axis.a)), bx = K(static_cast<float>(z.axis.b));
  const V along = hn::MulAdd(da, ax, hn::Mul(db, bx));
  const V across = hn::MulSub(da, bx, hn::Mul(db, ax));
  auto hinge = [](V v, double up, double down) {
    return hn::Max(hn::Mul(K(static_cast<float>(up)), v), hn::Mul(K(static_cast<float>(-down)), v));
  };
  V loss = hinge(dl, z.light, z.dark);
  loss = hn::Add(loss, hinge(along, z.warm, z.cool));
  loss = hn::Add(loss, hinge(across, z.red, z.green));
  const V beyond = hn::Max(hn::Sub(c.contrast, K(static_cast<float>(z.contrast_free))), hn::Zero(D()));
  return hn::MulAdd(K(static_cast<float>(z.contrast)), beyond, loss);
}

HWY_INLINE V Square(V v) { return hn::Mul(v, v); }

// Angle of (x, y) in radians, 0 where both are 0.
HWY_INLINE V Angle(V y, V x) {
  const D d;
  const V ax = hn::Abs(x), ay = hn::Abs(y);
  const V small = hn::Min(ax, ay), large = hn::Max(hn::Max(ax, ay), K(1e-20f));
  V r = hn::Atan(d, hn::Div(small, large));
  r = hn::IfThenElse(hn::Gt(ay, ax), hn::Sub(K(1.57079632679f), r), r);
  r = hn::IfThenElse(hn::Lt(x, hn::Zero(d)), hn::Sub(K(3.14159265359f), r), r);
  return hn::CopySign(r, y);
}

// G of CIEDE2000 from the mean chroma.
HWY_INLINE V StretchG(V chroma) {
  const V c2 = Square(chroma), c7 = hn::Mul(hn::Mul(Square(c2), c2), chroma);
  return hn::NegMulAdd(K(0.5f), hn::Sqrt(hn::Div(c7, hn::Add(c7, K(6103515625.0f)))), K(0.5f));
}

// CIEDE2000 (ISO/CIE 11664-6) of each lane to the target.
HWY_INLINE V DeltaE(const Lab& t, const Colour& c) {
  const D d;
  const V tl = K(static_cast<float>(t.l)), ta = K(static_cast<float>(t.a)), tb = K(static_cast<float>(t.b));
  const V c1 = hn::Sqrt(hn::MulAdd(ta, ta, Square(tb))), c2 = hn::Sqrt(hn::MulAdd(c.a, c.a, Square(c.b)));
  const V g1 = hn::Add(K(1.0f), StretchG(hn::Mul(K(0.5f), hn::Add(c1, c2))));
  const V a1 = hn::Mul(g1, ta), a2 = hn::Mul(g1, c.a);
  const V p1 = hn::Sqrt(hn::MulAdd(a1, a1, Square(tb))), p2 = hn::Sqrt(hn::MulAdd(a2, a2, Square(c.b)));
  const V h1 = Angle(tb, a1), h2 = Angle(c.b, a2);
  const V pi = K(3.14159265359f), turn = K(6.28318530718f);
  V dh = hn::Sub(h2, h1);
  dh = hn::IfThenElse(hn::Gt(dh, pi), hn::Sub(dh, turn), dh);
  dh = hn::IfThenElse(hn::Lt(dh, hn::Neg(pi)), hn::Add(dh, turn), dh);
  const V mean_h = hn::MulAdd(K(0.5f), dh, h1);  // on the shorter arc; cosines do not mind a full turn
  const V dl = hn::Sub(c.l, tl), dc = hn::Sub(p2, p1);
  const V dhh = hn::Mul(hn::Mul(K(2.0f), hn::Sqrt(hn::Mul(p1, p2))), hn::Sin(d, hn::Mul(K(0.5f), dh)));
  const V ml = hn::Mul(K(0.5f), hn::Add(c.l, tl)), mc = hn::Mul(K(0.5f), hn::Add(p1, p2));
  auto cosine = [&](float k, float shift_degrees) {
    return hn::Cos(d, hn::MulAdd(K(k), mean_h, K(shift_degrees * 0.0174532925199f)));
  };
  V tt = hn::NegMulAdd(K(0.17f), cosine(1, -30), K(1.0f));
  tt = hn::MulAdd(K(0.24f), cosine(2, 0), tt);
  tt = hn::MulAdd(K(0.32f), cosine(3, 6), tt);
  tt = hn::NegMulAdd(K(0.20f), cosine(4, -63), tt);
  const V l50 = Square(hn::Sub(ml, K(50.0f)));
  const V sl = hn::MulAdd(K(0.015f), hn::Div(l50, hn::Sqrt(hn::Add(K(20.0f), l50))), K(1.0f));
  const V sc = hn::MulAdd(K(0.045f), mc, K(1.0f));
  const V sh = hn::MulAdd(hn::Mul(K(0.015f), mc), tt, K(1.0f));
  // Distance of the mean hue from 275°, on the circle.
  V off = hn::Sub(mean_h, K(-85.0f * 0.0174532925199f));
  off = hn::Sub(off, hn::Mul(turn, hn::Round(hn::Div(off, turn))));
  const V bump = hn::Exp(d, hn::Neg(Square(hn::Div(off, K(25.0f * 0.0174532925199f)))));
  const V theta2 = hn::Mul(K(2.0f * 30.0f * 0.0174532925199f), bump);
  const V mc2 = Square(mc), mc7 = hn::Mul(hn::Mul(Square(mc2), mc2), mc);
  const V rc = hn::Mul(K(2.0f), hn::Sqrt(hn::Div(mc7, hn::Add(mc7, K(6103515625.0f)))));
  const V rt = hn::Neg(hn::Mul(hn::Sin(d, theta2), rc));
  const V x = hn::Div(dc, sc), y = hn::Div(dhh, sh), l = hn::Div(dl, sl);
  const V sum = hn::MulAdd(l, l, hn::MulAdd(x, x, hn::MulAdd(y, y, hn::Mul(rt, hn::Mul(x, y)))));
  return hn::Sqrt(hn::Max(sum, hn::Zero(d)));
}

HWY_INLINE void Prefer(const ZoneTable& zone, const float* load, float* out) {
  for (int p = 0; p < zone.populations; ++p)
    for (int b = 0; b < kBands; ++b) out[p * kBands + b] = load[b] * zone.prefer[p * kBands + b];
}

// Mean of `value(colour)` over the scenarios of each load. Padding lanes repeat scenarios and are masked out.
template <bool kContrast, class Value>
HWY_INLINE void MeanOver(const KernelConstants& k, const ZoneTable& zone, const float* loads, int count, float* out,
                         Value value) {
  const D d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  std::vector<float> own(zone.populations * kBands);
  for (int i = 0; i < count; ++i) {
    Prefer(zone, loads + i * kBands, own.data());
    V sum = hn::Zero(d);
    for (int s = 0; s < zone.scenarios; s += lanes) {
      const V v = value(Evaluate<kContrast>(k, zone, own.data(), s));
      const int left = zone.scenarios - s;
      sum = hn::Add(sum, left >= lanes ? v : hn::IfThenElseZero(hn::FirstN(d, left), v));
    }
    out[i] = hn::GetLane(hn::SumOfLanes(d, sum)) / static_cast<float>(zone.scenarios);
  }
}

void MeanLosses(const KernelConstants& k, const ZoneTable& zone, const ZoneLoss& loss, const float* loads, int count,
                float* out) {
  auto value = [&](const Colour& c) HWY_ATTR { return Loss(loss, c); };
  if (zone.has_contrast)
    MeanOver<true>(k, zone, loads, count, out, value);
  else
    MeanOver<false>(k, zone, loads, count, out, value);
}

void MeanDeltaE(const KernelConstants& k, const ZoneTable& zone, const Lab& target, const float* loads, int count,
                float* out) {
  auto value = [&](const Colour& c) HWY_ATTR { return DeltaE(target, c); };
  MeanOver<false>(k, zone, loads, count, out, value);
}

void Colours(const KernelConstants& k, const ZoneTable& zone, const float* load, float* l, float* a, float* b,
             float* contrast) {
  const D d;
  const int lanes = static_cast<int>(hn::Lanes(d));
  std::vector<float> own(zone.populations * kBands);
  Prefer(zone, load, own.data());
  for (int s = 0; s < zone.scenarios; s += lanes) {
    const Colour c =
        zone.has_contrast ? Evaluate<true>(k, zone, own.data(), s) : Evaluate<false>(k, zone, own.data(), s);
    hn::StoreU(c.l, d, l + s);
    hn::StoreU(c.a, d, a + s);
    hn::StoreU(c.b, d, b + s);
    hn::StoreU(c.contrast, d, contrast + s);
  }
}

}  // namespace HWY_NAMESPACE
}  // namespace strandline
HWY_AFTER_NAMESPACE();
#endif
