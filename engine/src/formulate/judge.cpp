#include "formulate/judge.h"

#include <algorithm>
#include <cmath>

#include "formulate/reasons.h"
#include "mix/domain.h"
#include "mix/first_steps.h"
#include "mix/on_hair.h"
#include "mix/pour.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

// The setting a poured formula amounts to: its bottles' mean strength and its ratio.
Setting as_setting(const Formula& f, const Range& range, const Shelf& shelf) {
  double colour = 0, developer = 0, peroxide = 0;
  for (const Part& part : f.parts) {
    const Product* p = find_product(shelf, part.product);
    if (!p) continue;
    if (p->cls == ProductClass::developer)
      developer += part.grams, peroxide += part.grams * p->peroxide_percent;
    else
      colour += part.grams;
  }
  return {&range, developer > 0 ? peroxide / developer : 0, colour > 0 ? developer / colour : 0, f.minutes};
}

}  // namespace

Problems range_rules(const Setting& s, const std::string& label) {
  Problems notes;
  constexpr double kRatioSlack = 0.06, kPercentSlack = 0.05;  // what half grams do to a ratio
  auto near = [](const std::vector<double>& all, double v, double slack) {
    return std::any_of(all.begin(), all.end(), [&](double x) { return std::abs(x - v) <= slack * std::max(1.0, x); });
  };
  const Range& r = *s.range;
  if (!r.developer_percents.empty() && !r.ratios.empty() && !near(r.ratios, s.ratio, kRatioSlack))
    notes.push_back({"ratio_not_of_range", "", {{"bowl", label}, {"ratio", figure(s.ratio, 2)}}});
  const double most =
      r.developer_percents.empty() ? 0 : *std::max_element(r.developer_percents.begin(), r.developer_percents.end());
  const bool blend = r.bottle_blends && s.developer_percent <= most + kPercentSlack;
  if (!r.developer_percents.empty() && !blend && !near(r.developer_percents, s.developer_percent, kPercentSlack))
    notes.push_back({"developer_not_of_range", "", {{"bowl", label}, {"percent", figure(s.developer_percent)}}});
  if (s.minutes > r.minutes.max)
    notes.push_back({"longer_than_range_allows",
                     "",
                     {{"bowl", label}, {"minutes", figure(s.minutes, 0)}, {"max", figure(r.minutes.max, 0)}}});
  return notes;
}

Problems broken_rules(const Head& head, const Bowl& bowl, const Shelf& shelf, const FormulaPolicy& policy) {
  Problems notes;
  const Range* range = find_range(shelf, bowl.formula.range);
  if (!range) return notes;
  const Setting s = as_setting(bowl.formula, *range, shelf);
  notes = range_rules(s, bowl.label);
  if (const auto limits = law::check_limits(composition(bowl.formula, shelf), use_of(range->cls))) {
    if (limits->overall == law::Status::over) notes.push_back({"over_legal_limit", "", {{"bowl", bowl.label}}});
    if (limits->overall == law::Status::not_permitted_use)
      notes.push_back({"not_permitted_use", "", {{"bowl", bowl.label}}});
  }
  bool colour = false;
  for (const Part& part : bowl.formula.parts)
    if (const Product* p = find_product(shelf, part.product); p && p->cls != ProductClass::developer) {
      colour = colour || part.grams > 0;
      if (p->range != range->id && find_range(shelf, p->range))
        notes.push_back({"two_ranges_in_one_bowl", "", {{"bowl", bowl.label}, {"product", p->name}}});
    }
  if (!colour) notes.push_back({"developer_alone", "", {{"bowl", bowl.label}}});
  for (const Part& part : bowl.formula.parts)
    if (const Product* p = find_product(shelf, part.product); p && p->stock_g < part.grams)
      notes.push_back({"stock_short", "", {{"bowl", bowl.label}, {"product", p->name}}});
  const bool told =
      std::any_of(notes.begin(), notes.end(), [](const Problem& p) { return p.code == "over_legal_limit"; });
  if (!told && s.developer_percent * s.ratio / (1 + s.ratio) > policy.on_head_peroxide_max_percent)
    notes.push_back({"over_legal_limit", "", {{"bowl", bowl.label}}});
  for (const ZoneRef& z : zones(head)) {
    if (std::find(bowl.zones.begin(), bowl.zones.end(), z.id) == bowl.zones.end()) continue;
    const FirstStep as_first{range, {}, s.developer_percent, s.ratio, s.minutes};
    const std::string rule =
        formulated(range->cls) ? forbidden(s, *z.span, policy) : forbidden(as_first, *z.span, policy);
    if (!rule.empty()) notes.push_back({"ceiling", "", {{"bowl", bowl.label}, {"rule", rule}, {"zone", z.id}}});
  }
  return notes;
}

std::vector<ZonePlan> judged(const Situation& before, const std::vector<Target>& targets, const Prediction& prediction,
                             const std::vector<PlannedBowl>& bowls, const Shelf& shelf, const FormulaPolicy& policy) {
  const Domain all = domain_settings(shelf, policy);
  const std::vector<ZoneRef> refs = zones(before.head);
  std::vector<ZonePlan> plans;
  for (size_t i = 0; i < prediction.zones.size(); ++i) {
    ZonePlan p;
    p.result = prediction.zones[i];
    for (const PlannedBowl& b : bowls)
      if (const auto own = on(b, p.result.zone)) p.bowl = b.bowl.label, p.minutes = own->minutes;
    for (const Target& t : targets) {
      if (t.zone != p.result.zone || t.leave) continue;
      SearchZone z;
      z.area = refs[i].area;
      z.span = refs[i].span;
      z.draws = &before.draws.zones[i];
      z.target = &t;
      p.why_not = reasons_against(z, p.result, all, policy);
    }
    p.reachable = p.why_not.empty();
    plans.push_back(std::move(p));
  }
  return plans;
}

}  // namespace strandline
