// clang-format off: the order of these includes is Highway's.
#include "predict/kernel.h"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "engine/src/predict/kernel.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include "engine/src/predict/kernel-inl.h"
// clang-format on

#if HWY_ONCE
#include "strandline/optics.h"

namespace strandline {

HWY_EXPORT(MeanLosses);
HWY_EXPORT(MeanDeltaE);
HWY_EXPORT(Colours);

namespace {

KernelConstants make_constants() {
  KernelConstants k{};
  const CurveCubes& curve = curve_cubes();
  k.terms = curve.terms;
  for (int j = 0; j < curve.terms; ++j)
    k.s[j] = static_cast<float>(curve.s[j]), k.t[j] = static_cast<float>(curve.t[j]);
  k.e_inf = static_cast<float>(curve.e_inf);
  k.c_star = static_cast<float>(curve.c_star);
  const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  for (int b = 0; b < kBands; ++b) {
    k.x[b] = static_cast<float>(w.x[b] / w.white.x);
    k.y[b] = static_cast<float>(w.y[b] / w.white.y);
    k.z[b] = static_cast<float>(w.z[b] / w.white.z);
  }
  return k;
}

}  // namespace

const KernelConstants& kernel_constants() {
  static const KernelConstants k = make_constants();
  return k;
}

void mean_losses(const ZoneTable& zone, const ZoneLoss& loss, const float* loads, int count, float* out) {
  HWY_DYNAMIC_DISPATCH(MeanLosses)(kernel_constants(), zone, loss, loads, count, out);
}

void mean_delta_e_2000(const ZoneTable& zone, const Lab& target, const float* loads, int count, float* out) {
  HWY_DYNAMIC_DISPATCH(MeanDeltaE)(kernel_constants(), zone, target, loads, count, out);
}

std::vector<ScenarioColour> colours(const ZoneTable& zone, const float* load) {
  std::vector<float> l(zone.stride), a(zone.stride), b(zone.stride), contrast(zone.stride);
  HWY_DYNAMIC_DISPATCH(Colours)(kernel_constants(), zone, load, l.data(), a.data(), b.data(), contrast.data());
  std::vector<ScenarioColour> all(zone.scenarios);
  for (int s = 0; s < zone.scenarios; ++s) all[s] = {{l[s], a[s], b[s]}, contrast[s]};
  return all;
}

const char* kernel_target() {
  // The best (lowest bit) of the compiled targets that this processor supports.
  const auto both = hwy::SupportedTargets() & HWY_TARGETS;
  return hwy::TargetName(both & -both);
}

}  // namespace strandline
#endif
