#include "mix/within.h"

#include <algorithm>

#include "mix/domain.h"
#include "predict/steps.h"

namespace strandline {
namespace {

constexpr double kSame = 1e-9;

}  // namespace

const RangeLimits* limits_on(const Span& span, const Range& range) {
  const auto own =
      std::find_if(span.limits.begin(), span.limits.end(), [&](const RangeLimits& l) { return l.range == range.id; });
  return own == span.limits.end() ? nullptr : &*own;
}

std::string closed_by_rules(const Setting& s, const Span& span) {
  const RangeLimits* l = limits_on(span, *s.range);
  if (!l) return {};
  if (!l->closed_by.empty()) return l->closed_by;
  const double bottle = s.developer_percent, on_head = bottle * s.ratio / (1 + s.ratio);
  const bool past =
      bottle > l->developer_max + kSame || bottle >= l->developer_below - kSame || on_head > l->on_head_max + kSame;
  return past ? "rule_limit" : "";
}

bool within_rules(const Setting& s, double minutes, const SearchZone& zone) {
  const RangeLimits* l = limits_on(*zone.span, *s.range);
  if (!l) return true;
  if (minutes > l->minutes_max + kSame || minutes < l->minutes_min - kSame) return false;
  if (s.developer_percent <= 0 || l->porosity_after_max == kNoLimit) return true;
  const Treatment t = treatment(bare_chemistry(s, std::max(0.0, minutes + zone.half_touch)), zone.span->from_cm,
                                zone.span->to_cm, on_zone(Constants{}, *zone.draws));
  const std::vector<Fibre>& fibres = zone.draws->nominal.fibres;
  return std::all_of(fibres.begin(), fibres.end(), [&](const Fibre& f) {
    return std::min(3.0, f.porosity + t.wear) <= l->porosity_after_max + kSame;
  });
}

std::vector<double> times_within(const Setting& s, const SearchZone& zone) {
  std::vector<double> all = times(*s.range);
  // As long as the rules let it, where that is none of the range's own times.
  const RangeLimits* l = limits_on(*zone.span, *s.range);
  if (l && l->minutes_max < s.range->minutes.max && std::find(all.begin(), all.end(), l->minutes_max) == all.end())
    all.push_back(l->minutes_max);
  std::erase_if(all, [&](double m) { return !within_rules(s, m, zone); });
  // Colour that is worked out in the hair is given its full time there (common practice), where the rules let it.
  const double full = s.range->minutes.target;
  const bool worked_out = s.range->cls == ProductClass::permanent || s.range->cls == ProductClass::high_lift;
  if (worked_out && touches_scalp(*zone.span) && std::find(all.begin(), all.end(), full) != all.end())
    std::erase_if(all, [&](double m) { return m < full; });
  return all;
}

}  // namespace strandline
