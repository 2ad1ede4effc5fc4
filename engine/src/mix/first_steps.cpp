#include "mix/first_steps.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "mix/habits.h"
#include "mix/pour.h"

namespace strandline {
namespace {

ProductClass product_class(Opening o) {
  switch (o) {
    case Opening::chelate:
    case Opening::soften:
      return ProductClass::pre_treatment;
    case Opening::fill:
      return ProductClass::filler;
    case Opening::remove:
      return ProductClass::remover;
    default:
      return ProductClass::lightener;
  }
}

std::vector<double> times(const Range& range, bool only_target) {
  std::vector<double> all = {range.minutes.target};
  if (!only_target)
    all = {range.minutes.min, (range.minutes.min + range.minutes.target) / 2, range.minutes.target, range.minutes.max};
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

void add_ways(const Range& range, std::vector<const Product*> products, bool only_target, const Shelf& shelf,
              const FormulaPolicy& policy, std::vector<FirstStep>& all) {
  std::vector<double> strengths = {0};
  if (!range.developer_percents.empty()) {
    strengths.clear();
    for (double p : range.developer_percents)
      if (!bottles(shelf, p, 100, 1).empty()) strengths.push_back(p);
  }
  for (double percent : strengths)
    for (double minutes : times(range, only_target)) {
      const double ratio = percent > 0 ? reference(range).ratio : 0;
      if (percent * ratio / (1 + ratio) > policy.on_head_peroxide_max_percent) continue;
      all.push_back({&range, products, percent, ratio, minutes});
    }
}

}  // namespace

std::string_view code(Opening o) {
  switch (o) {
    case Opening::chelate:
      return "chelate";
    case Opening::soften:
      return "soften";
    case Opening::fill:
      return "fill";
    case Opening::remove:
      return "remove";
    default:
      return "lighten";
  }
}

bool has_a_place(Opening o, const SearchZone& z) {
  const Constants c;
  switch (o) {
    case Opening::chelate:
      return holds_minerals(*z.span);
    case Opening::soften:
      return z.white >= c.soften_from_white && z.span->resistance >= c.soften_from_resistance;
    case Opening::fill:
      // Direct colour of a fashion tone needs no ground.
      return -z.asked > c.fill_from_levels && z.target->tone != Tone::violet && z.target->tone != Tone::green &&
             (share_of(*z.span, ColourOrigin::lightened) > 0.5 || z.span->porosity.value >= c.fill_from_porosity);
    case Opening::remove:
      return asks_colour_to_lift_colour(z);
    default:
      return z.asked > c.lighter_beyond_doubt;
  }
}

bool required(Opening o) { return o == Opening::chelate || o == Opening::fill; }

std::vector<FirstStep> ways(Opening o, const Shelf& shelf, const FormulaPolicy& policy) {
  std::vector<FirstStep> all;
  for (const Range& range : shelf.ranges) {
    std::vector<const Product*> own;
    for (const Product& p : shelf.products)
      if (p.range == range.id && p.cls == product_class(o) && p.stock_g >= policy.part_min_g) own.push_back(&p);
    if (own.empty()) continue;
    // Of pre-treatments those with peroxide soften, those without take minerals off.
    if ((o == Opening::soften && range.developer_percents.empty()) ||
        (o == Opening::chelate && !range.developer_percents.empty()))
      continue;
    // Parts of a remover go together; fillers are one shade or the other.
    if (o == Opening::fill)
      for (const Product* p : own) add_ways(range, {p}, true, shelf, policy, all);
    else
      add_ways(range, own, o != Opening::lighten, shelf, policy, all);
  }
  std::stable_sort(all.begin(), all.end(), [](const FirstStep& a, const FirstStep& b) {
    return std::tie(a.developer_percent, a.minutes) < std::tie(b.developer_percent, b.minutes);
  });
  return all;
}

std::string forbidden(const FirstStep& s, const Span& span, const FormulaPolicy& policy) {
  const std::string rule = forbidden(Setting{s.range, s.developer_percent, s.ratio, s.minutes}, span, policy);
  // Lightened hair may be lightened again, within its condition; that rule is about tints.
  const bool lightener = s.range->cls == ProductClass::lightener;
  if (!rule.empty() && !(lightener && rule == "lightened_is_toned")) return rule;
  if (!lightener) return {};
  if (touches_scalp(span) && s.developer_percent > policy.scalp_lightener_max_percent)
    return "scalp_lightener_strength";
  if (!stretch_passed(span)) return "failed_stretch";
  if (span.porosity.value > policy.porosity_max) return "condition_spent";
  return {};
}

Formula pour(const FirstStep& s, double grams, const Shelf& shelf, const FormulaPolicy& policy) {
  auto rounded = [&](double g) { return weighed(g, policy); };
  Formula f;
  f.range = s.range->id;
  f.minutes = s.minutes;
  double poured = 0;
  for (const Product* p : s.products) {
    const double g =
        rounded(std::max(policy.part_min_g, grams / (1 + s.ratio) / static_cast<double>(s.products.size())));
    f.parts.push_back({p->id, g});
    poured += g;
  }
  if (s.developer_percent > 0)
    for (const Part& p : bottles(shelf, s.developer_percent, rounded(poured * s.ratio), policy.gram_step))
      f.parts.push_back(p);
  return f;
}

}  // namespace strandline
