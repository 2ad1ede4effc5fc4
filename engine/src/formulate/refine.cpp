#include "formulate/refine.h"

#include <algorithm>

#include "formulate/effects.h"
#include "formulate/own.h"
#include "formulate/planned.h"
#include "formulate/reasons.h"

namespace strandline {
namespace {

constexpr size_t kShadesMost = 4;
constexpr double kWorthAStep = 1e-4;  // levels

bool is_colour(const Part& part, const Shelf& shelf) {
  const Product* p = find_product(shelf, part.product);
  return p && p->cls != ProductClass::developer;
}

std::vector<size_t> colour_parts(const Formula& f, const Shelf& shelf) {
  std::vector<size_t> all;
  for (size_t i = 0; i < f.parts.size(); ++i)
    if (is_colour(f.parts[i], shelf)) all.push_back(i);
  return all;
}

// One step away: grams from one part to another, or some of the largest part for one more shade.
std::vector<Formula> steps_from(const Formula& f, const ChoiceInput& in) {
  std::vector<Formula> all;
  const std::vector<size_t> parts = colour_parts(f, in.shelf);
  for (size_t from : parts)
    for (size_t to : parts)
      for (double grams = in.policy.gram_step; grams <= 8 * in.policy.gram_step; grams *= 2) {
        if (from == to || f.parts[from].grams - grams < in.policy.part_min_g) continue;
        all.push_back(f);
        all.back().parts[from].grams -= grams;
        all.back().parts[to].grams += grams;
      }
  if (parts.size() >= kShadesMost) return all;
  const size_t largest = *std::max_element(parts.begin(), parts.end(),
                                           [&](size_t a, size_t b) { return f.parts[a].grams < f.parts[b].grams; });
  const double some = in.policy.part_min_g;
  if (f.parts[largest].grams < 2 * some) return all;
  for (const Product& p : in.shelf.products) {
    const bool held = std::any_of(f.parts.begin(), f.parts.end(), [&](const Part& q) { return q.product == p.id; });
    if (held || p.range != f.range || !has_colour(p) || p.stock_g < some || p.cls == ProductClass::filler) continue;
    all.push_back(f);
    all.back().parts[largest].grams -= some;
    all.back().parts.insert(all.back().parts.begin() + static_cast<long>(parts.size()), {p.id, some});
  }
  return all;
}

}  // namespace

std::optional<Refined> refine(const ChoiceInput& in, const Situation& now, const PlannedBowl& certified) {
  std::vector<int> served;
  std::vector<const SearchZone*> zones;
  for (size_t i = 0; i < in.zones.size(); ++i)
    if (std::find(certified.bowl.zones.begin(), certified.bowl.zones.end(), in.zones[i].draws->id) !=
        certified.bowl.zones.end())
      served.push_back(static_cast<int>(i)), zones.push_back(&in.zones[i]);
  Formula f = certified.bowl.formula;
  if (served.empty() || colour_parts(f, in.shelf).empty()) return std::nullopt;
  const std::vector<double> longer = longer_than_told(step_of(certified), in.zones, served);
  Judge judge(now, in.zones, served, in.total_weight, in.shelf, in.policy, certified.grams, longer);
  const double at_first = judge.objective(own(f, in.shelf));
  double best = at_first;
  while (!in.cancelled()) {
    const Formula* better = nullptr;
    const std::vector<Formula> all = steps_from(f, in);
    for (const Formula& step : all) {
      const Own o = own(step, in.shelf);
      if (!judge.allowed(o) || !within_law_and_stock(step, in.shelf)) continue;
      if (const double j = judge.objective(o); j < best - kWorthAStep) best = j, better = &step;
    }
    if (!better) break;
    f = *better;
  }
  if (best >= at_first - kWorthAStep) return std::nullopt;
  Refined r;
  r.objective = certified.rounded_objective - (at_first - best);
  r.fourth = colour_parts(f, in.shelf).size() == kShadesMost;
  std::stable_sort(f.parts.begin(), f.parts.end(), [&](const Part& a, const Part& b) {
    const bool colour_a = is_colour(a, in.shelf), colour_b = is_colour(b, in.shelf);
    return colour_a != colour_b ? colour_a : colour_a && a.grams > b.grams;
  });
  r.bowl = certified;
  r.bowl.bowl.formula = f;
  r.bowl.recipe.shares.clear();  // no eighths any more
  r.bowl.objective = r.bowl.rounded_objective = r.objective;
  r.bowl.cost = cost(f, in.shelf);
  r.bowl.effects = part_effects(f, zones, longer, now.draws, in.shelf);
  if (const Range* range = find_range(in.shelf, f.range))
    if (auto limits = law::check_limits(composition(f, in.shelf), use_of(range->cls))) r.bowl.limits = *limits;
  r.bowl.why = {{r.fourth ? "fourth_shade_nearer" : "grams_nearer", "", {{"levels", figure(at_first - best, 2)}}}};
  return r;
}

Result<std::optional<Alternative>> closer(const ChoiceInput& in, const Situation& now,
                                          const std::vector<Target>& targets, Plan& plan,
                                          const PredictOptions& options) {
  Alternative way;
  way.axis = "closer";
  way.objective = plan.report.objective;
  for (PlannedBowl& b : plan.bowls) {
    const auto refined = refine(in, now, b);
    if (refined) {
      b.refined_objective = refined->objective;
      way.objective -= b.rounded_objective - refined->objective;
    }
    way.bowls.push_back(refined ? refined->bowl : b);
    way.grams += way.bowls.back().grams;
    way.cost += way.bowls.back().cost;
  }
  if (plan.report.objective - way.objective < Constants{}.closer_least_gain) return std::nullopt;
  auto zones = planned_zones(in, targets, way.bowls, options);
  if (!zones) return tl::unexpected(zones.error());
  way.zones = std::move(*zones);
  return way;
}

}  // namespace strandline
