#include "strandline/review.h"

#include <algorithm>

#include "formulate/choose.h"
#include "formulate/effects.h"
#include "formulate/judge.h"
#include "formulate/own.h"
#include "formulate/planned.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "review/looks.h"
#include "review/remake.h"
#include "strandline/misread.h"
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
      if (served)
        all.push_back(
            {zone, std::string(code(m.reading)), m.by, now, now.named.level - (*as_read)[i].second.named.level});
    }
  }
  return all;
}

bool serves(const Bowl& b, const std::string& zone) {
  return std::find(b.zones.begin(), b.zones.end(), zone) != b.zones.end();
}

// Its zones that have a wish and get no bowl of a later step.
std::vector<int> decided_by(const Bowl& bowl, const std::vector<Bowl>& all, const std::vector<SearchZone>& zones) {
  std::vector<int> own;
  for (size_t i = 0; i < zones.size(); ++i) {
    const std::string& zone = zones[i].draws->id;
    if (serves(bowl, zone) && !followed(bowl, zone, all)) own.push_back(static_cast<int>(i));
  }
  return own;
}

// One bowl against the wishes for the zones it decides, on the hair as it finds it.
void compare(const Visit& visit, const Bowl& bowl, const Found& found, const std::vector<SearchZone>& zones,
             const std::vector<int>& served, const Domain& all, const FormulateOptions& options, BowlReview& r) {
  const FormulaPolicy& policy = visit.policy.formula;
  const Situation& now = found.now;
  double weight = 0;
  std::vector<const SearchZone*> own_zones;
  for (int z : served)
    weight += zones[static_cast<size_t>(z)].weight, own_zones.push_back(&zones[static_cast<size_t>(z)]);
  const double total = grams(bowl.formula);
  const std::vector<double> longer = longer_than_told(found.step, zones, served);
  Judge judge(now, zones, served, weight, visit.shelf, policy, total, longer);
  const Own mine = own(bowl.formula, visit.shelf);
  r.objective = judge.objective(mine);
  r.effects = part_effects(bowl.formula, own_zones, longer, now.draws, visit.shelf);

  BowlSearch search(all, zones, now.draws, weight, policy, options);
  const ChoiceInput in{
      now.head,
      visit.shelf,
      policy,
      all,
      zones,
      now.draws,
      weight,
      [&](int setting, int zone, double minutes) -> const ZoneTable& { return search.table(setting, zone, minutes); },
      {},
      'A',
      {},
      options.cancelled,
      [&](const Wish& wish, const BowlSearch::Judged& plain) { return search.plainest(wish, plain); }};
  const Wish wish = bowl_wish(in, served);
  const auto list = exact_list(in, search.best(wish), served);
  if (!list.empty())
    r.best = list.front().objective, r.best_recipe = recipe_of(all, plain_bowl(in, wish, list).best);
  else
    r.notes.push_back({"no_bowl_may_serve", "", {{"bowl", bowl.label}}});
  const double wanted = list.empty() ? 0 : r.best + Constants{}.fine_within;
  r.fine = !list.empty() && r.broken.empty() && r.objective <= wanted;
  if (r.fine || list.empty() || !formulated(mine.range->cls) || mine.shares.empty()) return;
  if (auto change = smallest_change(judge, mine, std::max(wanted, r.best), options.cancelled)) {
    r.change = Bowl{bowl.label, pour(change->own, total, visit.shelf, policy), bowl.zones, bowl.step};
    r.changes = std::move(change->changes);
    r.change_objective = change->objective;
  }
}

}  // namespace

Result<Review> review(const Visit& visit, const FormulateOptions& options) {
  if (visit.bowls.empty()) return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}});
  if (visit.aims.empty()) return tl::unexpected(Problems{{"no_wish", "/aims", {}}});
  const auto targets = aim(visit.head, visit.aims, visit.shelf);
  if (!targets) return tl::unexpected(targets.error());
  const Domain all = domain(visit.shelf, visit.policy.formula);
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, options.scenarios);
  if (!found) return tl::unexpected(found.error());
  Review out;
  std::vector<Step> steps;
  for (size_t i = 0; i < bowls.size(); ++i) {
    const Bowl& bowl = bowls[i];
    const Situation& now = (*found)[i].now;
    steps.push_back((*found)[i].step);
    BowlReview r;
    r.label = bowl.label;
    r.broken = broken_rules(now.head, bowl, visit.shelf, visit.policy.formula);
    const std::vector<SearchZone> zones = search_zones(now, *targets, visit.policy.formula);
    const std::vector<int> served = decided_by(bowl, bowls, zones);
    if (!served.empty() && find_range(visit.shelf, bowl.formula.range)) {
      compare(visit, bowl, (*found)[i], zones, served, all, options, r);
    } else if (std::any_of(bowl.zones.begin(), bowl.zones.end(),
                           [&](const std::string& zone) { return followed(bowl, zone, bowls); })) {
      r.notes.push_back({"later_bowl_decides", "", {{"bowl", bowl.label}}});
    }
    out.bowls.push_back(std::move(r));
  }
  out.reactions = reactions(visit, steps);
  return out;
}

}  // namespace strandline
