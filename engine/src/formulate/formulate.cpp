#include "strandline/formulate.h"

#include <algorithm>
#include <map>

#include "formulate/choose.h"
#include "formulate/reasons.h"

namespace strandline {
namespace {

std::vector<SearchZone> search_zones(const Head& head, const Draws& draws, const std::vector<Target>& targets,
                                     const FormulaPolicy& policy) {
  std::vector<SearchZone> all;
  const std::vector<ZoneRef> refs = zones(head);
  for (size_t i = 0; i < refs.size(); ++i)
    for (const Target& t : targets) {
      if (t.zone != refs[i].id || t.leave) continue;
      SearchZone z;
      z.area = refs[i].area;
      z.span = refs[i].span;
      z.draws = &draws.zones[i];
      z.target = &t;
      z.price = zone_loss(t, policy.covered_contrast_levels);
      z.weight = t.weight;
      z.leave_loss = exact_mean_loss(zone_table(draws.zones[i], draws), z.price, Spectrum{});
      all.push_back(z);
    }
  return all;
}

Recipe recipe(const Domain& domain, const Candidate& c) {
  const Setting& s = domain.settings[static_cast<size_t>(c.setting)].setting;
  Recipe r{s.range->id, {}, s.developer_percent, s.ratio, s.minutes};
  for (int i = 0; i < 3; ++i)
    if (c.shares.eighths[i] > 0)
      r.shares.push_back(
          {domain.sets[static_cast<size_t>(c.set)].products()[static_cast<size_t>(c.shares.product[i])]->id,
           c.shares.eighths[i]});
  std::sort(r.shares.begin(), r.shares.end(), [](const Share& a, const Share& b) {
    return a.eighths != b.eighths ? a.eighths > b.eighths : a.product < b.product;
  });
  return r;
}

PlannedBowl planned(const ChoiceInput& in, const Chosen& chosen, char label) {
  PlannedBowl b;
  b.bowl.label = std::string(1, label);
  for (int z : chosen.zones) b.bowl.zones.push_back(in.zones[static_cast<size_t>(z)].draws->id);
  const Domain::OneSetting& one = in.domain.settings[static_cast<size_t>(chosen.best.setting)];
  const RecipeSet& set = in.domain.sets[static_cast<size_t>(chosen.best.set)];
  b.bowl.formula =
      pour(set, chosen.best.shares, one.setting, mix_grams(in.head, b.bowl.zones, in.policy), in.shelf, in.policy);
  b.recipe = recipe(in.domain, chosen.best);
  b.objective = chosen.best.objective;
  if (chosen.has_runner_up) {
    b.runner_up = recipe(in.domain, chosen.runner_up);
    b.runner_up_objective = chosen.runner_up.objective;
  }
  b.grams = grams(b.bowl.formula);
  b.cost = cost(b.bowl.formula, in.shelf);
  // The same objective with the grams as they will be weighed.
  if (const auto real = chemistry(b.bowl.formula, in.shelf)) {
    const Constants k;
    b.on_head_peroxide_percent = real->peroxide_percent;
    b.rounded_objective = k.price_money * b.cost;
    for (int z : chosen.zones) {
      const SearchZone& zone = in.zones[static_cast<size_t>(z)];
      const ZoneTable table = zone_table(*zone.draws, *real, in.draws);
      b.rounded_objective += zone.weight / in.total_weight *
                             (exact_mean_loss(table, zone.price, real->load) + k.price_exposure * table.exposure);
    }
  }
  if (auto limits = law::check_limits(composition(b.bowl.formula, in.shelf), use_of(one.setting.range->cls)))
    b.limits = *limits;
  return b;
}

// Products of which the bowls together need more than there is.
std::vector<std::string> short_of(const std::vector<PlannedBowl>& bowls, const Shelf& shelf) {
  std::map<std::string, double> need;
  for (const PlannedBowl& b : bowls)
    for (const Part& p : b.bowl.formula.parts) need[p.product] += p.grams;
  std::vector<std::string> all;
  for (const auto& [id, g] : need)
    if (const Product* p = find_product(shelf, id); p && g > p->stock_g) all.push_back(id);
  return all;
}

void tell(Plan& plan, const ChoiceInput& in, const Choice& choice, const Prediction& prediction) {
  for (PlannedBowl& b : plan.bowls) {
    std::vector<const SearchZone*> own;
    for (const SearchZone& z : in.zones)
      if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), z.draws->id) != b.bowl.zones.end()) own.push_back(&z);
    b.why = reasons_for(b, own, prediction.zones, in.shelf);
    plan.grams += b.grams;
    plan.cost += b.cost;
    if (b.limits.overall == law::Status::unknown_percentage)
      plan.notes.push_back({"percentages_unknown", "", {{"bowl", b.bowl.label}}});
  }
  for (const ZoneResult& r : prediction.zones) {
    ZonePlan z;
    z.result = r;
    for (const PlannedBowl& b : plan.bowls)
      if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), r.zone) != b.bowl.zones.end()) z.bowl = b.bowl.label;
    for (const SearchZone& s : in.zones)
      if (s.draws->id == r.zone) z.why_not = reasons_against(s, r, in.domain, in.policy);
    z.reachable = z.why_not.empty();
    plan.zones.push_back(std::move(z));
  }
  if (choice.has_fewer && plan.bowls.size() > 1)
    plan.why.push_back({"one_bowl_fewer",
                        "",
                        {{"bowls", std::to_string(plan.bowls.size() - 1)},
                         {"worse", figure(choice.fewer_objective - choice.objective, 2)}}});
  if (plan.bowls.empty()) plan.why.push_back({"leave_as_it_is", "", {}});
  plan.currency = in.shelf.currency;
}

std::vector<Step> steps_of(const std::vector<PlannedBowl>& bowls) {
  std::vector<Step> steps;
  for (const PlannedBowl& b : bowls) steps.push_back({b.bowl.formula, b.bowl.zones});
  return steps;
}

Result<Plan> formulate_once(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                            const FormulaPolicy& policy, const FormulateOptions& options) {
  const Domain all = domain(shelf, policy);
  if (all.settings.empty()) return tl::unexpected(Problems{{"no_range_usable", "/shelf", {}}});
  const Draws draws = draw(head, options.scenarios);
  const std::vector<SearchZone> zones = search_zones(head, draws, targets, policy);
  double total = 0;
  for (const SearchZone& z : zones) total += z.weight;
  const ChoiceInput in{head, shelf, policy, all, zones, draws, total > 0 ? total : 1};

  const std::vector<ZoneGroup> groups = group_zones(zones);
  std::vector<Enumeration> by_kind;
  Plan plan;
  for (const bool scalp : {true, false}) {
    std::vector<ZoneGroup> own;
    std::copy_if(groups.begin(), groups.end(), std::back_inserter(own),
                 [&](const ZoneGroup& g) { return g.at_scalp == scalp; });
    by_kind.push_back(enumerate(all, zones, own, draws, in.total_weight, policy, options));
    plan.report.recipes += by_kind.back().recipes;
    plan.report.evaluations += by_kind.back().evaluations;
    if (by_kind.back().cancelled) plan.report.stopped = "cancelled";
  }
  const Choice choice = choose(in, groups, by_kind);
  for (size_t i = 0; i < choice.bowls.size(); ++i)
    plan.bowls.push_back(planned(in, choice.bowls[i], static_cast<char>('A' + i)));
  plan.report.objective = choice.objective;
  plan.report.bound = plan.report.stopped == "exhausted" ? choice.objective : 0;
  plan.report.gap = plan.report.objective - plan.report.bound;

  PredictOptions predict_options;
  predict_options.parallel = options.parallel;
  predict_options.covered_contrast_levels = policy.covered_contrast_levels;
  auto prediction = predict(head, steps_of(plan.bowls), shelf, targets, predict_options);
  if (!prediction) return tl::unexpected(prediction.error());
  tell(plan, in, choice, *prediction);
  return plan;
}

}  // namespace

Result<Plan> formulate(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                       const FormulaPolicy& policy, const FormulateOptions& options) {
  Shelf left = shelf;
  Problems left_out;
  constexpr int kTriesWithoutStock = 4;
  for (int attempt = 0;; ++attempt) {
    auto plan = formulate_once(head, targets, left, policy, options);
    if (!plan) return plan;
    const std::vector<std::string> missing = short_of(plan->bowls, left);
    plan->notes.insert(plan->notes.end(), left_out.begin(), left_out.end());
    if (missing.empty()) return plan;
    if (attempt == kTriesWithoutStock) {
      for (const std::string& id : missing)
        plan->notes.push_back({"stock_short", "/shelf", {{"product", find_product(left, id)->name}}});
      return plan;
    }
    for (Product& p : left.products)
      if (std::find(missing.begin(), missing.end(), p.id) != missing.end()) {
        left_out.push_back({"left_out_for_stock", "/shelf", {{"product", p.name}, {"grams", figure(p.stock_g, 0)}}});
        p.stock_g = 0;
      }
  }
}

}  // namespace strandline
