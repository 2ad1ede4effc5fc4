// What must hold for every colour.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "strandline/colour.h"

namespace strandline {
namespace {

// Whole thousandths, so that shrinking leads to readable numbers.
rc::Gen<double> in(double lo, double hi) {
  return rc::gen::map(rc::gen::inRange(static_cast<int>(lo * 1000), static_cast<int>(hi * 1000) + 1),
                      [](int v) { return v / 1000.0; });
}

Lab any_lab() { return {*in(0, 100), *in(-120, 120), *in(-120, 120)}; }

Spectrum any_reflectance() {
  Spectrum r;
  for (double& v : r) v = *in(0, 1);
  return r;
}

const Weights& any_weights() {
  return weights(*rc::gen::elementOf(kLights), *rc::gen::element(Observer::cie_1931_2deg, Observer::cie_1964_10deg));
}

RC_GTEST_PROP(ColourLaws, DifferencesAreSymmetricAndZeroOnlyForEquals, ()) {
  const Lab p = any_lab(), q = any_lab();
  RC_ASSERT(delta_e_2000(p, p) == 0);
  RC_ASSERT(delta_e_2000(p, q) == delta_e_2000(q, p));
  RC_ASSERT(delta_e_ab(p, q) == delta_e_ab(q, p));
  RC_ASSERT(delta_e_2000(p, q) >= 0);
  if (p.l != q.l || p.a != q.a || p.b != q.b) RC_ASSERT(delta_e_2000(p, q) > 0);
}

// S_L, S_C, S_H ≥ 1; only the stretch of a* near grey (1.5) and the rotation in strong blue raise it, never
// both.
RC_GTEST_PROP(ColourLaws, Ciede2000StaysBelowTwiceTheDistance, ()) {
  const Lab p = any_lab(), q = any_lab();
  RC_ASSERT(delta_e_2000(p, q) <= 2 * delta_e_ab(p, q) + 1e-12);
}

RC_GTEST_PROP(ColourLaws, LabAndXyzAreInverse, ()) {
  const Xyz white = any_weights().white, c{*in(0, 120), *in(0, 120), *in(0, 120)};
  const Xyz back = xyz(lab(c, white), white);
  RC_ASSERT(std::abs(back.x - c.x) < 1e-10);
  RC_ASSERT(std::abs(back.y - c.y) < 1e-10);
  RC_ASSERT(std::abs(back.z - c.z) < 1e-10);
}

RC_GTEST_PROP(ColourLaws, PolarFormAndBack, ()) {
  const Lab p = any_lab();
  const Lch polar = lch(p);
  RC_ASSERT(polar.h >= 0 && polar.h < 360 && polar.c >= 0);
  RC_ASSERT(delta_e_ab(lab(polar), p) < 1e-11);
}

RC_GTEST_PROP(ColourLaws, MoreReflectanceIsNeverDarker, ()) {
  const Weights& w = any_weights();
  const Spectrum r = any_reflectance();
  Spectrum more = r;
  const int band = *rc::gen::inRange(0, kBands);
  more[band] = std::min(1.0, r[band] + *in(0, 1));
  const Xyz before = xyz(r, w), after = xyz(more, w);
  RC_ASSERT(after.x >= before.x && after.y >= before.y && after.z >= before.z);
  RC_ASSERT(lab(more, w).l >= lab(r, w).l);
}

RC_GTEST_PROP(ColourLaws, AGreyHasNoChromaUnderAnyLight, ()) {
  const Weights& w = any_weights();
  Spectrum grey;
  grey.fill(*in(0.001, 1));
  RC_ASSERT(lch(lab(grey, w)).c < 1e-10);
}

RC_GTEST_PROP(ColourLaws, ScreenColoursStayInRange, ()) {
  const Lab p = any_lab();
  const Xyz white = any_weights().white;
  const Srgb s = srgb(xyz(p, white), white);
  for (double v : {s.r, s.g, s.b}) RC_ASSERT(v >= 0 && v <= 1);
}

}  // namespace
}  // namespace strandline
