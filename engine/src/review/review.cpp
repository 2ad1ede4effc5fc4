#include "strandline/review.h"

#include <algorithm>

#include "formulate/choose.h"
#include "formulate/effects.h"
#include "formulate/judge.h"
#include "formulate/planned.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "review/looks.h"
#include "review/own.h"
#include "strandline/pipeline.h"

namespace strandline {
namespace {

// What a misreading can be, by how much (common practice: half a level, ten points of white, one step of porosity).
struct Misreading {
  const char* reading;
  double by;
};
constexpr Misreading kMisreadings[] = {{"level", -0.5}, {"level", 0.5},     {"white", -0.1},
                                       {"white", 0.1},  {"porosity", -1.0}, {"porosity", 1.0}};

// The head as it would be if every reading of one kind were off; absent where there is nothing to misread.
std::optional<Head> misread(Head head, const Misreading& m) {
  bool changed = false;
  const std::string reading = m.reading;
  for (Area& area : head.areas)
    for (Span& span : area.spans) {
      if (reading == "porosity") {
        const double moved = std::clamp(span.porosity.value + m.by, 0.0, 3.0);
        changed = changed || moved != span.porosity.value;
        span.porosity.value = moved;
      }
      double white = 0, rest = 0;
      for (Population& p : span.populations) {
        (p.kind == FibreKind::white ? white : rest) += p.share.value;
        if (reading == "level" && p.kind == FibreKind::pigmented) {
          p.level.value = std::clamp(p.level.value + m.by, level_lowest, level_highest);
          if (p.origin == ColourOrigin::natural && p.natural_level) p.natural_level->value = p.level.value;
          changed = true;
        }
      }
      if (reading != "white" || !(white > 0) || !(rest > 0)) continue;
      const double moved = std::clamp(white + m.by, 0.0, 1.0);
      changed = changed || moved != white;
      for (Population& p : span.populations)
        p.share.value *= p.kind == FibreKind::white ? moved / white : (1 - moved) / rest;
    }
  if (!changed) return std::nullopt;
  return head;
}

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
    const auto list = exact_list(in, search.best({served, {}, true}), served);
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
