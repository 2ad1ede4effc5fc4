#include "schedule/order.h"

#include <algorithm>
#include <cmath>
#include <compare>

namespace strandline {
namespace {

// Smaller comes first; equal ranks are free.
struct Rank {
  int group = 0, resistant = 0, white = 0, area = 0, parting = 0;
  auto operator<=>(const Rank&) const = default;
};

int place(const std::vector<AreaKind>& areas, AreaKind area) {
  return static_cast<int>(std::ranges::find(areas, area) - areas.begin());
}

bool porous_ends(const Application& a, const SchedulePolicy& policy) {
  return a.span == SpanKind::ends && a.porosity >= policy.porous_from;
}

// White share over the scalp, weighted by the minutes that each area takes.
double white_of_head(const std::vector<Application>& applications) {
  double minutes = 0, white = 0;
  for (const auto& a : applications) {
    if (!a.touches_scalp || a.lightening) continue;
    minutes += a.apply.mean;
    white += a.apply.mean * a.white_share;
  }
  return minutes > 0 ? white / minutes : 0;
}

struct Ranked {
  Rank rank;
  std::string reason;
};

Ranked lighten(const Application& a, bool virgin, const SchedulePolicy& policy) {
  const int area = place(policy.lighten_areas, a.area);
  if (porous_ends(a, policy)) return {{2, 0, 0, area}, "porous_ends_last"};
  if (a.touches_scalp) return {{1, 0, 0, area}, virgin ? "scalp_zone_later" : "back_before_front"};
  return {{0, 0, 0, area}, virgin ? "away_from_scalp_first" : "back_before_front"};
}

Ranked cover(const Application& a, bool whitest_first, const SchedulePolicy& policy) {
  const int area = place(policy.cover_areas, a.area);
  if (a.span == SpanKind::ends) {
    const bool porous = porous_ends(a, policy);
    return {{porous ? 3 : 2, 0, 0, area}, porous ? "porous_ends_last" : "lengths_after_regrowth"};
  }
  if (a.span == SpanKind::mids) return {{1, 0, 0, area}, "lengths_after_regrowth"};
  // Shares closer than a reading can tell (tenths) are the same.
  const int white = whitest_first ? -static_cast<int>(std::lround(a.white_share * 10)) : 0;
  if (a.resistance >= policy.resistant_from) return {{0, 0, white, area}, "resistant_first"};
  if (whitest_first) return {{0, 1, white, area}, "whitest_first"};
  const bool hairline = a.area == AreaKind::front_hairline || a.area == AreaKind::temples;
  return {{0, 1, 0, area}, hairline ? "hairline_last" : "crown_to_nape_then_sides"};
}

}  // namespace

std::vector<OrderRule> order_rules(const std::vector<Application>& applications, const SchedulePolicy& policy) {
  const auto lightens = [](bool scalp) {
    return [scalp](const Application& a) { return a.lightening && a.touches_scalp == scalp; };
  };
  const bool virgin =
      std::ranges::any_of(applications, lightens(true)) && std::ranges::any_of(applications, lightens(false));
  const bool whitest_first = white_of_head(applications) >= policy.whitest_first_share;

  std::vector<Ranked> ranked;
  for (const auto& a : applications) {
    ranked.push_back(a.lightening ? lighten(a, virgin, policy) : cover(a, whitest_first, policy));
    if (a.woven && !a.lightening) ranked.back() = {{-1, 0, 0, place(policy.lighten_areas, a.area)}, "packets_first"};
  }
  for (std::size_t i = 0; i < ranked.size(); ++i) ranked[i].rank.parting = applications[i].parting;

  std::vector<OrderRule> rules(applications.size());
  for (std::size_t i = 0; i < rules.size(); ++i) {
    rules[i].reason = ranked[i].reason;
    for (std::size_t j = 0; j < rules.size(); ++j)
      if (applications[i].woven != applications[j].woven
              ? applications[i].woven
              : applications[i].lightening == applications[j].lightening && ranked[i].rank < ranked[j].rank)
        rules[i].later |= 1u << j;
  }
  return rules;
}

}  // namespace strandline
