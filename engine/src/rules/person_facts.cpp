#include <algorithm>

#include "rules/place.h"

namespace strandline {
namespace {

const Answers& told(const Place& p) { return p.visit.answers; }

Scalp scalp(const Place& p) { return p.area.scalp != Scalp::unknown ? p.area.scalp : told(p).scalp; }

template <class... S>
bool scalp_is(const Place& p, S... any) {
  return ((scalp(p) == any) || ...);
}

bool reacted(const Place& p) { return told(p).reaction >= ColourReaction::rash; }

// Weeks since the latest of these; unknown counts as now.
template <class Kind>
std::optional<double> incident_weeks(const Place& p, Kind&& counts) {
  std::optional<double> weeks;
  for (const Incident& i : told(p).incidents)
    if (counts(i)) weeks = std::min(weeks.value_or(kNoLimit), i.weeks_ago.value_or(0));
  return weeks;
}

constexpr FactRow kFacts[] = {
    {"always", [](const Place&) -> std::optional<double> { return 1; }},
    {"age_unknown", [](const Place& p) -> std::optional<double> { return told(p).age == AgeBand::unknown; }},
    {"under_16", [](const Place& p) -> std::optional<double> { return told(p).age == AgeBand::under_16; }},
    {"minor",
     [](const Place& p) -> std::optional<double> {
       return told(p).age == AgeBand::under_16 || told(p).age == AgeBand::from_16_to_17;
     }},
    {"no_guardian", [](const Place& p) -> std::optional<double> { return told(p).guardian_signed != YesNo::yes; }},
    {"reaction_unknown",
     [](const Place& p) -> std::optional<double> { return told(p).reaction == ColourReaction::unknown; }},
    {"reacted", [](const Place& p) -> std::optional<double> { return reacted(p); }},
    {"stinging", [](const Place& p) -> std::optional<double> { return told(p).reaction == ColourReaction::stinging; }},
    {"tattoo_unknown",
     [](const Place& p) -> std::optional<double> { return told(p).tattoo == TattooReaction::unknown; }},
    {"tattoo_reacted",
     [](const Place& p) -> std::optional<double> { return told(p).tattoo == TattooReaction::reaction; }},
    {"lightener_reacted",
     [](const Place& p) -> std::optional<double> { return told(p).lightener_reaction == YesNo::yes; }},
    {"related_allergy", [](const Place& p) -> std::optional<double> { return told(p).related_allergy == YesNo::yes; }},
    {"asthma", [](const Place& p) -> std::optional<double> { return told(p).asthma == YesNo::yes; }},
    {"doctor_not_asked", [](const Place& p) -> std::optional<double> { return told(p).doctor_agrees != YesNo::yes; }},
    {"pregnant", [](const Place& p) -> std::optional<double> { return told(p).pregnancy_week.has_value(); }},
    {"treated_months", [](const Place& p) -> std::optional<double> { return told(p).treatment_ended; }},
    {"skin_medicine",
     [](const Place& p) -> std::optional<double> { return told(p).medicine == Medicine::skin_thinning; }},
    {"face_rash", [](const Place& p) -> std::optional<double> { return told(p).face_rash == YesNo::yes; }},
    {"scalp_unknown", [](const Place& p) -> std::optional<double> { return scalp(p) == Scalp::unknown; }},
    {"scalp_hurt",
     [](const Place& p) -> std::optional<double> {
       return scalp_is(p, Scalp::sensitive, Scalp::broken, Scalp::plaque_flare, Scalp::sunburnt, Scalp::burn_healing);
     }},
    {"scalp_sore",
     [](const Place& p) -> std::optional<double> {
       return scalp_is(p, Scalp::broken, Scalp::plaque_flare, Scalp::sunburnt, Scalp::burn_healing);
     }},
    {"scalp_infected",
     [](const Place& p) -> std::optional<double> { return scalp_is(p, Scalp::infected, Scalp::infested); }},
    {"plaque_calm", [](const Place& p) -> std::optional<double> { return scalp_is(p, Scalp::plaque_calm); }},
    {"not_calm", [](const Place& p) -> std::optional<double> { return !scalp_is(p, Scalp::calm); }},
    {"operated_weeks",
     [](const Place& p) -> std::optional<double> {
       if (!scalp_is(p, Scalp::operated)) return std::nullopt;
       return told(p).scalp_weeks.value_or(0);
     }},
    {"washed_hours", [](const Place& p) { return told(p).washed_hours; }},
    {"incident_weeks", [](const Place& p) { return incident_weeks(p, [](const Incident&) { return true; }); }},
    {"incident_open",
     [](const Place& p) -> std::optional<double> {
       return std::any_of(told(p).incidents.begin(), told(p).incidents.end(), [](const Incident& i) {
         return !i.healed && i.kind != IncidentKind::breakage && i.kind != IncidentKind::sting;
       });
     }},
    {"broke_weeks",
     [](const Place& p) {
       return incident_weeks(p, [](const Incident& i) { return i.kind == IncidentKind::breakage; });
     }},
    {"beard", [](const Place& p) -> std::optional<double> { return p.area.face == FaceHair::beard; }},
    {"brows", [](const Place& p) -> std::optional<double> { return p.area.face == FaceHair::brows; }},
    {"shedding",
     [](const Place& p) -> std::optional<double> {
       return p.area.loss == HairLoss::shedding || p.area.loss == HairLoss::patchy;
     }},
    {"thin", [](const Place& p) -> std::optional<double> { return p.area.loss == HairLoss::thinning; }},
    {"hairline",
     [](const Place& p) -> std::optional<double> {
       return p.area.kind == AreaKind::front_hairline || p.area.kind == AreaKind::temples;
     }},
    {"packets", [](const Place& p) -> std::optional<double> { return p.area.woven.has_value(); }},
    {"in_the_open", [](const Place& p) -> std::optional<double> { return !p.area.woven.has_value(); }},
};

}  // namespace

std::span<const FactRow> person_facts() { return kFacts; }

}  // namespace strandline
