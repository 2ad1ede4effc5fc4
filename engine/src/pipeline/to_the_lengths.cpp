#include "pipeline/to_the_lengths.h"

#include <algorithm>

#include "formulate/reasons.h"

namespace strandline {
namespace {

const ZonePlan* plan_of(const std::vector<ZonePlan>& all, const std::string& zone) {
  const auto at = std::find_if(all.begin(), all.end(), [&](const ZonePlan& p) { return p.result.zone == zone; });
  return at == all.end() ? nullptr : &*at;
}

Target* wish_of(std::vector<Target>& all, const std::string& zone) {
  const auto at = std::find_if(all.begin(), all.end(), [&](const Target& t) { return t.zone == zone; });
  return at == all.end() || at->leave ? nullptr : &*at;
}

// Lengths that were to be lighter than they can come out.
bool cannot_follow(const ZonePlan& p) {
  return p.result.landing && !p.reachable && p.result.landing->level_error < -Constants{}.level_tolerance;
}

}  // namespace

std::vector<Target> to_the_lengths(const Visit& visit, const VisitPlan& out) {
  if (std::any_of(out.routes.begin(), out.routes.end(), [](const Route& r) { return r.recommended; })) return {};
  std::vector<Target> wishes = out.targets;
  bool any = false;
  const std::vector<ZoneRef> refs = zones(visit.head);
  for (const Band& b : out.plan.bands) {
    if (b.wished >= b.levels - Constants{}.band_from_levels) continue;  // on purpose
    for (size_t i = 0; i + 1 < refs.size(); ++i) {
      const ZoneRef &root = refs[i], &lengths = refs[i + 1];
      if (root.area != lengths.area || !touches_scalp(*root.span) || b.lighter != root.id || b.darker != lengths.id)
        continue;
      const ZonePlan* after = plan_of(out.plan.zones, lengths.id);
      Target* wish = wish_of(wishes, root.id);
      if (!after || !wish || wish->blend || !cannot_follow(*after)) continue;
      const ZoneColour& there = after->result.planned;
      wish->lab = there.lab, wish->level = there.named.level, wish->tone = there.named.tone, wish->second_tone.reset();
      any = true;
    }
  }
  return any ? wishes : std::vector<Target>{};
}

void offer_first(VisitPlan& out, Plan instead) {
  Alternative as_wished;
  as_wished.axis = "as_wished";
  as_wished.bowls = out.plan.bowls, as_wished.zones = out.plan.zones, as_wished.bands = out.plan.bands;
  as_wished.objective = out.plan.report.objective;
  as_wished.grams = out.plan.grams, as_wished.cost = out.plan.cost;
  const double band = out.plan.bands.front().levels;
  out.plan = std::move(instead);
  out.plan.alternatives.insert(out.plan.alternatives.begin(), std::move(as_wished));
  out.plan.why.insert(out.plan.why.begin(), {"regrowth_to_lengths", "", {{"levels", figure(band)}}});
}

}  // namespace strandline
