#include "formulate/light_side.h"

#include <algorithm>

#include "formulate/evenness.h"

namespace strandline {

double too_dark(const ChoiceInput& in, const Candidate& c, const std::vector<int>& zones) {
  const Constants k;
  const double ratio = in.domain.settings[static_cast<size_t>(c.setting)].setting.ratio;
  const Spectrum load = in.domain.sets[static_cast<size_t>(c.set)].load(c.shares, ratio);
  const std::vector<float> single(load.begin(), load.end());
  double sum = 0, weight = 0;
  const std::vector<double> minutes = minutes_on(in, c, zones);
  for (size_t i = 0; i < zones.size(); ++i) {
    const SearchZone& zone = in.zones[static_cast<size_t>(zones[i])];
    const auto seen = colours(in.table(c.setting, zones[i], minutes[i]), single.data());
    const auto dark = std::count_if(seen.begin(), seen.end(), [&](const ScenarioColour& s) {
      return level_of_lightness(s.lab.l) < zone.target->level - k.level_tolerance;
    });
    sum += zone.weight * static_cast<double>(dark) / static_cast<double>(seen.size());
    weight += zone.weight;
  }
  return weight > 0 ? sum / weight : 0;
}

Choice on_the_light_side(const ChoiceInput& in, const Choice& best) {
  const Constants k;
  Choice choice = best;
  bool changed = false;
  for (Chosen& bowl : choice.bowls) {
    const double now = too_dark(in, bowl.best, bowl.zones);
    if (now < k.too_dark_from) continue;
    const Candidate* lighter = nullptr;
    for (const Candidate& c : bowl.list)
      if ((!lighter || c.objective < lighter->objective) && too_dark(in, c, bowl.zones) <= now / 2) lighter = &c;
    if (!lighter) return {};
    choice.objective += lighter->objective - bowl.best.objective;
    bowl.best = *lighter;
    bowl.others = other_formulas(in, bowl.list, bowl.best);
    changed = true;
  }
  if (!changed) return {};
  choice.objective -= choice.uneven;
  choice.uneven = unevenness(in, choice);
  choice.objective += choice.uneven;
  return choice;
}

}  // namespace strandline
