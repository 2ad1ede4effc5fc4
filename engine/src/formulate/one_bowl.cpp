#include "formulate/one_bowl.h"

#include <algorithm>
#include <cmath>

namespace strandline {
namespace {

const SearchZone& zone(const ChoiceInput& in, int z) { return in.zones[static_cast<size_t>(z)]; }

bool same_wish(const Target& a, const Target& b) {
  constexpr double kSameLevel = 0.25;  // half of what a colourist calls on
  return a.tone == b.tone && a.second_tone == b.second_tone && a.blend == b.blend &&
         std::abs(a.level - b.level) <= kSameLevel;
}

bool may_share(const ChoiceInput& in, const Chosen& a, const Chosen& b) {
  const auto cls = [&](const Chosen& c) { return in.domain.sets[static_cast<size_t>(c.best.set)].range().cls; };
  if (cls(a) != cls(b)) return false;
  for (int x : a.zones)
    for (int y : b.zones)
      if (apart_by_white(zone(in, x), zone(in, y)) || !same_wish(*zone(in, x).target, *zone(in, y).target) ||
          zone(in, x).area->woven.has_value() != zone(in, y).area->woven.has_value())
        return false;
  return true;
}

std::optional<Chosen> shared(const ChoiceInput& in, const Chosen& a, const Chosen& b) {
  std::vector<int> zones = a.zones;
  zones.insert(zones.end(), b.zones.begin(), b.zones.end());
  std::vector<double> at_best;
  for (const Chosen* own : {&a, &b}) exact_objective(in, own->certified, own->zones, nullptr, &at_best);
  const double apart = a.certified.objective + b.certified.objective;
  Chosen both;
  both.zones = zones;
  both.list = plain_list_within(in, bowl_wish(in, zones), apart + Constants{}.price_bowl, at_best);
  const auto no_more_tubes = [&](const Candidate& c) {
    return tubes(c.shares) <= std::max(tubes(a.best.shares), tubes(b.best.shares));
  };
  std::erase_if(both.list, [&](const Candidate& c) { return !no_more_tubes(c); });
  if (both.list.empty()) return std::nullopt;
  both.best = both.certified = both.list.front();
  both.certified.objective = apart;
  both.joined = true;
  both.others = other_formulas(in, both.list, both.best);
  return both;
}

}  // namespace

void share_bowls(const ChoiceInput& in, Choice& choice) {
  for (size_t a = 0; a < choice.bowls.size(); ++a)
    for (size_t b = choice.bowls.size(); b-- > a + 1;) {
      if (in.cancelled() || !may_share(in, choice.bowls[a], choice.bowls[b])) continue;
      auto both = shared(in, choice.bowls[a], choice.bowls[b]);
      if (!both) continue;
      choice.objective += both->best.objective - choice.bowls[a].best.objective - choice.bowls[b].best.objective;
      choice.bowls[a] = std::move(*both);
      choice.bowls.erase(choice.bowls.begin() + static_cast<std::ptrdiff_t>(b));
    }
}

}  // namespace strandline
