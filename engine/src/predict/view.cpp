#include "predict/view.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "strandline/optics.h"

namespace strandline {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

double luminance(const Spectrum& r) {
  double y = 0;
  for (int b = 0; b < kBands; ++b) y += daylight().y[b] * r[b];
  return y;
}

double lightness(double y) { return lab(Xyz{0, y, 0}, daylight().white).l; }

// |L* of the white fibres' mean luminance − L* of the pigmented ones'|.
double contrast(const ZoneState& s, const std::vector<FibreKind>& kinds, const std::vector<Spectrum>& r) {
  constexpr double kHardlyThere = 0.01;
  double share[2] = {0, 0}, y[2] = {0, 0};
  for (size_t p = 0; p < kinds.size(); ++p) {
    const int white = kinds[p] == FibreKind::white;
    share[white] += s.shares[p];
    y[white] += s.shares[p] * luminance(r[p]);
  }
  if (share[0] <= kHardlyThere || share[1] <= kHardlyThere) return 0;
  return std::abs(lightness(y[1] / share[1]) - lightness(y[0] / share[0]));
}

Spread spread(std::vector<double> v) {
  auto at = [&](double q) {
    const size_t i = static_cast<size_t>(q * static_cast<double>(v.size() - 1) + 0.5);
    std::nth_element(v.begin(), v.begin() + static_cast<long>(i), v.end());
    return v[i];
  };
  if (v.empty()) return {};
  const double p10 = at(0.1), p50 = at(0.5), p90 = at(0.9);
  return {p10, p50, p90};
}

}  // namespace

ZoneView view(const ZoneState& state, const std::vector<FibreKind>& kinds, const Constants& constants) {
  const Pigments p = pigments(constants);
  ZoneView v;
  for (const Fibre& f : state.fibres) {
    v.reflectances.push_back(reflectance(optical_depth(f, p)));
    v.populations.push_back(lab(v.reflectances.back(), daylight()));
  }
  v.reflectance = blend(state.shares, v.reflectances, constants.blend_m);
  v.lab = lab(v.reflectance, daylight());
  v.contrast = contrast(state, kinds, v.reflectances);
  return v;
}

double shown_level(const ZoneState& state, const std::vector<FibreKind>& kinds, const Constants& constants) {
  const ZoneView v = view(state, kinds, constants);
  double lightness = 0, share = 0;
  for (size_t p = 0; p < kinds.size(); ++p)
    if (kinds[p] == FibreKind::pigmented) lightness += state.shares[p] * v.populations[p].l, share += state.shares[p];
  return std::clamp(level_of_lightness(share > 0 ? lightness / share : v.lab.l), level_lowest, level_highest);
}

ZoneColour zone_colour(const ZoneDraws& zone, const Draws& draws, std::vector<ZoneView>* scenario_views) {
  const ZoneView now = view(zone.nominal, zone.kinds, draws.nominal);
  ZoneColour c;
  c.zone = zone.id;
  c.reflectance = now.reflectance;
  c.lab = now.lab;
  c.named = name_colour(now.lab);

  std::vector<ZoneView> views(zone.scenarios.size());
  for (size_t s = 0; s < views.size(); ++s) views[s] = view(zone.scenarios[s], zone.kinds, draws.constants[s]);
  auto levels = [&](auto&& lightness_of) {
    std::vector<double> v(views.size());
    std::transform(views.begin(), views.end(), v.begin(),
                   [&](const ZoneView& x) { return level_of_lightness(lightness_of(x)); });
    return spread(std::move(v));
  };
  c.level = levels([](const ZoneView& v) { return v.lab.l; });
  for (size_t p = 0; p < zone.names.size(); ++p) {
    PopulationColour one;
    one.name = zone.names[p];
    one.kind = zone.kinds[p];
    one.share = zone.nominal.shares[p];
    one.reflectance = now.reflectances[p];
    one.lab = now.populations[p];
    one.named = name_colour(one.lab);
    one.level = levels([p](const ZoneView& v) { return v.populations[p].l; });
    c.populations.push_back(std::move(one));
  }
  if (!views.empty()) {
    std::vector<size_t> order(views.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(), [&](size_t x, size_t y) { return views[x].lab.l < views[y].lab.l; });
    for (double q : {0.1, 0.5, 0.9})
      c.fan.push_back(views[order[static_cast<size_t>(q * static_cast<double>(order.size() - 1) + 0.5)]].lab);
  }
  c.contrast_levels = now.contrast * levels_per_lightness(std::clamp(c.named.level, level_lowest, level_highest));
  for (size_t p = 0; p < zone.nominal.fibres.size(); ++p)
    c.porosity = p == 0 ? zone.nominal.fibres[p].porosity : std::max(c.porosity, zone.nominal.fibres[p].porosity);
  constexpr double kSpentPorosity = 3;
  c.condition_left = std::max(0.0, 1 - c.porosity / kSpentPorosity);
  if (scenario_views) *scenario_views = std::move(views);
  return c;
}

}  // namespace strandline
