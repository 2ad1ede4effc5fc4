#include "schedule/order.h"

#include <algorithm>
#include <cmath>
#include <compare>
#include <string>
#include <vector>

namespace strandline {
namespace {

// Smaller comes first; equal ranks are free. What is asked first stands first.
struct Rank {
  int packets = 0, scalp = 0, need = 0, span = 0, resistant = 0, white = 0, porous = 0, area = 0, parting = 0;
  auto operator<=>(const Rank&) const = default;
};

int place(const std::vector<AreaKind>& areas, AreaKind area) {
  return static_cast<int>(std::ranges::find(areas, area) - areas.begin());
}

bool porous_ends(const Application& a, const SchedulePolicy& policy) {
  return a.span == SpanKind::ends && a.porosity >= policy.porous_from;
}

// Lifting natural hair: away from the scalp first, whose warmth speeds it up; porous ends last.
int away_from_scalp(const Application& a, const SchedulePolicy& policy) {
  return porous_ends(a, policy) ? 2 : a.touches_scalp ? 1 : 0;
}

Rank lighten(const Application& a, const SchedulePolicy& policy) {
  Rank r;
  r.scalp = away_from_scalp(a, policy);
  r.area = place(policy.lighten_areas, a.area);
  r.parting = a.parting;
  return r;
}

// All leave at one basin time, so what needs longest starts first.
Rank cover(const Application& a, bool virgin, const SchedulePolicy& policy) {
  constexpr double kAlikeMinutes = 5, kShareSteps = 10, kPorositySteps = 2;  // what a hand, a reading, can tell
  Rank r;
  r.scalp = a.lift && virgin ? away_from_scalp(a, policy) : 0;
  r.need = -static_cast<int>(std::lround(a.target / kAlikeMinutes));
  r.span = a.span == SpanKind::regrowth ? 0 : a.span == SpanKind::mids ? 1 : porous_ends(a, policy) ? 3 : 2;
  r.resistant = a.white_share > 0 && a.resistance >= policy.resistant_from ? 0 : 1;
  r.white = -static_cast<int>(std::lround(a.white_share * kShareSteps));
  r.porous = static_cast<int>(std::lround(a.porosity * kPorositySteps));
  r.area = place(policy.cover_areas, a.area);
  r.parting = a.parting;
  return r;
}

bool at_hairline(const Application& a) { return a.area == AreaKind::front_hairline || a.area == AreaKind::temples; }

// What an application and its peers (the others of its kind of work) are ranked by.
struct Ranked {
  const Application* application;
  Rank rank;
};

struct Said {
  int Rank::* of;
  const char *before, *after;  // why it goes before, or after, those that differ in this alone; null: nothing to say
};
constexpr Said kSaid[] = {{&Rank::scalp, "away_from_scalp_first", "scalp_zone_later"},
                          {&Rank::need, "needs_longest", "needs_less"},
                          {&Rank::span, nullptr, "lengths_after_regrowth"},
                          {&Rank::resistant, "resistant_first", nullptr},
                          {&Rank::white, "whitest_first", "after_the_whiter"},
                          {&Rank::porous, nullptr, "porous_last"}};

// The first thing in which its place differs from a peer's; empty where no rule says anything about it.
std::string reason_of(const Ranked& one, std::vector<Ranked> peers, const SchedulePolicy& policy) {
  const Application& a = *one.application;
  const auto some = [&](auto test) { return std::ranges::any_of(peers, test); };
  std::string fallback;  // told where nothing finer decides among those that need as long
  for (const Said& said : kSaid) {
    const int own = one.rank.*said.of;
    if (some([&](const Ranked& p) { return p.rank.*said.of < own; }) && said.after)
      return porous_ends(a, policy) && said.of != &Rank::need ? "porous_ends_last" : said.after;
    if (some([&](const Ranked& p) { return p.rank.*said.of > own; }) && said.before) {
      if (said.of != &Rank::need) return said.before;
      fallback = said.before;
    }
    std::erase_if(peers, [&](const Ranked& p) { return p.rank.*said.of != own; });
  }
  if (some([&](const Ranked& p) { return p.rank.area != one.rank.area; })) {
    const bool last =
        at_hairline(a) && some([](const Ranked& p) { return !at_hairline(*p.application); }) &&
        !some([&](const Ranked& p) { return !at_hairline(*p.application) && p.rank.area > one.rank.area; });
    return last ? "hairline_last" : "areas_of_the_house";
  }
  return some([&](const Ranked& p) { return p.rank.parting != one.rank.parting; }) ? "parting_by_parting" : fallback;
}

}  // namespace

std::vector<OrderRule> order_rules(const std::vector<Application>& applications, const SchedulePolicy& policy) {
  const auto lifts = [](bool scalp) {
    return [scalp](const Application& a) { return (a.lightening || a.lift) && a.touches_scalp == scalp; };
  };
  const bool virgin = std::ranges::any_of(applications, lifts(true)) && std::ranges::any_of(applications, lifts(false));

  std::vector<Ranked> ranked;
  for (const auto& a : applications) {
    Rank rank = a.lightening ? lighten(a, policy) : cover(a, virgin, policy);
    if (a.woven && !a.lightening) rank.packets = -1, rank.area = place(policy.lighten_areas, a.area);
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
    rules[i].reason = a.woven && between ? "packets_first" : reason_of(ranked[i], peers, policy);
  }
  return rules;
}

}  // namespace strandline
