#include "fade/pools.h"

#include <algorithm>
#include <cmath>

namespace strandline {
namespace {

Spectrum& pool_of(DyePools& p, ProductClass cls) {
  if (cls == ProductClass::direct) return p.direct;
  return cls == ProductClass::permanent || cls == ProductClass::high_lift ? p.permanent : p.demi;
}

Spectrum& pool_of(DyePools& p, ColourOrigin origin) {
  if (origin == ColourOrigin::direct) return p.direct;
  return origin == ColourOrigin::lightened ? p.demi : p.permanent;
}

void scale(DyePools& p, double factor) {
  for (Spectrum* s : {&p.permanent, &p.demi, &p.direct})
    for (double& v : *s) v *= factor;
}

// `before` → `after` under a bowl that leaves `keep` of the old dye; the rest of `after` is new.
void book(DyePools& p, ProductClass cls, const Fibre& before, const Fibre& after, double keep) {
  scale(p, keep);
  Spectrum& pool = pool_of(p, cls);
  for (int b = 0; b < kBands; ++b) pool[b] += std::max(0.0, after.dye[b] - keep * before.dye[b]);
}

}  // namespace

ZonePools pools_as_read(const ZoneDraws& zone, const Span& span) {
  ZonePools pools;
  auto read = [&](const std::vector<Fibre>& fibres) {
    std::vector<DyePools> all(fibres.size());
    for (size_t p = 0; p < fibres.size(); ++p) pool_of(all[p], span.populations[p].origin) = fibres[p].dye;
    return all;
  };
  pools.nominal = read(zone.nominal.fibres);
  for (const ZoneState& s : zone.scenarios) pools.scenarios.push_back(read(s.fibres));
  return pools;
}

void apply(const std::vector<ReadyStep>& steps, ZoneDraws& zone, const Draws& draws, ZonePools& pools) {
  for (const ReadyStep& step : steps) {
    const auto here = step.on(zone.id);
    if (!here) continue;
    const ZoneDraws before = zone;
    apply(*here, zone, draws);
    auto keep = [&](const Constants& c) {
      return std::exp(-treatment(*here, zone.from_cm, zone.to_cm, on_zone(c, zone)).dye_exposure);
    };
    for (size_t p = 0; p < pools.nominal.size(); ++p)
      book(pools.nominal[p], step.bowl.cls, before.nominal.fibres[p], zone.nominal.fibres[p], keep(draws.nominal));
    for (size_t s = 0; s < zone.scenarios.size(); ++s)
      for (size_t p = 0; p < pools.nominal.size(); ++p)
        book(pools.scenarios[s][p], step.bowl.cls, before.scenarios[s].fibres[p], zone.scenarios[s].fibres[p],
             keep(draws.constants[s]));
  }
}

}  // namespace strandline
