#include "schedule/order.h"

#include <algorithm>
#include <cmath>
#include <compare>
#include <string>
#include <vector>

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

Rank lighten(const Application& a, const SchedulePolicy& policy) {
  const int group = porous_ends(a, policy) ? 2 : a.touches_scalp ? 1 : 0;
  return {group, 0, 0, place(policy.lighten_areas, a.area), a.parting};
}

Rank cover(const Application& a, bool whitest_first, const SchedulePolicy& policy) {
  const int area = place(policy.cover_areas, a.area);
  if (a.span == SpanKind::ends) return {porous_ends(a, policy) ? 3 : 2, 0, 0, area, a.parting};
  if (a.span == SpanKind::mids) return {1, 0, 0, area, a.parting};
  // Shares closer than a reading can tell (tenths) are the same.
  const int white = whitest_first ? -static_cast<int>(std::lround(a.white_share * 10)) : 0;
  return {0, a.resistance >= policy.resistant_from ? 0 : 1, white, area, a.parting};
}

bool at_hairline(const Application& a) { return a.area == AreaKind::front_hairline || a.area == AreaKind::temples; }

// What an application and its peers (the others of its kind of work) are ranked by.
struct Ranked {
  const Application* application;
  Rank rank;
};

// The first thing in which its place differs from a peer's; empty where no rule says anything about it.
std::string reason_of(const Ranked& one, std::vector<Ranked> peers, bool virgin, const SchedulePolicy& policy) {
  const Application& a = *one.application;
  const auto keep = [&](auto field) {
    std::erase_if(peers, [&](const Ranked& p) { return field(p.rank) != field(one.rank); });
  };
  const auto some = [&](auto test) { return std::ranges::any_of(peers, test); };

  std::string said;
  if (some([&](const Ranked& p) { return p.rank.group < one.rank.group; })) {
    if (porous_ends(a, policy)) return "porous_ends_last";
    if (a.lightening) return "scalp_zone_later";
    if (some([](const Ranked& p) { return p.rank.group == 0; })) return "lengths_after_regrowth";
  }
  if (some([&](const Ranked& p) { return p.rank.group > one.rank.group; })) {
    if (a.lightening && virgin && one.rank.group == 0) return "away_from_scalp_first";
    if (!a.lightening && one.rank.group == 0) said = "regrowth_before_lengths";
  }
  keep([](const Rank& r) { return r.group; });
  if (some([&](const Ranked& p) { return p.rank.resistant > one.rank.resistant; })) return "resistant_first";
  keep([](const Rank& r) { return r.resistant; });
  if (some([&](const Ranked& p) { return p.rank.white < one.rank.white; })) return "after_the_whiter";
  if (some([&](const Ranked& p) { return p.rank.white > one.rank.white; })) return "whitest_first";
  if (some([&](const Ranked& p) { return p.rank.area != one.rank.area; })) {
    const bool last =
        at_hairline(a) && some([](const Ranked& p) { return !at_hairline(*p.application); }) &&
        !some([&](const Ranked& p) { return !at_hairline(*p.application) && p.rank.area > one.rank.area; });
    return last ? "hairline_last" : "areas_of_the_house";
  }
  if (some([&](const Ranked& p) { return p.rank.parting != one.rank.parting; })) return "parting_by_parting";
  return said;
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
    Rank rank = a.lightening ? lighten(a, policy) : cover(a, whitest_first, policy);
    if (a.woven && !a.lightening) rank = {-1, 0, 0, place(policy.lighten_areas, a.area), a.parting};
    ranked.push_back({&a, rank});
  }

  std::vector<OrderRule> rules(applications.size());
  for (std::size_t i = 0; i < rules.size(); ++i) {
    const Application& a = applications[i];
    std::vector<Ranked> peers;
    bool between = false;
    for (std::size_t j = 0; j < rules.size(); ++j) {
      const Application& other = applications[j];
      between = between || a.woven != other.woven;
      const bool peer = a.woven == other.woven && a.lightening == other.lightening;
      if (peer && j != i) peers.push_back(ranked[j]);
      if (peer ? ranked[i].rank < ranked[j].rank : a.woven && !other.woven) rules[i].later |= 1u << j;
    }
    rules[i].reason = a.woven && between ? "packets_first" : reason_of(ranked[i], peers, virgin, policy);
  }
  return rules;
}

}  // namespace strandline
