#include "pipeline/schedule_request.h"

#include <algorithm>

#include "generated/constants.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/within.h"
#include "schedule/applying.h"

namespace strandline {
namespace {

Duration around(double minutes) { return {minutes, minutes * Constants{}.apply_relative_sd}; }

SpanKind kind_of(const Area& area, const Span& span) {
  if (touches_scalp(span)) return SpanKind::regrowth;
  return &span == &area.spans.back() && area.spans.size() > 1 && span.porosity.value > 1.5 ? SpanKind::ends
                                                                                           : SpanKind::mids;
}

// Natural hair that is to be lighter.
bool lifts(const Span& span, const Target* target) {
  return target && share_of(span, ColourOrigin::natural) > 0.5 &&
         asked_lift(span, *target) > Constants{}.lighter_beyond_doubt;
}

Application application(const Head& head, const ZoneRef& z, const PlannedBowl& bowl, const Range& range,
                        const Target* target) {
  // Minutes; by choice: a hand is not a clock, and where colour lifts at the scalp every zone there goes on between the
  // first and the basin.
  constexpr double kSlack = 5, kSlackAtScalp = 10;
  Application a;
  a.id = z.id;
  a.zone = z.id;
  a.bowl = bowl.bowl.label;
  a.area = z.area->kind;
  a.span = kind_of(*z.area, *z.span);
  a.touches_scalp = touches_scalp(*z.span);
  a.apply = around(apply_minutes(head, *z.area, *z.span));
  a.lightening = range.cls == ProductClass::lightener || range.cls == ProductClass::high_lift;
  // Woven strands and lightener off the scalp lie in wraps, taken out one by one (common practice).
  a.woven = z.area->woven.has_value();
  a.packet = !a.touches_scalp && (z.area->woven || range.cls == ProductClass::lightener);
  a.lift = !a.lightening && range.cls == ProductClass::permanent && lifts(*z.span, target);
  a.target = on(bowl, z.id)->minutes;
  a.min = std::min(range.minutes.min, a.target);
  // A lightener counts from its first touch; colour gets the time of application on top (common practice).
  const bool lightener = range.cls == ProductClass::lightener;
  a.max = std::max(range.minutes.max, a.target) + (lightener ? 0 : Constants{}.colour_extra_minutes);
  if (const RangeLimits* limits = limits_on(*z.span, range)) {
    a.max = std::max(a.target, std::min(a.max, limits->first_touch_max));
    // Half done by then: what is at the scalp of hair that lifts goes on later.
    if (limits->minutes_max < range.minutes.target)
      a.max = std::min(a.max, limits->minutes_max + a.apply.mean + (a.lift ? kSlackAtScalp : kSlack));
  }
  a.white_share = share_of(*z.span, FibreKind::white);
  a.resistance = z.span->resistance;
  a.porosity = z.span->porosity.value;
  return a;
}

// What follows the development. Between steps the hair is only made ready for the next.
std::vector<TailTask> tail(const std::vector<PlannedBowl>& bowls, const Shelf& shelf, const Next& next) {
  const Constants c;
  bool tint = false, washed_out = next.last;
  for (const PlannedBowl& b : bowls)
    if (const Range* range = find_range(shelf, b.bowl.formula.range)) {
      const bool takes_away = range->cls == ProductClass::lightener || range->cls == ProductClass::remover;
      tint = tint || range->cls != ProductClass::lightener;
      washed_out = washed_out || takes_away;
    }
  std::vector<TailTask> t;
  if (tint && next.last) t.push_back({TaskKind::emulsify, around(c.emulsify_minutes), true});
  t.push_back({TaskKind::rinse, around(c.rinse_minutes), true});
  if (washed_out) t.push_back({TaskKind::shampoo, around(c.shampoo_minutes), true});
  if (next.last) t.push_back({TaskKind::treat, around(c.treat_minutes), true});
  if (next.last || !next.on_damp_hair) t.push_back({TaskKind::dry, around(c.dry_minutes), false});
  if (next.last) t.push_back({TaskKind::photograph, around(c.photograph_minutes), false});
  return t;
}

}  // namespace

ScheduleRequest schedule_request(const Visit& visit, const std::vector<PlannedBowl>& bowls, const Next& next) {
  ScheduleRequest r;
  r.policy = visit.policy.schedule;
  r.people = visit.people;
  if (r.people.empty())
    r.people.push_back({"colourist",
                        "colourist",
                        {Skill::prepare, Skill::mix, Skill::apply, Skill::check, Skill::basin, Skill::finish},
                        1,
                        0,
                        {}});
  const std::vector<ZoneRef> all = zones(visit.head);
  std::vector<Target> targets;
  if (!visit.aims.empty())
    if (auto wished = aim(visit.head, visit.aims, visit.shelf)) targets = std::move(*wished);
  const auto target_for = [&](const std::string& zone) -> const Target* {
    const auto own = std::find_if(targets.begin(), targets.end(), [&](const Target& t) { return t.zone == zone; });
    return own == targets.end() || own->leave ? nullptr : &*own;
  };
  for (const PlannedBowl& b : bowls) {
    const Range* range = find_range(visit.shelf, b.bowl.formula.range);
    if (!range) continue;
    r.bowls.push_back({b.bowl.label, b.bowl.label, range->cls, around(Constants{}.mix_minutes), range->mix_life_min});
    for (const ZoneRef& z : all)
      if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), z.id) != b.bowl.zones.end())
        r.applications.push_back(application(visit.head, z, b, *range, target_for(z.id)));
  }
  r.tail = tail(bowls, visit.shelf, next);
  return r;
}

}  // namespace strandline
