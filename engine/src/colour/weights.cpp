#include <algorithm>
#include <cmath>

#include "generated/tables.h"
#include "strandline/colour.h"

namespace strandline {
namespace {

Xyz sums(const Weights& w) {
  Xyz s{0, 0, 0};
  for (int k = 0; k < kBands; ++k) s.x += w.x[k], s.y += w.y[k], s.z += w.z[k];
  return s;
}

void scale(Spectrum& column, double factor) {
  for (double& v : column) v *= factor;
}

// Scales each column to a published white and records that white.
Weights at_white(Weights w, const Xyz& published) {
  scale(w.x, published.x / w.white.x);
  scale(w.y, published.y / w.white.y);
  scale(w.z, published.z / w.white.z);
  w.white = published;
  return w;
}

Weights make(Light light, Observer observer) {
  const Weights w = fold(power(light), observer);
  for (const auto& [l, o, x, y, z] : tables::white_points)
    if (l == static_cast<int>(light) && o == static_cast<int>(observer)) return at_white(w, {x, y, z});
  return w;
}

}  // namespace

Weights fold(const Power& light, Observer observer) {
  const auto& cmf = observer == Observer::cie_1931_2deg ? tables::cie_1931_2deg : tables::cie_1964_10deg;
  Weights w{};
  for (int i = 0; i < kPowers; ++i) {
    // Where this 5 nm point lies between two bands.
    const double at = std::clamp((power_nm(i) - kFirstNm) / kStepNm, 0.0, kBands - 1.0);
    const int k = std::min(static_cast<int>(at), kBands - 2);
    const double right = at - k, left = 1 - right;
    const auto& [nm, x, y, z] = cmf[i];
    w.x[k] += left * light[i] * x, w.x[k + 1] += right * light[i] * x;
    w.y[k] += left * light[i] * y, w.y[k + 1] += right * light[i] * y;
    w.z[k] += left * light[i] * z, w.z[k + 1] += right * light[i] * z;
  }
  const double to_100 = 100 / sums(w).y;
  scale(w.x, to_100), scale(w.y, to_100), scale(w.z, to_100);
  w.white = sums(w);
  return w;
}

const Weights& weights(Light light, Observer observer) {
  static const auto all = [] {
    std::array<std::array<Weights, 2>, kLights.size()> t{};
    for (Light l : kLights)
      for (Observer o : {Observer::cie_1931_2deg, Observer::cie_1964_10deg})
        t[static_cast<int>(l)][static_cast<int>(o)] = make(l, o);
    return t;
  }();
  return all[static_cast<int>(light)][static_cast<int>(observer)];
}

}  // namespace strandline
