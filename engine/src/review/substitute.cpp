#include <algorithm>

#include "formulate/own.h"
#include "formulate/pour.h"
#include "review/remake.h"
#include "strandline/pipeline.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

bool holds(const Formula& f, const std::string& product) {
  return std::any_of(f.parts.begin(), f.parts.end(), [&](const Part& p) { return p.product == product; });
}

// Changes of one part that leave the product out, judged against the wishes; the best.
std::optional<Edit> without_it(Judge& judge, const Own& mine, const std::string& product, const Shelf& shelf,
                               const FormulaPolicy& policy) {
  std::optional<Edit> best;
  for (Edit& e : judge.edits({mine, {}})) {
    if (holds(pour(e.own, 100, shelf, policy), product)) continue;
    e.objective = judge.objective(e.own);
    if (!best || e.objective < best->objective) best = std::move(e);
  }
  return best;
}

PlannedBowl mixed(const Bowl& bowl, const Formula& formula, double objective, const Shelf& shelf) {
  PlannedBowl b;
  b.bowl = {bowl.label, formula, bowl.zones, bowl.step};
  b.objective = objective;
  b.grams = grams(formula);
  b.cost = cost(formula, shelf);
  const Range* range = find_range(shelf, formula.range);
  if (const auto real = chemistry(formula, shelf)) b.on_head_peroxide_percent = real->peroxide_percent;
  if (range)
    if (auto limits = law::check_limits(composition(formula, shelf), use_of(range->cls))) b.limits = *limits;
  return b;
}

}  // namespace

Result<std::vector<Remade>> substitute(const Visit& visit, const std::string& product,
                                       const FormulateOptions& options) {
  if (visit.bowls.empty()) return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}});
  if (!find_product(visit.shelf, product))
    return tl::unexpected(Problems{{"unknown_product", "", {{"product", product}}}});
  const FormulaPolicy& policy = visit.policy.formula;
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, options.scenarios);
  if (!found) return tl::unexpected(found.error());
  std::vector<Remade> all;
  for (size_t b = 0; b < bowls.size(); ++b) {
    const Bowl& bowl = bowls[b];
    const Situation& now = (*found)[b];
    if (!holds(bowl.formula, product)) continue;
    // What the bowl was to give: the wish where there is one and no later bowl brings it, else what it gives.
    const bool on_the_way = std::any_of(bowl.zones.begin(), bowl.zones.end(),
                                        [&](const std::string& zone) { return followed(bowl, zone, bowls); });
    auto wish =
        visit.aims.empty() || on_the_way ? as_it_makes(visit, now, bowl) : aim(visit.head, visit.aims, visit.shelf);
    if (!wish) return tl::unexpected(wish.error());
    std::erase_if(*wish, [&](const Target& t) {
      return std::find(bowl.zones.begin(), bowl.zones.end(), t.zone) == bowl.zones.end();
    });
    const std::string maker = maker_of(bowl.formula, visit.shelf);
    Shelf others = visit.shelf;
    std::erase_if(others.products, [&](const Product& p) { return p.id == product; });
    const Shelf same_maker = part_of(others, [&](const Product& p) {
      const Range* range = find_range(visit.shelf, p.range);
      return range && range->maker == maker;
    });
    Remade r;
    r.label = bowl.label;
    std::vector<SearchZone> zones = search_zones(now, *wish, policy);
    std::vector<int> served;
    double weight = 0, total = 0;
    for (size_t i = 0; i < zones.size(); ++i) served.push_back(static_cast<int>(i)), weight += zones[i].weight;
    for (const Part& p : bowl.formula.parts) total += p.grams;
    Judge judge(now, zones, served, std::max(weight, 1e-9), same_maker, policy, total);
    const auto edit =
        zones.empty() ? std::nullopt : without_it(judge, own(bowl.formula, visit.shelf), product, visit.shelf, policy);
    auto best = best_bowl(visit.head, now, *wish, bowl.zones, same_maker, policy, options, bowl.label);
    if (edit && (!best || edit->objective <= best->objective + Constants{}.fine_within)) {
      r.bowl = mixed(bowl, pour(edit->own, total, same_maker, policy), edit->objective, visit.shelf);
      r.changes = edit->changes;
    } else {
      if (!best) {
        best = best_bowl(visit.head, now, *wish, bowl.zones, others, policy, options, bowl.label);
        if (best) r.notes.push_back({"other_maker_skin_test", "", {{"bowl", bowl.label}}});
      }
      if (best) {
        r.bowl = std::move(*best);
        r.bowl.bowl.step = bowl.step;
        r.changes.push_back({"another_bowl", "", {{"bowl", bowl.label}}});
      } else {
        r.notes.push_back({"nothing_may_replace", "", {{"bowl", bowl.label}}});
      }
    }
    if (!r.bowl.bowl.formula.parts.empty()) {
      auto moved = differences(visit, now, bowl, r.bowl.bowl.formula);
      if (!moved) return tl::unexpected(moved.error());
      r.zones = std::move(*moved);
    }
    all.push_back(std::move(r));
  }
  return all;
}

}  // namespace strandline
