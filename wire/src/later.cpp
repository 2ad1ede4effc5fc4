#include "strandline/wire/later.h"

#include "strandline/levels.h"
#include "strandline/wire/later_fields.h"

namespace strandline::wire {

namespace {

FadeMomentView view(const FadeMoment& m) {
  return {m.week, m.washes, m.lab, under_lights(m.reflectance), m.named.level, m.named.tone, m.level, m.delta_e_2000};
}

RegrowthView view(const RegrowthLine& l) {
  const Named natural = name_colour(l.natural), coloured = name_colour(l.coloured);
  return {l.area,
          l.zone,
          l.natural,
          l.coloured,
          under_lights(l.natural_reflectance),
          under_lights(l.coloured_reflectance),
          natural.level,
          coloured.level,
          natural.tone,
          coloured.tone,
          l.contrast_levels,
          l.shows,
          l.weeks};
}

}  // namespace

FadeAnswer view(const Fading& fading) {
  FadeAnswer out{fading.habit.washes_per_week, fading.habit.light_hours_per_week, {}};
  for (const FadeZone& z : fading.zones) {
    FadeZoneView zone{z.zone, {}, z.visible_week};
    for (const FadeMoment& m : z.moments) zone.moments.push_back(view(m));
    out.zones.push_back(std::move(zone));
  }
  return out;
}

GrowAnswer view(const Growth& growth) {
  GrowAnswer out;
  for (const RegrowthLine& l : growth.lines) out.lines.push_back(view(l));
  for (const RegrowthLength& l : growth.lengths) out.lengths.push_back({l.weeks, l.cm.value, l.cm.sd});
  return out;
}

Json answer_json(const FadeAnswer& a) { return with_schema(a); }
Json answer_json(const GrowAnswer& a) { return with_schema(a); }

}  // namespace strandline::wire
