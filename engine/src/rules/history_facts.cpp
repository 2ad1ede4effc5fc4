#include <algorithm>
#include <initializer_list>

#include "rules/place.h"

namespace strandline {
namespace {

using Kinds = std::initializer_list<ServiceKind>;

const Service* latest(const Span& span, Kinds kinds) {
  const Service* found = nullptr;
  for (const Service& s : span.services)
    if (std::find(kinds.begin(), kinds.end(), s.kind) != kinds.end() &&
        (!found || s.weeks_ago.value_or(0) < found->weeks_ago.value_or(0)))
      found = &s;
  return found;
}

std::optional<double> had(const Place& p, Kinds kinds) { return latest(p.span, kinds) != nullptr; }

// Unknown weeks count as none.
std::optional<double> weeks(const Span& span, Kinds kinds) {
  const Service* s = latest(span, kinds);
  if (!s) return std::nullopt;
  return s->weeks_ago.value_or(0);
}

constexpr Kinds kHydroxide = {ServiceKind::straightened_alkaline, ServiceKind::relaxed,
                              ServiceKind::straightened_unknown};
constexpr Kinds kThio = {ServiceKind::straightened_mild};
constexpr Kinds kHeat = {ServiceKind::straightened_heat};
constexpr Kinds kStraightened = {ServiceKind::straightened_alkaline, ServiceKind::relaxed,
                                 ServiceKind::straightened_unknown, ServiceKind::straightened_mild,
                                 ServiceKind::straightened_heat};
constexpr Kinds kCompound = {ServiceKind::plant_compound, ServiceKind::restorer};

std::optional<double> head_straightened_weeks(const Place& p) {
  std::optional<double> least;
  for (const Area& a : p.visit.head.areas)
    for (const Span& s : a.spans)
      if (const auto w = weeks(s, kStraightened)) least = std::min(least.value_or(kNoLimit), *w);
  return least;
}

bool metal_doubt(const Span& span) {
  return span.history_unknown || std::any_of(span.services.begin(), span.services.end(), [](const Service& s) {
           return s.kind == ServiceKind::plant_colour || s.kind == ServiceKind::plant_compound ||
                  s.kind == ServiceKind::restorer || (s.kind == ServiceKind::home_colour && !s.pack_seen);
         });
}

constexpr FactRow kFacts[] = {
    {"metal_doubt", [](const Place& p) -> std::optional<double> { return metal_doubt(p.span); }},
    {"metal_untested",
     [](const Place& p) -> std::optional<double> { return p.span.metal_test == MetalTest::not_done; }},
    {"metal_passed",
     [](const Place& p) -> std::optional<double> { return p.span.metal_test == MetalTest::slightly_lighter; }},
    {"metal_no_change",
     [](const Place& p) -> std::optional<double> { return p.span.metal_test == MetalTest::no_change; }},
    {"metal_bad", [](const Place& p) -> std::optional<double> { return p.span.metal_test > MetalTest::no_change; }},
    {"compound", [](const Place& p) { return had(p, kCompound); }},
    {"plant", [](const Place& p) { return had(p, {ServiceKind::plant_colour}); }},
    {"minerals", [](const Place& p) { return had(p, {ServiceKind::minerals}); }},
    {"unknown_history", [](const Place& p) -> std::optional<double> { return p.span.history_unknown; }},
    {"hydroxide", [](const Place& p) { return had(p, kHydroxide); }},
    {"hydroxide_weeks", [](const Place& p) { return weeks(p.span, kHydroxide); }},
    {"thio", [](const Place& p) { return had(p, kThio); }},
    {"thio_weeks", [](const Place& p) { return weeks(p.span, kThio); }},
    {"heat_set", [](const Place& p) { return had(p, kHeat); }},
    {"heat_set_weeks", [](const Place& p) { return weeks(p.span, kHeat); }},
    {"straightened", [](const Place& p) { return had(p, kStraightened); }},
    {"head_straightened",
     [](const Place& p) -> std::optional<double> { return head_straightened_weeks(p).has_value(); }},
    {"head_straightened_weeks", [](const Place& p) { return head_straightened_weeks(p); }},
    {"perm_weeks", [](const Place& p) { return weeks(p.span, {ServiceKind::permed}); }},
    {"smooth_weeks", [](const Place& p) { return weeks(p.span, {ServiceKind::smoothed}); }},
    {"lightened_weeks", [](const Place& p) { return weeks(p.span, {ServiceKind::lightened}); }},
    {"coloured_weeks", [](const Place& p) { return weeks(p.span, {ServiceKind::coloured, ServiceKind::home_colour}); }},
    {"extension", [](const Place& p) -> std::optional<double> { return p.span.extension; }},
    {"stretch", [](const Place& p) { return p.span.wet_stretch_percent; }},
    {"stretch_unknown",
     [](const Place& p) -> std::optional<double> { return !p.span.wet_stretch_percent.has_value(); }},
    {"not_returning",
     [](const Place& p) -> std::optional<double> { return p.span.wet_stretch_percent && !p.span.stretch_returns; }},
    {"no_strand", [](const Place& p) -> std::optional<double> { return !p.span.strand.has_value(); }},
    {"strand_kept",
     [](const Place& p) -> std::optional<double> {
       return p.span.strand && p.span.strand->condition == StrandCondition::kept;
     }},
    // A strand speaks of the range it was tried with; one that does not say, of all.
    {"strand_failed",
     [](const Place& p) -> std::optional<double> {
       return p.span.strand && p.span.strand->condition >= StrandCondition::weak &&
              (p.span.strand->what.empty() || p.span.strand->what == p.range.id);
     }},
    {"took_badly", [](const Place& p) -> std::optional<double> { return p.span.earlier_cover == EarlierCover::badly; }},
};

}  // namespace

std::span<const FactRow> history_facts() { return kFacts; }

}  // namespace strandline
