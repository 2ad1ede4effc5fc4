#include <algorithm>
#include <cmath>

#include "predict/kernel.h"
#include "predict/steps.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

constexpr int kLanesMost = 16;  // single precision on the widest processor

ZoneTable sized(const ZoneDraws& zone) {
  ZoneTable t;
  t.scenarios = static_cast<int>(zone.scenarios.size());
  t.stride = (t.scenarios + kLanesMost - 1) / kLanesMost * kLanesMost;
  t.populations = static_cast<int>(zone.kinds.size());
  const size_t p = zone.kinds.size(), n = zone.scenarios.size();
  t.exact_base.resize(p * kBands * n);
  t.exact_uptake.resize(p * n);
  t.exact_share.resize(p * n);
  t.exact_prefer.assign(p * kBands, 1);
  t.exact_m.resize(n);
  for (FibreKind k : zone.kinds) t.white.push_back(k == FibreKind::white);
  t.has_contrast = std::count(t.white.begin(), t.white.end(), true) % static_cast<long>(p) != 0;
  return t;
}

// Single-precision copies; padding lanes repeat the last scenario.
void fill_lanes(ZoneTable& t) {
  auto padded = [&](const std::vector<double>& from, std::vector<float>& to) {
    const size_t n = t.exact_m.size(), rows = from.size() / n, stride = static_cast<size_t>(t.stride);
    to.resize(rows * stride);
    for (size_t r = 0; r < rows; ++r)
      for (size_t s = 0; s < stride; ++s) to[r * stride + s] = static_cast<float>(from[r * n + std::min(s, n - 1)]);
  };
  padded(t.exact_base, t.base);
  padded(t.exact_uptake, t.uptake);
  padded(t.exact_share, t.share);
  padded(t.exact_m, t.blend_m);
  t.prefer.assign(t.exact_prefer.begin(), t.exact_prefer.end());
}

// Every scenario's fibres, `change` applied first.
template <class Change>
void fill(ZoneTable& t, const ZoneDraws& zone, const Draws& draws, Change change) {
  const size_t n = zone.scenarios.size();
  for (size_t s = 0; s < n; ++s) {
    const Constants& c = draws.constants[s];
    const Pigments pigment = pigments(c);
    t.exact_m[s] = c.blend_m;
    for (size_t p = 0; p < zone.kinds.size(); ++p) {
      double taken = 0;
      const Spectrum tau = optical_depth(change(zone.scenarios[s].fibres[p], c, &taken), pigment);
      for (int b = 0; b < kBands; ++b) t.exact_base[(p * kBands + static_cast<size_t>(b)) * n + s] = tau[b];
      t.exact_uptake[p * n + s] = taken;
      t.exact_share[p * n + s] = zone.scenarios[s].shares[p];
    }
  }
  fill_lanes(t);
}

}  // namespace

ZoneTable zone_table(const ZoneDraws& zone, const BowlChemistry& bowl, const Draws& draws) {
  ZoneTable t = sized(zone);
  for (size_t p = 0; p < zone.kinds.size(); ++p) {
    const Spectrum prefer = selectivity(zone.nominal.fibres[p], draws.nominal);
    std::copy(prefer.begin(), prefer.end(), t.exact_prefer.begin() + static_cast<long>(p) * kBands);
  }
  const Constants* last = nullptr;
  Treatment now;
  fill(t, zone, draws, [&](const Fibre& f, const Constants& c, double* taken) {
    if (&c != last) {
      now = treatment(bowl, zone.from_cm, zone.to_cm, on_zone(c, zone));
      last = &c;
      t.exposure += now.exposure / static_cast<double>(zone.scenarios.size());
    }
    // Water on the hair scales the load; the table carries it with the uptake so that loads stay the recipe's own.
    *taken = uptake(f, now, c) * (bowl.damp_hair ? c.damp_dilution : 1);
    return lightened(f, now, c);
  });
  return t;
}

ZoneTable zone_table(const ZoneDraws& zone, const Draws& draws) {
  ZoneTable t = sized(zone);
  fill(t, zone, draws, [](const Fibre& f, const Constants&, double* taken) { return *taken = 0, f; });
  return t;
}

double exact_mean_loss(const ZoneTable& t, const ZoneLoss& price, const Spectrum& load) {
  static const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  const size_t n = static_cast<size_t>(t.scenarios), populations = static_cast<size_t>(t.populations);
  double sum = 0;
  std::vector<double> shares(populations), r(populations);
  for (size_t s = 0; s < n; ++s) {
    Spectrum together;
    double y[2] = {0, 0}, share[2] = {0, 0};
    for (size_t p = 0; p < populations; ++p) {
      shares[p] = t.exact_share[p * n + s];
      share[t.white[p]] += shares[p];
    }
    for (int b = 0; b < kBands; ++b) {
      for (size_t p = 0; p < populations; ++p) {
        const size_t row = p * kBands + static_cast<size_t>(b);
        r[p] = reflectance(t.exact_base[row * n + s] + t.exact_uptake[p * n + s] * t.exact_prefer[row] * load[b]);
        y[t.white[p]] += shares[p] * w.y[b] * r[p];
      }
      together[b] = blend(shares, r, t.exact_m[s]);
    }
    constexpr double kHardlyThere = 0.01;
    double contrast = 0;
    if (share[0] > kHardlyThere && share[1] > kHardlyThere) {
      auto lightness = [&](int kind) { return lab(Xyz{0, y[kind] / share[kind], 0}, w.white).l; };
      contrast = std::abs(lightness(1) - lightness(0));
    }
    sum += loss(price, lab(together, w), contrast);
  }
  return sum / static_cast<double>(n);
}

}  // namespace strandline
