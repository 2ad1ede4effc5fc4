// What a client says before anything is mixed, and what a skin test showed. Everything may be unknown; what is unknown
// is not guessed: a rule that needs it asks.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/head.h"

namespace strandline {

enum class AgeBand { unknown, under_16, from_16_to_17, adult };
enum class YesNo { unknown, no, yes };
// To hair colour, however long ago; the worst of them.
enum class ColourReaction { unknown, none, stinging, rash, swelling, breathing };
// To a black-henna temporary tattoo.
enum class TattooReaction { unknown, no_tattoo, no_reaction, reaction };
enum class Medicine { unknown, none, skin_thinning, allergy, steroid, other };
enum class TestResult { unknown, clear, redness, itch, swelling, rash, blisters };
enum class IncidentKind { sting, swelling, heat, burn, breakage, reaction };

// The last skin test; its day is the visit's `skin_test`.
struct SkinTest {
  std::string maker, product;  // what was put on
  std::string read;            // civil date of the reading, empty = not read
  TestResult result = TestResult::unknown;
  bool voided = false;  // since then: a tattoo, a reaction, an illness, a new medicine, or one that hides a reaction
};

struct Incident {
  IncidentKind kind = IncidentKind::sting;
  std::optional<double> weeks_ago;  // absent = unknown, counts as today
  bool healed = false;
};

struct Answers {
  AgeBand age = AgeBand::unknown;
  YesNo guardian_signed = YesNo::unknown;
  ColourReaction reaction = ColourReaction::unknown;
  TattooReaction tattoo = TattooReaction::unknown;
  YesNo lightener_reaction = YesNo::unknown;  // hives, swelling, wheeze, faintness within the hour
  YesNo related_allergy = YesNo::unknown;     // rubber, textile dyes, some anaesthetics, sulfonamides
  YesNo asthma = YesNo::unknown;
  YesNo face_rash = YesNo::unknown;
  YesNo doctor_agrees = YesNo::unknown;   // a doctor was asked and agrees; opens nothing that stops
  std::optional<double> pregnancy_week;   // 0 = week unknown; absent = not pregnant or not said
  std::optional<double> treatment_ended;  // months since chemotherapy or radiotherapy of the head
  Medicine medicine = Medicine::unknown;
  Scalp scalp = Scalp::unknown;
  std::optional<double> scalp_weeks;   // since the operation
  std::optional<double> washed_hours;  // since the scalp was washed
  std::vector<Incident> incidents;     // here or elsewhere
};

}  // namespace strandline
