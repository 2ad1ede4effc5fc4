#include "mix/on_hair.h"

#include <algorithm>

#include "schedule/applying.h"

namespace strandline {

double half_touch(const Head& head, const Area& area, const Span& span) { return apply_minutes(head, area, span) / 2; }

std::vector<OnZone> on_alike(const Head& head, const Bowl& bowl, double minutes) {
  const std::vector<ZoneRef> refs = zones(head);
  std::vector<OnZone> all;
  for (const std::string& id : bowl.zones) {
    const auto z = std::find_if(refs.begin(), refs.end(), [&](const ZoneRef& r) { return r.id == id; });
    all.push_back({minutes, minutes + (z == refs.end() ? 0 : half_touch(head, *z->area, *z->span))});
  }
  return all;
}

Step step_of(const PlannedBowl& b) {
  Step step{b.bowl.formula, b.bowl.zones};
  for (const OnZone& on : b.on) step.minutes.push_back(on.middle);
  return step;
}

std::vector<Step> steps_of(const std::vector<PlannedBowl>& bowls) {
  std::vector<Step> all;
  for (const PlannedBowl& b : bowls) all.push_back(step_of(b));
  return all;
}

std::optional<OnZone> on(const PlannedBowl& b, const std::string& zone) {
  const auto own = std::find(b.bowl.zones.begin(), b.bowl.zones.end(), zone);
  if (own == b.bowl.zones.end()) return std::nullopt;
  if (b.on.empty()) return OnZone{b.bowl.formula.minutes, b.bowl.formula.minutes};
  return b.on[static_cast<size_t>(own - b.bowl.zones.begin())];
}

std::vector<double> longer_than_told(const Step& step, const std::vector<SearchZone>& zones,
                                     const std::vector<int>& served) {
  std::vector<double> all;
  for (int z : served) {
    const auto own = std::find(step.zones.begin(), step.zones.end(), zones[static_cast<size_t>(z)].draws->id);
    const bool told = step.minutes.empty() || own == step.zones.end();
    all.push_back(told ? 0 : step.minutes[static_cast<size_t>(own - step.zones.begin())] - step.formula.minutes);
  }
  return all;
}

}  // namespace strandline
