#include <algorithm>

#include "mix/habits.h"
#include "rules/place.h"

namespace strandline {
namespace {

constexpr double kHalf = 0.5;  // most of the fibres; half a level

double lightened(const Span& s) { return share_of(s, ColourOrigin::lightened); }
double dyed(const Span& s) { return share_of(s, ColourOrigin::tinted) + share_of(s, ColourOrigin::direct); }
double white(const Span& s) {
  return share_of(s,
                  [](const Population& p) { return p.kind == FibreKind::white && p.origin == ColourOrigin::natural; });
}

bool altered(const Span& s) {
  const auto counts = [](const Service& service) { return service.kind != ServiceKind::minerals; };
  return s.history_unknown || lightened(s) + dyed(s) > 0 || std::any_of(s.services.begin(), s.services.end(), counts);
}

// Levels the wish is lighter than the hair; none without a wish.
std::optional<double> lift(const Place& p) {
  if (!p.target || p.target->leave) return std::nullopt;
  return asked_lift(p.span, *p.target);
}
std::optional<double> darker(const Place& p) {
  const auto by = lift(p);
  return by ? std::optional(-*by) : std::nullopt;
}

double porosity(const Place& p) { return p.span.porosity.value; }
double own_colour(const Span& s) { return share_of(s, ColourOrigin::natural); }

// The darkest natural level of the span.
std::optional<double> base(const Place& p) {
  std::optional<double> level;
  for (const Population& own : p.span.populations)
    if (own.kind == FibreKind::pigmented)
      level = std::min(level.value_or(kNoLimit), own.natural_level.value_or(own.level).value);
  return level;
}

// Hair that is not lightened, blended or taken darker by half a level or more.
bool deposits(const Place& p) {
  if (!p.target || p.target->leave || lightened(p.span) > kHalf) return false;
  return own_colour(p.span) > kHalf || darker(p).value_or(0) > kHalf;
}

bool freshly_permed(const Place& p) {
  return std::any_of(p.span.services.begin(), p.span.services.end(), [&](const Service& s) {
    return s.kind == ServiceKind::permed && s.weeks_ago.value_or(0) < p.visit.policy.formula.straightened_weeks;
  });
}

constexpr FactRow kFacts[] = {
    {"altered", [](const Place& p) -> std::optional<double> { return altered(p.span); }},
    {"coloured", [](const Place& p) -> std::optional<double> { return dyed(p.span) > kHalf; }},
    {"dyed", [](const Place& p) -> std::optional<double> { return dyed(p.span) > kHalf; }},
    {"direct_under",
     [](const Place& p) -> std::optional<double> {
       return share_of(p.span, [](const Population& own) { return own.origin == ColourOrigin::direct; }) > 0;
     }},
    {"lightened", [](const Place& p) -> std::optional<double> { return lightened(p.span) > 0; }},
    {"some_lightened", [](const Place& p) -> std::optional<double> { return lightened(p.span) > 0; }},
    {"lightened_share", [](const Place& p) -> std::optional<double> { return lightened(p.span); }},
    {"not_natural", [](const Place& p) -> std::optional<double> { return lightened(p.span) + dyed(p.span) > 0; }},
    {"own_colour", [](const Place& p) -> std::optional<double> { return own_colour(p.span) > kHalf; }},
    {"deposits", [](const Place& p) -> std::optional<double> { return deposits(p); }},
    {"refreshes", [](const Place& p) -> std::optional<double> { return dyed(p.span) > kHalf; }},
    {"permed_deposits", [](const Place& p) -> std::optional<double> { return deposits(p) && freshly_permed(p); }},
    {"porous_deposits",
     [](const Place& p) -> std::optional<double> {
       return deposits(p) && darker(p).value_or(0) > kHalf && porosity(p) >= Constants{}.fill_from_porosity;
     }},
    {"porosity", [](const Place& p) -> std::optional<double> { return porosity(p); }},
    {"white", [](const Place& p) -> std::optional<double> { return white(p.span); }},
    {"white_apart", [](const Place& p) -> std::optional<double> { return p.white_apart; }},
    {"resistance", [](const Place& p) -> std::optional<double> { return p.span.resistance; }},
    {"base", [](const Place& p) { return base(p); }},
    {"growth_cm", [](const Place& p) -> std::optional<double> { return p.span.to_cm - p.span.from_cm; }},
    {"lift", [](const Place& p) { return lift(p); }},
    {"darker", [](const Place& p) { return darker(p); }},
    // Lengths of the same area that are natural too.
    {"natural_beyond",
     [](const Place& p) -> std::optional<double> {
       return std::any_of(p.area.spans.begin(), p.area.spans.end(), [&](const Span& s) {
         return &s != &p.span && s.from_cm >= p.span.to_cm && lightened(s) + dyed(s) < kHalf;
       });
     }},
    {"lighter", [](const Place& p) -> std::optional<double> { return lift(p).value_or(0) > kHalf; }},
    {"change",
     [](const Place& p) {
       const auto by = lift(p);
       return by ? std::optional(std::abs(*by)) : std::nullopt;
     }},
    {"cool",
     [](const Place& p) -> std::optional<double> {
       return p.target && (p.target->tone == Tone::ash || p.target->tone == Tone::violet);
     }},
    // A tone that no natural hair has, deeper than a pastel.
    {"vivid",
     [](const Place& p) -> std::optional<double> {
       constexpr double kPastelFrom = 8.5;
       return p.target && !p.target->leave && p.target->level < kPastelFrom &&
              (p.target->tone == Tone::violet || p.target->tone == Tone::green);
     }},
    {"direct_at_hand",
     [](const Place& p) -> std::optional<double> {
       return std::any_of(p.visit.shelf.products.begin(), p.visit.shelf.products.end(),
                          [](const Product& own) { return own.cls == ProductClass::direct && own.stock_g > 0; });
     }},
    {"wish_level",
     [](const Place& p) { return p.target && !p.target->leave ? std::optional(p.target->level) : std::nullopt; }},
    {"peroxide", [](const Place& p) -> std::optional<double> { return !p.range.developer_percents.empty(); }},
    {"lightening", [](const Place& p) -> std::optional<double> { return p.range.cls == ProductClass::lightener; }},
    {"strongest_bottle",
     [](const Place& p) -> std::optional<double> {
       const std::vector<double>& own = p.range.developer_percents;
       return own.empty() ? 0 : *std::max_element(own.begin(), own.end());
     }},
};

}  // namespace

std::span<const FactRow> hair_facts() { return kFacts; }

}  // namespace strandline
