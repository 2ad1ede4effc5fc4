#include "review/remake.h"

#include <algorithm>

#include "formulate/from.h"
#include "formulate/own.h"
#include "mix/pour.h"
#include "review/looks.h"
#include "strandline/pipeline.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

auto looks_after(const Visit& visit, const Situation& now, const Step& step) {
  std::vector<Step> steps = now.done;
  steps.push_back(step);
  return nominal_looks(visit.head, steps, visit.shelf);
}

}  // namespace

Shelf part_of(Shelf shelf, const Usable& usable) {
  std::erase_if(shelf.products, [&](const Product& p) { return p.cls != ProductClass::developer && !usable(p); });
  return shelf;
}

std::optional<PlannedBowl> best_bowl(const Head& head, const Situation& now, const std::vector<Target>& targets,
                                     const std::vector<std::string>& zones, const Shelf& shelf,
                                     const FormulaPolicy& policy, const FormulateOptions& options,
                                     const std::string& label) {
  std::vector<Target> own;
  for (const Target& t : targets)
    if (std::find(zones.begin(), zones.end(), t.zone) != zones.end()) own.push_back(t);
  FormulaPolicy one_bowl = policy;
  one_bowl.bowls_max = 1;
  auto plan = formulate_from({now, head, label.empty() ? 'A' : label[0], false}, own, shelf, one_bowl, options);
  if (!plan || plan->bowls.empty()) return std::nullopt;
  return std::move(plan->bowls.front());
}

Result<std::vector<Found>> found_by(const Visit& visit, const std::vector<Bowl>& bowls, const std::vector<Step>& steps,
                                    int scenarios) {
  std::vector<Found> all;
  Situation now = at_start(visit.head, scenarios);
  size_t rinsed = 0;
  for (size_t i = 0; i < bowls.size(); ++i) {
    for (; bowls[rinsed].step < bowls[i].step; ++rinsed) {
      auto then = after(std::move(now), steps[rinsed], visit.shelf);
      if (!then) return tl::unexpected(then.error());
      now = std::move(*then);
    }
    all.push_back({now, steps[i]});
  }
  return all;
}

Result<std::vector<Found>> found_by(const Visit& visit, const std::vector<Bowl>& bowls, int scenarios) {
  return found_by(visit, bowls, on_the_clock(visit), scenarios);
}

bool followed(const Bowl& bowl, const std::string& zone, const std::vector<Bowl>& all) {
  return std::any_of(all.begin(), all.end(), [&](const Bowl& b) {
    return b.step > bowl.step && std::find(b.zones.begin(), b.zones.end(), zone) != b.zones.end();
  });
}

Result<std::vector<ZoneDifference>> differences(const Visit& visit, const Found& own, const Formula& instead) {
  Step other = own.step;
  for (double& minutes : other.minutes) minutes = std::max(0.0, minutes + instead.minutes - other.formula.minutes);
  other.formula = instead;
  const auto before = looks_after(visit, own.now, own.step);
  if (!before) return tl::unexpected(before.error());
  const auto after = looks_after(visit, own.now, other);
  if (!after) return tl::unexpected(after.error());
  std::vector<ZoneDifference> all;
  for (size_t i = 0; i < before->size(); ++i) {
    const auto& [zone, looks] = (*before)[i];
    if (std::find(own.step.zones.begin(), own.step.zones.end(), zone) == own.step.zones.end()) continue;
    all.push_back({zone, looks, (*after)[i].second, delta_e_2000(looks.lab, (*after)[i].second.lab)});
  }
  return all;
}

Result<std::vector<Target>> as_it_makes(const Visit& visit, const Found& own) {
  const auto looks = looks_after(visit, own.now, own.step);
  if (!looks) return tl::unexpected(looks.error());
  std::vector<Target> wishes;
  if (!visit.aims.empty()) {
    auto wished = aim(visit.head, visit.aims, visit.shelf);
    if (!wished) return wished;
    wishes = std::move(*wished);
  }
  std::vector<Target> all;
  for (const auto& [zone, made] : *looks) {
    if (std::find(own.step.zones.begin(), own.step.zones.end(), zone) == own.step.zones.end()) continue;
    Target t;
    t.zone = zone;
    t.lab = made.lab;
    t.level = made.named.level;
    t.tone = made.named.tone;
    for (const Target& w : wishes)
      if (w.zone == zone) t.weight = w.weight;
    all.push_back(std::move(t));
  }
  return all;
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

PlannedBowl in_grams_of(const Bowl& own_bowl, PlannedBowl bowl, const Shelf& shelf, const FormulaPolicy& policy) {
  const Formula scaled = pour(own(bowl.bowl.formula, shelf), grams(own_bowl.formula), shelf, policy);
  const bool weighable = std::all_of(scaled.parts.begin(), scaled.parts.end(),
                                     [&](const Part& p) { return p.grams >= policy.part_min_g; });
  if (!weighable || !within_law_and_stock(scaled, shelf)) return bowl;
  bowl.bowl.formula = scaled;
  bowl.grams = grams(scaled);
  bowl.cost = cost(scaled, shelf);
  return bowl;
}

std::string maker_of(const Formula& formula, const Shelf& shelf) {
  const Range* range = find_range(shelf, formula.range);
  return range ? range->maker : "";
}

}  // namespace strandline
