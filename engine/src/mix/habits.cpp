#include "mix/habits.h"

#include <algorithm>
#include <cmath>

#include "generated/tables.h"
#include "mix/within.h"

namespace strandline {

double white_share(const ZoneDraws& zone) {
  double share = 0;
  for (size_t p = 0; p < zone.kinds.size(); ++p)
    if (zone.kinds[p] == FibreKind::white) share += zone.nominal.shares[p];
  return share;
}

double asked_lift(const Span& span, const Target& target) {
  double level = 0, pigmented = 0;
  for (const Population& p : span.populations)
    if (p.kind == FibreKind::pigmented) level += p.share.value * p.level.value, pigmented += p.share.value;
  return pigmented > 0 ? target.level - level / pigmented : 0;
}

double needed_developer_percent(const Span& span, double asked) {
  const auto& need = tables::developer_need;  // levels asked up to, % in the bottle; the last two rows: white, coloured
  const size_t lifts = need.size() - 2;
  double pigmented = 0, white = 0, natural = 0;
  for (const Population& p : span.populations) {
    (p.kind == FibreKind::white ? white : pigmented) += p.share.value;
    if (p.kind == FibreKind::pigmented && p.origin == ColourOrigin::natural) natural += p.share.value;
  }
  if (pigmented > 0 && natural < 0.5 * pigmented) return need[lifts + 1][1];
  size_t row = 0;
  while (row + 1 < lifts && asked > need[row][0]) ++row;
  return white > need[lifts][0] ? std::max(need[row][1], need[lifts][1]) : need[row][1];
}

double deposit_percent() { return tables::developer_need[0][1]; }

double white_needs(double white) {
  const auto& need = tables::developer_need;
  return white > need[need.size() - 2][0] ? need[need.size() - 2][1] : 0;
}

double setting_price(const Setting& s, const SearchZone& zone, double exposure) {
  constexpr Constants c;
  const double beyond = std::max(0.0, s.developer_percent - zone.needed_percent);
  // White does not take as well from a weaker one than it needs (common practice); by its share.
  const double weak = std::max(0.0, std::min(zone.needed_percent, white_needs(zone.white)) - s.developer_percent);
  return c.price_exposure * exposure + c.price_strength_per_percent * (beyond + weak * zone.white);
}

bool asks_colour_to_lift_colour(const SearchZone& zone) {
  double level = 0, dyed = 0, all = 0;
  for (const Population& p : zone.span->populations) {
    all += p.share.value;
    if (p.origin != ColourOrigin::tinted) continue;
    dyed += p.share.value;
    level += p.share.value * p.level.value;
  }
  return dyed > 0.5 * all && zone.target->level > level / dyed + Constants{}.lighter_beyond_doubt;
}

bool asks_deposit_to_lift(const Setting& setting, const SearchZone& zone) {
  constexpr double kPretends = 1;  // levels; as lift.deposit of knowledge/rules
  const ProductClass cls = setting.range->cls;
  return (cls == ProductClass::demi || cls == ProductClass::direct) && zone.asked > kPretends &&
         share_of(*zone.span, ColourOrigin::natural) > 0.5;
}

bool fits(const Span& span, const Target& target) {
  constexpr Constants c;
  if (target.second_tone || share_of(span, FibreKind::white) >= tables::natural_for_white[0][0]) return false;
  const auto as_wished = [&](const Population& p) {
    return p.kind == FibreKind::white || (p.origin == ColourOrigin::natural && p.tone == target.tone);
  };
  return std::all_of(span.populations.begin(), span.populations.end(), as_wished) &&
         std::abs(asked_lift(span, target)) <= c.fine_within;
}

bool out_of_place(const Setting& setting, const SearchZone& zone) {
  const RangeLimits* limits = limits_on(*zone.span, *setting.range);
  return asks_colour_to_lift_colour(zone) || asks_deposit_to_lift(setting, zone) ||
         (limits && zone.asked > limits->lift_max + Constants{}.level_tolerance) ||
         (setting.range->cls == ProductClass::permanent && out_of_place_for_tint(zone));
}

bool out_of_place_for_tint(const SearchZone& zone) {
  double lightened = 0, all = 0;
  for (const Population& p : zone.span->populations) {
    all += p.share.value;
    if (p.origin == ColourOrigin::lightened) lightened += p.share.value;
  }
  return lightened > 0.5 * all && zone.asked > -Constants{}.toned_darker_by;
}

bool counts_as_natural(const Product& p) {
  return p.tone == Tone::natural && p.level > 0 && p.cls != ProductClass::clear;
}

bool counts_for_levels(const Product& p) {
  return p.cls != ProductClass::clear && p.cls != ProductClass::corrector && p.level > 0;
}

}  // namespace strandline
