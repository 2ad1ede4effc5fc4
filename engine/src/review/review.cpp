#include "strandline/review.h"

#include <algorithm>

#include "formulate/choose.h"
#include "formulate/effects.h"
#include "formulate/judge.h"
#include "formulate/misread.h"
#include "formulate/own.h"
#include "formulate/planned.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "review/looks.h"
#include "strandline/pipeline.h"

namespace strandline {
namespace {

std::vector<Reaction> reactions(const Visit& visit, const std::vector<Step>& steps) {
  std::vector<Reaction> all;
  const auto as_read = nominal_looks(visit.head, steps, visit.shelf);
  if (!as_read) return all;
  for (const Misreading& m : kMisreadings) {
    const auto head = misread(visit.head, m);
    if (!head) continue;
    const auto looks = nominal_looks(*head, steps, visit.shelf);
    if (!looks) continue;
    for (size_t i = 0; i < looks->size(); ++i) {
      const auto& [zone, now] = (*looks)[i];
      const bool served = std::any_of(steps.begin(), steps.end(), [&, &z = zone](const Step& s) {
        return std::find(s.zones.begin(), s.zones.end(), z) != s.zones.end();
      });
      if (served) all.push_back({zone, m.reading, m.by, now, now.named.level - (*as_read)[i].second.named.level});
    }
  }
  return all;
}

std::vector<int> served_by(const Bowl& bowl, const std::vector<SearchZone>& zones) {
  std::vector<int> all;
  for (size_t i = 0; i < zones.size(); ++i)
    if (std::find(bowl.zones.begin(), bowl.zones.end(), zones[i].draws->id) != bowl.zones.end())
      all.push_back(static_cast<int>(i));
  return all;
}

}  // namespace

Result<Review> review(const Visit& visit, const FormulateOptions& options) {
  if (visit.bowls.empty()) return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}});
  if (visit.aims.empty()) return tl::unexpected(Problems{{"no_wish", "/aims", {}}});
  const auto targets = aim(visit.head, visit.aims, visit.shelf);
  if (!targets) return tl::unexpected(targets.error());
  const FormulaPolicy& policy = visit.policy.formula;
  const Situation now = at_start(visit.head, options.scenarios);
  const std::vector<SearchZone> zones = search_zones(now, *targets, policy);
  const Domain all = domain(visit.shelf, policy);
  Review out;
  std::vector<Step> steps;
  for (const Bowl& bowl : visit.bowls) {
    steps.push_back({bowl.formula, bowl.zones});
    BowlReview r;
    r.label = bowl.label;
    r.broken = broken_rules(visit.head, bowl, visit.shelf, visit.policy.formula);
    const std::vector<int> served = served_by(bowl, zones);
    const Range* range = find_range(visit.shelf, bowl.formula.range);
    if (served.empty() || !range) {
      out.bowls.push_back(std::move(r));
      continue;
    }
    double weight = 0;
    std::vector<const SearchZone*> own_zones;
    for (int z : served)
      weight += zones[static_cast<size_t>(z)].weight, own_zones.push_back(&zones[static_cast<size_t>(z)]);
    double grams = 0;
    for (const Part& p : bowl.formula.parts) grams += p.grams;
    Judge judge(now, zones, served, weight, visit.shelf, policy, grams);
    const Own mine = own(bowl.formula, visit.shelf);
    r.objective = judge.objective(mine);
    r.effects = part_effects(bowl.formula, own_zones, now.draws, visit.shelf);

    BowlSearch search(all, zones, now.draws, weight, policy, options);
    const ChoiceInput in{
        visit.head, visit.shelf,
        policy,     all,
        zones,      now.draws,
        weight,     [&](int setting, int zone) -> const ZoneTable& { return search.table(setting, zone); }};
    const auto list = exact_list(in, search.best(bowl_wish(in, served)), served);
    if (!list.empty()) {
      r.best = list.front().objective;
      r.best_recipe = recipe_of(all, list.front());
    }
    const double wanted = list.empty() ? r.objective : r.best + Constants{}.fine_within;
    r.fine = r.broken.empty() && r.objective <= wanted;
    if (!r.fine && formulated(range->cls) && !mine.shares.empty())
      if (auto change = smallest_change(judge, mine, std::max(wanted, r.best))) {
        r.change = Bowl{bowl.label, pour(change->own, grams, visit.shelf, policy), bowl.zones};
        r.changes = std::move(change->changes);
        r.change_objective = change->objective;
      }
    out.bowls.push_back(std::move(r));
  }
  out.reactions = reactions(visit, steps);
  return out;
}

}  // namespace strandline
