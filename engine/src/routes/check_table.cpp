#include "routes/check_table.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "formulate/choose.h"
#include "formulate/planned.h"
#include "mix/first_steps.h"
#include "predict/view.h"

namespace strandline {
namespace {

// Scenarios by the level they show, in half levels.
std::map<double, std::vector<size_t>> by_level(const ZoneDraws& zone, const Draws& draws) {
  std::map<double, std::vector<size_t>> all;
  for (size_t s = 0; s < zone.scenarios.size(); ++s) {
    all[std::round(2 * shown_level(zone.scenarios[s], zone.kinds, draws.constants[s])) / 2].push_back(s);
  }
  return all;
}

std::optional<CheckChoice> choice(const RouteTask& in, const Situation& shown, const std::vector<std::string>& names) {
  const std::vector<SearchZone> zones = search_zones(shown, in.targets, in.policy);
  std::vector<int> own;
  double total = 0;
  for (size_t i = 0; i < zones.size(); ++i)
    if (std::find(names.begin(), names.end(), zones[i].draws->id) != names.end()) {
      own.push_back(static_cast<int>(i));
      total += zones[i].weight;
    }
  if (own.empty()) return std::nullopt;
  BowlSearch search(in.domain, zones, shown.draws, total, in.policy, in.options);
  const ChoiceInput input{
      in.head,
      in.shelf,
      in.policy,
      in.domain,
      zones,
      shown.draws,
      total,
      [&](int setting, int zone, double minutes) -> const ZoneTable& { return search.table(setting, zone, minutes); }};
  const auto list = exact_list(input, search.best(bowl_wish(input, own)), own);
  if (list.empty()) return std::nullopt;
  CheckChoice c;
  c.recipe = recipe_of(in.domain, list.front());
  c.expected_loss = list.front().objective;
  return c;
}

}  // namespace

std::vector<RouteStep::IfCheckShows> check_tables(const RouteTask& in, const Situation& now, const RouteStep& first,
                                                  const std::vector<PlannedBowl>& bowls) {
  std::vector<RouteStep::IfCheckShows> tables;
  if (in.options.cancelled()) return tables;
  const std::vector<SearchZone> zones = search_zones(now, in.targets, in.policy);
  for (const PlannedBowl& b : bowls) {
    // The heaviest of its zones that the first step touched is the one to look at.
    const SearchZone* looked_at = nullptr;
    for (const SearchZone& z : zones) {
      auto serves = [&](const PlannedBowl& bowl) {
        return std::find(bowl.bowl.zones.begin(), bowl.bowl.zones.end(), z.draws->id) != bowl.bowl.zones.end();
      };
      if (serves(b) && std::any_of(first.bowls.begin(), first.bowls.end(), serves) &&
          (!looked_at || z.weight > looked_at->weight))
        looked_at = &z;
    }
    if (!looked_at || in.options.cancelled()) continue;
    // Darker than expected here, and than the wish: not done yet.
    const Constants c;
    const double far_enough =
        std::min(looked_at->target->level,
                 shown_level(looked_at->draws->nominal, looked_at->draws->kinds, now.draws.nominal)) -
        c.level_tolerance;
    const bool lightened = std::any_of(first.bowls.begin(), first.bowls.end(), [&](const PlannedBowl& step) {
      const Range* range = find_range(in.shelf, step.recipe.range);
      return range && range->cls == ProductClass::lightener && among(step.bowl.zones, looked_at->draws->id);
    });
    RouteStep::IfCheckShows table{b.bowl.label, looked_at->draws->id, {}};
    for (const auto& [level, scenarios] : by_level(*looked_at->draws, now.draws)) {
      const double likelihood = static_cast<double>(scenarios.size()) / static_cast<double>(now.draws.constants.size());
      if (likelihood < c.check_level_seldom || in.options.cancelled()) continue;
      if (lightened && level < far_enough) {
        table.choices.push_back({level, likelihood, true, {}, 0});
        continue;
      }
      if (auto mix = choice(in, with_scenarios(now, scenarios), b.bowl.zones)) {
        mix->level = level;
        mix->likelihood = likelihood;
        table.choices.push_back(std::move(*mix));
      }
    }
    tables.push_back(std::move(table));
  }
  return tables;
}

}  // namespace strandline
