// What a client says, what tests show: how a document writes it. Everything may be left out.
#pragma once

#include "strandline/facts.h"
#include "strandline/wire/decode.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

template <>
struct Words<AgeBand> {
  static constexpr std::string_view name = "AgeBand";
  static constexpr WordList<AgeBand, 4> list{{{AgeBand::unknown, "unknown"},
                                              {AgeBand::under_16, "under_16"},
                                              {AgeBand::from_16_to_17, "from_16_to_17"},
                                              {AgeBand::adult, "adult"}}};
};

template <>
struct Words<YesNo> {
  static constexpr std::string_view name = "YesNo";
  static constexpr WordList<YesNo, 3> list{{{YesNo::unknown, "unknown"}, {YesNo::no, "no"}, {YesNo::yes, "yes"}}};
};

template <>
struct Words<ColourReaction> {
  static constexpr std::string_view name = "ColourReaction";
  static constexpr WordList<ColourReaction, 6> list{{{ColourReaction::unknown, "unknown"},
                                                     {ColourReaction::none, "none"},
                                                     {ColourReaction::stinging, "stinging"},
                                                     {ColourReaction::rash, "rash"},
                                                     {ColourReaction::swelling, "swelling"},
                                                     {ColourReaction::breathing, "breathing"}}};
};

template <>
struct Words<TattooReaction> {
  static constexpr std::string_view name = "TattooReaction";
  static constexpr WordList<TattooReaction, 4> list{{{TattooReaction::unknown, "unknown"},
                                                     {TattooReaction::no_tattoo, "no_tattoo"},
                                                     {TattooReaction::no_reaction, "no_reaction"},
                                                     {TattooReaction::reaction, "reaction"}}};
};

template <>
struct Words<Medicine> {
  static constexpr std::string_view name = "Medicine";
  static constexpr WordList<Medicine, 6> list{{{Medicine::unknown, "unknown"},
                                               {Medicine::none, "none"},
                                               {Medicine::skin_thinning, "skin_thinning"},
                                               {Medicine::allergy, "allergy"},
                                               {Medicine::steroid, "steroid"},
                                               {Medicine::other, "other"}}};
};

template <>
struct Words<TestResult> {
  static constexpr std::string_view name = "TestResult";
  static constexpr WordList<TestResult, 7> list{{{TestResult::unknown, "unknown"},
                                                 {TestResult::clear, "clear"},
                                                 {TestResult::redness, "redness"},
                                                 {TestResult::itch, "itch"},
                                                 {TestResult::swelling, "swelling"},
                                                 {TestResult::rash, "rash"},
                                                 {TestResult::blisters, "blisters"}}};
};

template <>
struct Words<IncidentKind> {
  static constexpr std::string_view name = "IncidentKind";
  static constexpr WordList<IncidentKind, 6> list{{{IncidentKind::sting, "sting"},
                                                   {IncidentKind::swelling, "swelling"},
                                                   {IncidentKind::heat, "heat"},
                                                   {IncidentKind::burn, "burn"},
                                                   {IncidentKind::breakage, "breakage"},
                                                   {IncidentKind::reaction, "reaction"}}};
};

template <>
struct Words<Scalp> {
  static constexpr std::string_view name = "Scalp";
  static constexpr WordList<Scalp, 11> list{{{Scalp::unknown, "unknown"},
                                             {Scalp::calm, "calm"},
                                             {Scalp::sensitive, "sensitive"},
                                             {Scalp::broken, "broken"},
                                             {Scalp::infected, "infected"},
                                             {Scalp::infested, "infested"},
                                             {Scalp::plaque_calm, "plaque_calm"},
                                             {Scalp::plaque_flare, "plaque_flare"},
                                             {Scalp::sunburnt, "sunburnt"},
                                             {Scalp::burn_healing, "burn_healing"},
                                             {Scalp::operated, "operated"}}};
};

template <>
struct Words<HairLoss> {
  static constexpr std::string_view name = "HairLoss";
  static constexpr WordList<HairLoss, 5> list{{{HairLoss::unknown, "unknown"},
                                               {HairLoss::none, "none"},
                                               {HairLoss::thinning, "thinning"},
                                               {HairLoss::shedding, "shedding"},
                                               {HairLoss::patchy, "patchy"}}};
};

template <>
struct Words<FaceHair> {
  static constexpr std::string_view name = "FaceHair";
  static constexpr WordList<FaceHair, 3> list{
      {{FaceHair::none, "none"}, {FaceHair::beard, "beard"}, {FaceHair::brows, "brows"}}};
};

template <>
struct Words<MetalTest> {
  static constexpr std::string_view name = "MetalTest";
  static constexpr WordList<MetalTest, 7> list{{{MetalTest::not_done, "not_done"},
                                                {MetalTest::slightly_lighter, "slightly_lighter"},
                                                {MetalTest::no_change, "no_change"},
                                                {MetalTest::odd_colour, "odd_colour"},
                                                {MetalTest::heat, "heat"},
                                                {MetalTest::smell, "smell"},
                                                {MetalTest::breaks, "breaks"}}};
};

template <>
struct Words<StrandCondition> {
  static constexpr std::string_view name = "StrandCondition";
  static constexpr WordList<StrandCondition, 4> list{{{StrandCondition::unknown, "unknown"},
                                                      {StrandCondition::kept, "kept"},
                                                      {StrandCondition::weak, "weak"},
                                                      {StrandCondition::broke, "broke"}}};
};

template <>
struct Words<EarlierCover> {
  static constexpr std::string_view name = "EarlierCover";
  static constexpr WordList<EarlierCover, 3> list{
      {{EarlierCover::unknown, "unknown"}, {EarlierCover::well, "well"}, {EarlierCover::badly, "badly"}}};
};

template <>
struct Fields<SkinTest> {
  static constexpr std::string_view name = "SkinTest";
  static constexpr auto list = std::make_tuple(
      field("maker", &SkinTest::maker, {.max_length = 60, .note = "whose colour was put on"}),
      field("product", &SkinTest::product, {.max_length = 60}),
      field("read", &SkinTest::read, {.date = true, .note = "date of the reading; empty = not read"}),
      field("result", &SkinTest::result),
      field("voided", &SkinTest::voided,
            {.note = "since then a tattoo, a reaction, an illness, a new medicine, or one that hides a reaction"}));
};

template <>
struct Fields<Incident> {
  static constexpr std::string_view name = "Incident";
  static constexpr auto list =
      std::make_tuple(field("kind", &Incident::kind, {.required = true}),
                      field("weeks_ago", &Incident::weeks_ago, {.min = 0, .max = 1500, .note = "absent = today"}),
                      field("healed", &Incident::healed));
};

template <>
struct Fields<Answers> {
  static constexpr std::string_view name = "Answers";
  using A = Answers;
  static constexpr auto list = std::make_tuple(
      field("age", &A::age), field("guardian_signed", &A::guardian_signed),
      field("reaction", &A::reaction, {.note = "to hair colour, ever; the worst"}),
      field("tattoo", &A::tattoo, {.note = "to a black-henna tattoo"}),
      field("lightener_reaction", &A::lightener_reaction), field("related_allergy", &A::related_allergy),
      field("asthma", &A::asthma), field("face_rash", &A::face_rash),
      field("doctor_agrees", &A::doctor_agrees, {.note = "opens nothing that stops"}),
      field("pregnancy_week", &A::pregnancy_week, {.min = 0, .max = 45, .note = "0 = week unknown"}),
      field("treatment_ended", &A::treatment_ended,
            {.min = 0, .max = 1200, .note = "months since chemotherapy or radiotherapy of the head"}),
      field("medicine", &A::medicine), field("scalp", &A::scalp),
      field("scalp_weeks", &A::scalp_weeks, {.min = 0, .max = 1500, .note = "since an operation of the scalp"}),
      field("washed_hours", &A::washed_hours, {.min = 0, .max = 1000, .note = "since the scalp was washed"}),
      field("incidents", &A::incidents, {.max_items = 20}));
};

template <>
struct Fields<StrandTest> {
  static constexpr std::string_view name = "StrandTest";
  static constexpr auto list =
      std::make_tuple(field("what", &StrandTest::what, {.max_length = 60, .note = "id of the range; empty = not said"}),
                      field("minutes", &StrandTest::minutes, {.min = 0, .max = 240}),
                      field("level", &StrandTest::level, {.min = 1, .max = 10, .note = "reached"}),
                      field("condition", &StrandTest::condition));
};

}  // namespace strandline::wire
