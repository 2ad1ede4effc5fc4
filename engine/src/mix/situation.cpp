#include "mix/situation.h"

#include <algorithm>

#include "mix/habits.h"
#include "mix/on_hair.h"
#include "predict/steps.h"
#include "predict/view.h"

namespace strandline {
namespace {

ColourOrigin origin_after(ColourOrigin now, ProductClass cls, FibreKind kind) {
  switch (cls) {
    case ProductClass::lightener:
      return kind == FibreKind::white ? now : ColourOrigin::lightened;
    case ProductClass::permanent:
    case ProductClass::high_lift:
    case ProductClass::demi:
      return ColourOrigin::tinted;
    case ProductClass::direct:
      return ColourOrigin::direct;
    default:
      return now;
  }
}

void read_again(Span& span, const ZoneDraws& zone, const Constants& constants, const BowlChemistry& bowl) {
  const ProductClass cls = bowl.cls;
  // A pre-treatment without peroxide is one that takes minerals off.
  if (cls == ProductClass::pre_treatment && bowl.peroxide_percent == 0)
    std::erase_if(span.services, [](const Service& s) { return s.kind == ServiceKind::minerals; });
  const ZoneView now = view(zone.nominal, zone.kinds, constants);
  for (size_t p = 0; p < span.populations.size(); ++p) {
    Population& own = span.populations[p];
    const Named named = name_colour(now.populations[p]);
    if (!own.natural_level && own.origin == ColourOrigin::natural && own.kind == FibreKind::pigmented)
      own.natural_level = own.level;
    own.level.value = std::clamp(named.level, level_lowest, level_highest);
    own.tone = named.tone;
    own.measured.reset();
    own.origin = origin_after(own.origin, cls, own.kind);
    span.porosity.value = std::max(span.porosity.value, zone.nominal.fibres[p].porosity);
    if (own.kind == FibreKind::white) span.resistance = zone.nominal.fibres[p].resistance;
  }
}

}  // namespace

Situation at_start(const Head& head, int scenarios) { return {head, draw(head, scenarios), {}}; }

Result<Situation> after(Situation now, const Step& step, const Shelf& shelf) {
  const auto ready = prepared({step}, shelf, now.draws);
  if (!ready) return tl::unexpected(ready.error());
  size_t index = 0;
  for (Area& area : now.head.areas)
    for (Span& span : area.spans) {
      ZoneDraws& zone = now.draws.zones[index++];
      if (std::find(step.zones.begin(), step.zones.end(), zone.id) == step.zones.end()) continue;
      apply(*ready, zone, now.draws);
      read_again(span, zone, now.draws.nominal, ready->front().bowl);
    }
  now.done.push_back(step);
  return now;
}

Situation with_scenarios(const Situation& now, const std::vector<size_t>& scenarios) {
  Situation some{now.head, {now.draws.nominal, {}, now.draws.name_doubt, now.draws.zones}, now.done};
  for (size_t s : scenarios) some.draws.constants.push_back(now.draws.constants[s]);
  for (size_t z = 0; z < some.draws.zones.size(); ++z) {
    some.draws.zones[z].scenarios.clear();
    for (size_t s : scenarios) some.draws.zones[z].scenarios.push_back(now.draws.zones[z].scenarios[s]);
  }
  return some;
}

std::vector<SearchZone> search_zones(const Situation& now, const std::vector<Target>& targets,
                                     const FormulaPolicy& policy) {
  std::vector<SearchZone> all;
  const std::vector<ZoneRef> refs = zones(now.head);
  for (size_t i = 0; i < refs.size(); ++i)
    for (const Target& t : targets) {
      if (t.zone != refs[i].id || t.leave) continue;
      const ZoneDraws& zone = now.draws.zones[i];
      SearchZone z;
      z.area = refs[i].area;
      z.span = refs[i].span;
      z.draws = &zone;
      z.target = &t;
      z.price = zone_loss(t, policy.covered_contrast_levels);
      z.weight = t.weight;
      z.white = white_share(zone);
      z.asked = asked_lift(*z.span, t);
      z.needed_percent = needed_developer_percent(*z.span, z.asked);
      if (t.blend) z.price.contrast = 0, z.asked = 0, z.needed_percent = deposit_percent();
      z.half_touch = half_touch(now.head, *z.area, *z.span);
      z.leave_loss = exact_mean_loss(zone_table(zone, now.draws), z.price, Spectrum{});
      all.push_back(z);
    }
  return all;
}

}  // namespace strandline
