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

// Band left of a 5 nm point inside 400–700 nm.
int band_below(int i) { return (static_cast<int>(power_nm(i)) - static_cast<int>(kFirstNm)) / 10; }

// Halfway between two bands, with one more band on either side.
bool halfway(int i) { return i % 2 == 1 && power_nm(i) > kFirstNm + kStepNm && power_nm(i) < kLastNm - kStepNm; }

// Weights at 5 nm, each given to the bands it is interpolated from. A point halfway between two bands is
// first read as their mean, then as the cubic through four bands, (−1, 9, 9, −1)/16, as far as the outer two
// can pay for it: where a weight would turn negative (beside the lines of a lamp, at the foot of z) the step
// to the cubic is shortened.
Spectrum folded(const Power& at_5nm) {
  Spectrum w{}, owed{};
  for (int i = 0; i < kPowers; ++i) {
    const double nm = std::clamp(power_nm(i), kFirstNm, kLastNm);
    const double at = (nm - kFirstNm) / kStepNm;
    const int k = std::min(static_cast<int>(at), kBands - 2);
    w[k] += (k + 1 - at) * at_5nm[i];
    w[k + 1] += (at - k) * at_5nm[i];
  }
  for (int i = 0; i < kPowers; ++i) {
    if (!halfway(i)) continue;
    owed[band_below(i) - 1] += at_5nm[i] / 16;
    owed[band_below(i) + 2] += at_5nm[i] / 16;
  }
  const auto share = [](double has, double owes) { return owes > has ? has / owes : 1; };
  const Spectrum mean = w;
  for (int i = 0; i < kPowers; ++i) {
    if (!halfway(i)) continue;
    const int k = band_below(i);
    const double step = std::min(share(mean[k - 1], owed[k - 1]), share(mean[k + 2], owed[k + 2])) * at_5nm[i] / 16;
    w[k - 1] -= step, w[k] += step, w[k + 1] += step, w[k + 2] -= step;
  }
  for (double& v : w) v = std::max(v, 0.0);  // what rounding leaves below 0 where a band paid all it had
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
  Power x, y, z;
  for (int i = 0; i < kPowers; ++i) {
    x[i] = light[i] * cmf[i][1];
    y[i] = light[i] * cmf[i][2];
    z[i] = light[i] * cmf[i][3];
  }
  Weights w{folded(x), folded(y), folded(z), {}};
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
