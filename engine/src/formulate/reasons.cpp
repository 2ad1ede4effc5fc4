#include "formulate/reasons.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <set>

#include "mix/habits.h"

namespace strandline {
namespace {

bool dyed(const Span& span) {
  return std::any_of(span.populations.begin(), span.populations.end(), [](const Population& p) {
    return p.origin == ColourOrigin::tinted || p.origin == ColourOrigin::direct;
  });
}

bool lightened_before(const Span& span) {
  return std::any_of(span.populations.begin(), span.populations.end(),
                     [](const Population& p) { return p.origin == ColourOrigin::lightened; });
}

// What the part does in this bowl, along whichever of the two axes it moves more.
bool warms(const std::vector<PartEffect>& effects, const std::string& product) {
  const auto e =
      std::find_if(effects.begin(), effects.end(), [&](const PartEffect& p) { return p.product == product; });
  if (e == effects.end()) return false;
  return (std::abs(e->red_without) > std::abs(e->warm_without) ? e->red_without : e->warm_without) < 0;
}

// What one part of several is there for. Only a warm shade is said to warm, only a cool one to counter warmth.
const char* reason_for(const Product& p, const std::vector<const SearchZone*>& zones,
                       const std::vector<PartEffect>& effects) {
  if (p.cls == ProductClass::clear) return "thins";
  const bool wanted = std::any_of(zones.begin(), zones.end(), [&](auto* z) {
    return z->target->tone == p.tone || z->target->second_tone == p.tone;
  });
  const bool corrector = p.cls == ProductClass::corrector;
  if (wanted && !corrector) return "carries_tone";
  if (p.tone == Tone::natural && !corrector) return "natural_ground";
  const bool cool = p.tone == Tone::ash || p.tone == Tone::violet || p.tone == Tone::green;
  if (warms(effects, p.id)) return cool ? "part_of_depth" : "warming_tone";
  return cool || corrector ? "counter_tone" : "part_of_depth";
}

}  // namespace

std::string figure(double value, int decimals) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

Reasons reasons_for(const PlannedBowl& bowl, const std::vector<const SearchZone*>& zones, const Shelf& shelf) {
  Reasons why;
  double white = 0, asked = 0, weight = 0;
  for (const SearchZone* z : zones) {
    white += z->weight * z->white;
    weight += z->weight;
    asked = std::max(asked, z->asked);
  }
  white /= weight;
  int natural = 0;
  for (const Share& s : bowl.recipe.shares) {
    const Product* p = find_product(shelf, s.product);
    if (!p) continue;
    if (p->tone == Tone::natural && p->level > 0) natural += s.eighths;
    if (bowl.recipe.shares.size() > 1)
      why.push_back({reason_for(*p, zones, bowl.effects),
                     "",
                     {{"product", p->name}, {"share", figure(100.0 * s.eighths / 8, 0)}}});
  }
  constexpr double kSomeWhite = 0.1;
  if (white >= kSomeWhite && natural > 0)
    why.push_back({"natural_share_for_white",
                   "",
                   {{"white", figure(100 * white, 0)}, {"share", figure(100.0 * natural / 8, 0)}}});
  if (bowl.recipe.developer_percent > 0) {
    constexpr double kNoLift = 0.25;
    const bool takes_white = white_needs(white) > 0 && bowl.recipe.developer_percent >= white_needs(white);
    const Range* range = find_range(shelf, bowl.recipe.range);
    const bool lifts = asked > kNoLift && range && range->cls != ProductClass::demi;  // a demi deposits
    const char* code = lifts ? "developer_for_lift" : takes_white ? "developer_for_white" : "developer_for_deposit";
    why.push_back({code,
                   "",
                   {{"percent", figure(bowl.recipe.developer_percent)},
                    {"levels", figure(asked)},
                    {"in_bowl", figure(bowl.on_head_peroxide_percent)}}});
  }
  constexpr double kCleanLift = 2;
  if (asked > kCleanLift) why.push_back({"warmth_expected", "", {{"levels", figure(asked)}}});
  why.push_back({zones.size() > 1 ? "one_bowl_serves" : "own_bowl", "", {{"zones", std::to_string(zones.size())}}});
  return why;
}

Reasons reasons_against(const SearchZone& z, const ZoneResult& r, const Domain& domain, const FormulaPolicy& policy) {
  Reasons why;
  if (!r.landing) return why;
  const Landing& l = *r.landing;
  const Constants c;
  const std::map<std::string, std::string> here = {{"asked", figure(z.target->level)},
                                                   {"reached", figure(r.planned.named.level)},
                                                   {"asked_tone", std::string(word(z.target->tone))},
                                                   {"reached_tone", std::string(word(r.planned.named.tone))}};
  const bool too_dark = l.level_error<-c.level_tolerance, too_light = l.level_error> c.level_tolerance;
  if (too_dark) why.push_back({dyed(*z.span) ? "colour_does_not_lift_colour" : "lift_limit", "", here});
  if (too_light) why.push_back({"depth_out_of_reach", "", here});
  const bool stopped_by_level = too_dark && dyed(*z.span);
  if (l.tone_error > c.tone_tolerance && !stopped_by_level) {
    const double darker = r.today.named.level - z.target->level;
    if (lightened_before(*z.span) && darker > c.fill_from_levels)
      why.push_back({"needs_filler", "", here});
    else if (r.planned.named.tone == z.target->tone)
      why.push_back({"tone_between_words", "", here});
    else
      why.push_back({r.planned.named.warmth > 0 && r.lift_levels > 1 ? "warmth_stays" : "tone_out_of_reach", "", here});
  }
  if (r.planned.contrast_levels > policy.covered_contrast_levels)
    why.push_back({"white_cover", "", {{"levels", figure(r.planned.contrast_levels)}}});
  if (why.empty()) return why;
  std::set<std::string> rules;
  for (const auto& one : domain.settings) {
    const std::string rule = forbidden(one.setting, *z.span, policy);
    const bool only_lifts = rule == "base_too_dark_for_high_lift" || rule == "high_lift_on_coloured";
    if (!rule.empty() && (too_dark || !only_lifts)) rules.insert(rule);
  }
  for (const std::string& rule : rules) why.push_back({"ceiling", "", {{"rule", rule}}});
  return why;
}

}  // namespace strandline
