#include "mix/settings.h"

#include <algorithm>
#include <cmath>

#include "mix/within.h"

namespace strandline {
namespace {

constexpr double kSame = 1e-9;

std::vector<const Product*> developers(const Shelf& shelf) {
  std::vector<const Product*> all;
  for (const Product& p : shelf.products)
    if (p.cls == ProductClass::developer && p.stock_g > 0) all.push_back(&p);
  std::sort(all.begin(), all.end(), [](auto* a, auto* b) { return a->peroxide_percent < b->peroxide_percent; });
  return all;
}

bool in_shop(const Shelf& shelf, double percent) {
  const auto all = developers(shelf);
  return std::any_of(all.begin(), all.end(), [&](auto* p) { return std::abs(p->peroxide_percent - percent) < kSame; });
}

// The strengths allowed: the range's own bottles, and blends between them where the range lets bottles be blended.
std::vector<double> strengths(const Range& range, const Shelf& shelf) {
  std::vector<double> own;
  for (double p : range.developer_percents)
    if (in_shop(shelf, p)) own.push_back(p);
  std::sort(own.begin(), own.end());
  std::vector<double> all = own;
  if (range.bottle_blends)
    for (size_t i = 1; i < own.size(); ++i)
      for (int k = 1; own[i - 1] + k * kBlendStep < own[i] - kSame; ++k) all.push_back(own[i - 1] + k * kBlendStep);
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

bool straightened_lately(const Span& span, double weeks) {
  return std::any_of(span.services.begin(), span.services.end(), [&](const Service& s) {
    const bool kind = s.kind == ServiceKind::straightened_mild || s.kind == ServiceKind::straightened_alkaline ||
                      s.kind == ServiceKind::relaxed || s.kind == ServiceKind::permed;
    return kind && s.weeks_ago.value_or(0) < weeks;  // unknown counts as just now
  });
}

bool metal_doubt(const Span& span) {
  if (span.metal_test == MetalTest::slightly_lighter) return false;  // passed
  return span.history_unknown || std::any_of(span.services.begin(), span.services.end(), [](const Service& s) {
           return s.kind == ServiceKind::plant_colour || s.kind == ServiceKind::plant_compound ||
                  s.kind == ServiceKind::restorer || (s.kind == ServiceKind::home_colour && !s.pack_seen);
         });
}

bool all_natural(const Span& span) {
  return std::all_of(span.populations.begin(), span.populations.end(),
                     [](const Population& p) { return p.origin == ColourOrigin::natural; });
}

bool mostly_lightened(const Span& span) {
  double share = 0;
  for (const Population& p : span.populations)
    if (p.origin == ColourOrigin::lightened) share += p.share.value;
  return share > 0.5;
}

// The lightest natural level read on the span; high-lift asks for a base from which it may be used.
double base_level(const Span& span) {
  double level = 11;
  for (const Population& p : span.populations)
    if (p.kind == FibreKind::pigmented) level = std::min(level, p.natural_level.value_or(p.level).value);
  return level;
}

}  // namespace

bool holds_minerals(const Span& span) {
  return std::any_of(span.services.begin(), span.services.end(),
                     [](const Service& s) { return s.kind == ServiceKind::minerals; });
}

bool formulated(ProductClass c) {
  return c == ProductClass::permanent || c == ProductClass::high_lift || c == ProductClass::demi ||
         c == ProductClass::direct;
}

std::vector<Setting> settings(const Range& range, const Shelf& shelf, const FormulaPolicy& policy) {
  std::vector<Setting> all;
  if (!formulated(range.cls)) return all;
  if (range.developer_percents.empty()) {
    all.push_back({&range, 0, 0, range.minutes.target});
    return all;
  }
  for (double percent : strengths(range, shelf))
    for (double ratio : range.ratios)
      if (percent * ratio / (1 + ratio) <= policy.on_head_peroxide_max_percent + kSame)
        all.push_back({&range, percent, ratio, range.minutes.target});
  return all;
}

std::vector<double> times(const Range& range) {
  const MinuteWindow& own = range.minutes;
  std::vector<double> all = {own.min, own.max};
  if (range.cls == ProductClass::demi || range.cls == ProductClass::direct)
    for (double minutes : {3.0, 5.0, 10.0, 20.0})
      if (minutes > own.min && minutes < own.max) all.push_back(minutes);
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  std::erase(all, own.target);
  all.insert(all.begin(), own.target);
  return all;
}

std::string forbidden(const Setting& s, const Span& span, const FormulaPolicy& policy) {
  const bool peroxide = s.developer_percent > 0;
  if (std::string rule = closed_by_rules(s, span); !rule.empty()) return rule;
  if (touches_scalp(span) && !s.range->scalp_allowed) return "range_not_on_scalp";
  if (peroxide && metal_doubt(span)) return "metal_test_first";
  if (peroxide && holds_minerals(span)) return "minerals_first";
  if (!stretch_passed(span) &&
      (s.range->cls == ProductClass::high_lift || s.developer_percent > policy.failed_stretch_max_percent + kSame))
    return "failed_stretch";
  if (straightened_lately(span, policy.straightened_weeks) &&
      (s.range->cls == ProductClass::high_lift || s.developer_percent > policy.straightened_max_percent + kSame))
    return "straightened_lately";
  if (mostly_lightened(span) && s.developer_percent > policy.lightened_max_percent + kSame) return "lightened_is_toned";
  if (s.range->base_level_min && !all_natural(span)) return "high_lift_on_coloured";
  if (s.range->base_level_min && base_level(span) < *s.range->base_level_min - 0.5)
    return "base_too_dark_for_high_lift";
  if (span.porosity.value > policy.porosity_max && s.developer_percent > policy.failed_stretch_max_percent + kSame)
    return "condition_spent";
  return {};
}

std::vector<Part> bottles(const Shelf& shelf, double percent, double grams, double step) {
  const auto all = developers(shelf);
  for (auto* p : all)
    if (std::abs(p->peroxide_percent - percent) < kSame) return {{p->id, grams}};
  for (size_t i = 1; i < all.size(); ++i) {
    const double weak = all[i - 1]->peroxide_percent, strong = all[i]->peroxide_percent;
    if (!(weak < percent && percent < strong)) continue;
    const double stronger = std::round(grams * (percent - weak) / (strong - weak) / step) * step;
    return {{all[i - 1]->id, grams - stronger}, {all[i]->id, stronger}};
  }
  return {};
}

}  // namespace strandline
