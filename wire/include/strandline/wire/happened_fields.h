// Keys of the facts of a visit.
#pragma once

#include "strandline/wire/bowl_fields.h"
#include "strandline/wire/everyday_fields.h"
#include "strandline/wire/happened.h"
#include "strandline/wire/head_fields.h"
#include "strandline/wire/looked_fields.h"

namespace strandline::wire {

inline constexpr Rules fact_id{.required = true, .max_length = 80};
inline constexpr Rules sentences_rules{.max_length = 600, .max_items = 60};
inline constexpr Rules free_text{.max_length = 2000};
inline constexpr Rules visit_minutes{.min = 0, .max = 1440, .note = "minutes since hands went on"};

template <>
struct Fields<GateAnswered> {
  static constexpr std::string_view name = "GateAnswered";
  using G = GateAnswered;
  static constexpr auto list = std::make_tuple(field("skin_test", &G::skin_test, {.date = true}),
                                               field("test", &G::test), field("answers", &G::answers));
};

template <>
struct Fields<GateCorrected> {
  static constexpr std::string_view name = "GateCorrected";
  using G = GateCorrected;
  static constexpr auto list =
      std::make_tuple(field("corrects", &G::corrects, fact_id),
                      field("why", &G::why, {.required = true, .max_length = 600}), inlined(&G::now));
};

template <>
struct Fields<Signature> {
  static constexpr std::string_view name = "Signature";
  using S = Signature;
  static constexpr auto list = std::make_tuple(
      field("strokes", &S::strokes,
            {.min = 0, .max = 20, .max_items = 4000, .note = "x, y, x, y ... as shares of the width of the pad"}),
      field("height", &S::height, {.min = 0, .max = 20, .note = "of the pad, as a share of its width"}),
      field("typed", &S::typed, {.max_length = 120, .note = "where a hand cannot draw"}));
};

template <>
struct Fields<WishedZone> {
  static constexpr std::string_view name = "WishedZone";
  using W = WishedZone;
  static constexpr auto list =
      std::make_tuple(field("zone", &W::zone, {.required = true, .max_length = 130}),
                      field("level", &W::level, {.required = true, .min = 1, .max = 10}),
                      field("tone", &W::tone, {.required = true}), field("hex", &W::hex, {.max_length = 7}));
};

template <>
struct Fields<Agreed> {
  static constexpr std::string_view name = "Agreed";
  using A = Agreed;
  static constexpr auto list = std::make_tuple(
      field("language", &A::language, {.required = true, .max_length = 35, .note = "BCP 47"}),
      field("interpreter", &A::interpreter, {.max_length = 120}),
      field("wished", &A::wished, {.required = true, .max_items = 500}),
      field("words", &A::words, {.required = true, .max_length = 600, .max_items = 60}),
      field("will_not", &A::will_not, sentences_rules), field("alternatives", &A::alternatives, sentences_rules),
      field("risks", &A::risks, sentences_rules), field("upkeep", &A::upkeep, sentences_rules),
      field("raises", &A::raises, sentences_rules),
      field("minutes", &A::minutes, {.required = true, .min = 0, .max = 1440}),
      field("price_from", &A::price_from, {.required = true, .min = 0, .max = 1e6}),
      field("price_to", &A::price_to, {.required = true, .min = 0, .max = 1e6}),
      field("currency", &A::currency, {.required = true, .max_length = 8}),
      field("bowls", &A::bowls, {.max_items = 12}), field("signature", &A::signature, {.required = true}));
};

template <>
struct Fields<AgreeWithdrawn> {
  static constexpr std::string_view name = "AgreeWithdrawn";
  using A = AgreeWithdrawn;
  static constexpr auto list =
      std::make_tuple(field("fact", &A::fact, fact_id), field("why", &A::why, {.required = true, .max_length = 600}));
};

template <>
struct Fields<Mixed> {
  static constexpr std::string_view name = "Mixed";
  using M = Mixed;
  static constexpr auto list = std::make_tuple(
      inlined(&M::bowl), field("mix", &M::mix, {.min = 1, .max = 99}),
      field("names", &M::names, {.max_items = 20, .note = "of its parts, in their order"}),
      field("range_name", &M::range_name, {.max_length = 120}), field("at_min", &M::at_min, visit_minutes));
};

template <>
struct Fields<Applied> {
  static constexpr std::string_view name = "Applied";
  using A = Applied;
  static constexpr auto list =
      std::make_tuple(field("zone", &A::zone, {.required = true, .max_length = 130}),
                      field("bowl", &A::bowl, {.required = true, .max_length = 20}),
                      field("from_min", &A::from_min, visit_minutes), field("until_min", &A::until_min, visit_minutes));
};

template <>
struct Fields<ReachedZone> {
  static constexpr std::string_view name = "ReachedZone";
  using R = ReachedZone;
  static constexpr auto list =
      std::make_tuple(field("zone", &R::zone, {.required = true, .max_length = 130}),
                      field("level", &R::level, {.required = true, .min = 1, .max = 10}),
                      field("tone", &R::tone, {.required = true}), field("measured", &R::measured));
};

template <>
struct Words<Pleased> {
  static constexpr std::string_view name = "Pleased";
  static constexpr WordList<Pleased, 4> list{
      {{Pleased::not_asked, "not_asked"}, {Pleased::yes, "yes"}, {Pleased::partly, "partly"}, {Pleased::no, "no"}}};
};

template <>
struct Words<RedoCause> {
  static constexpr std::string_view name = "RedoCause";
  static constexpr WordList<RedoCause, 8> list{{{RedoCause::tone, "tone"},
                                                {RedoCause::level, "level"},
                                                {RedoCause::patchy, "patchy"},
                                                {RedoCause::white_shows, "white_shows"},
                                                {RedoCause::faded, "faded"},
                                                {RedoCause::broke, "broke"},
                                                {RedoCause::wish_changed, "wish_changed"},
                                                {RedoCause::other, "other"}}};
};

template <>
struct Fields<Redo> {
  static constexpr std::string_view name = "Redo";
  static constexpr auto list =
      std::make_tuple(field("visit", &Redo::visit, fact_id), field("cause", &Redo::cause, {.required = true}));
};

template <>
struct Fields<VisitResult> {
  static constexpr std::string_view name = "VisitResult";
  using V = VisitResult;
  static constexpr auto list = std::make_tuple(
      field("zones", &V::zones, {.required = true, .max_items = 500}),
      field("foreseen", &V::foreseen, {.max_items = 500, .note = "of what was mixed, before anybody looked"}),
      field("after", &V::after, {.note = "the head as it left"}), field("pleased", &V::pleased),
      field("said", &V::said, free_text), field("note", &V::note, free_text), field("redo", &V::redo),
      field("cut_cm", &V::cut_cm, {.min = 0, .max = 150}), field("corrects", &V::corrects, {.max_length = 80}));
};

template <>
struct Fields<StoppedNow> {
  static constexpr std::string_view name = "StoppedNow";
  using S = StoppedNow;
  static constexpr auto list =
      std::make_tuple(field("kind", &S::kind), field("at_min", &S::at_min, visit_minutes),
                      field("zones", &S::zones, {.max_items = 500}), field("bowls", &S::bowls, {.max_items = 12}));
};

template <>
struct Fields<StopOver> {
  static constexpr std::string_view name = "StopOver";
  using S = StopOver;
  static constexpr auto list =
      std::make_tuple(field("fact", &S::fact, {.required = true, .max_length = 80}), field("why", &S::why, free_text));
};

template <>
struct Words<Feels> {
  static constexpr std::string_view name = "Feels";
  static constexpr WordList<Feels, 5> list{{{Feels::well, "well"},
                                            {Feels::cold, "cold"},
                                            {Feels::warm, "warm"},
                                            {Feels::itches, "itches"},
                                            {Feels::stings, "stings"}}};
};

template <>
struct Fields<Comfort> {
  static constexpr std::string_view name = "Comfort";
  using C = Comfort;
  static constexpr auto list =
      std::make_tuple(field("feels", &C::feels, {.required = true}), field("at_min", &C::at_min, visit_minutes),
                      field("said", &C::said, free_text));
};

template <>
struct Words<Serious> {
  static constexpr std::string_view name = "Serious";
  static constexpr WordList<Serious, 7> list{{{Serious::no, "no"},
                                              {Serious::incapacity, "incapacity"},
                                              {Serious::disability, "disability"},
                                              {Serious::hospital, "hospital"},
                                              {Serious::birth_defect, "birth_defect"},
                                              {Serious::life, "life"},
                                              {Serious::death, "death"}}};
};

template <>
struct Words<Where> {
  static constexpr std::string_view name = "Where";
  static constexpr WordList<Where, 9> list{{{Where::scalp, "scalp"},
                                            {Where::hair, "hair"},
                                            {Where::eyes, "eyes"},
                                            {Where::face, "face"},
                                            {Where::neck, "neck"},
                                            {Where::hands, "hands"},
                                            {Where::lips, "lips"},
                                            {Where::airways, "airways"},
                                            {Where::elsewhere, "elsewhere"}}};
};

template <>
struct Words<Course> {
  static constexpr std::string_view name = "Course";
  static constexpr WordList<Course, 5> list{{{Course::not_known, "not_known"},
                                             {Course::over, "over"},
                                             {Course::better, "better"},
                                             {Course::the_same, "the_same"},
                                             {Course::worse, "worse"}}};
};

template <>
struct Fields<IncidentRecord> {
  static constexpr std::string_view name = "IncidentRecord";
  using I = IncidentRecord;
  static constexpr auto list = std::make_tuple(
      field("kind", &I::kind, {.required = true}), field("serious", &I::serious, {.required = true}),
      field("where", &I::where, {.max_items = 9}), field("inside_application", &I::inside_application),
      field("onset", &I::onset, {.required = true, .date = true}), field("onset_note", &I::onset_note, free_text),
      field("signs", &I::signs, {.required = true, .max_length = 2000}), field("first_aid", &I::first_aid, free_text),
      field("advice", &I::advice, free_text), field("doctor", &I::doctor, free_text),
      field("history", &I::history, free_text),
      field("product", &I::product, {.required = true, .max_length = 2000, .note = "its full name"}),
      field("maker", &I::maker, free_text), field("batch", &I::batch, free_text),
      field("used_before", &I::used_before, free_text), field("birth_year", &I::birth_year, {.max_length = 4}),
      field("sex", &I::sex, {.max_length = 40}), field("country", &I::country, {.max_length = 60}),
      field("confirmed_by_doctor", &I::confirmed_by_doctor), field("stopped_using", &I::stopped_using),
      field("happened_again", &I::happened_again), field("course", &I::course),
      field("told_whom", &I::told_whom, free_text), field("may_be_shared", &I::may_be_shared),
      field("corrects", &I::corrects, {.max_length = 80}));
};

template <>
struct Fields<AftercareGiven> {
  static constexpr std::string_view name = "AftercareGiven";
  using A = AftercareGiven;
  static constexpr auto list =
      std::make_tuple(field("language", &A::language, {.required = true, .max_length = 35, .note = "BCP 47"}),
                      field("words", &A::words, {.required = true, .max_length = 600, .max_items = 60}));
};

template <>
struct Fields<Rebooked> {
  static constexpr std::string_view name = "Rebooked";
  using R = Rebooked;
  static constexpr auto list =
      std::make_tuple(field("from", &R::from, {.date = true}), field("until", &R::until, {.date = true}),
                      field("day", &R::day, {.date = true, .note = "that was agreed; empty = none yet"}),
                      field("test_by", &R::test_by, {.date = true, .note = "of the next skin test"}));
};

// The word, the record and its version, in the order in which they happen.
template <class T>
struct Kind {
  using Body = T;
  std::string_view kind;
  int version;
  bool before_the_end;
};

inline constexpr auto happened_kinds = std::make_tuple(
    Kind<GateAnswered>{"gate.answered", 1, true}, Kind<GateCorrected>{"gate.corrected", 1, false},
    Kind<Agreed>{"agreed", 1, true}, Kind<AgreeWithdrawn>{"agree.withdrawn", 1, false}, Kind<Mixed>{"mixed", 1, true},
    Kind<Applied>{"applied", 1, true}, Kind<StoppedNow>{"stopped", 1, false}, Kind<StopOver>{"stopped.over", 1, false},
    Kind<Comfort>{"comfort", 1, true}, Kind<IncidentRecord>{"incident", 1, false},
    Kind<VisitResult>{"result", 1, false}, Kind<AftercareGiven>{"aftercare.given", 1, false},
    Kind<Rebooked>{"rebooked", 1, false}, Kind<Refused>{"refused", 1, false}, Kind<HandedOver>{"handed.over", 1, true},
    Kind<HandoverAccepted>{"handover.accepted", 1, true}, Kind<Briefed>{"briefed", 1, true},
    Kind<BriefConfirmed>{"brief.confirmed", 1, true}, Kind<Prepared>{"prepared", 1, true}, Kind<Paid>{"paid", 1, false},
    Kind<Advised>{"advised", 1, false}, Kind<WorkedClean>{"worked.clean", 1, false},
    Kind<Committed>{"committed", 1, true}, Kind<SignedOff>{"signed.off", 1, false}, Kind<Photo>{"photo", 1, false},
    Kind<TestMade>{"test.made", 1, false}, Kind<Checked>{"checked", 1, true}, Kind<Finished>{"finished", 1, false},
    Kind<Consented>{"consented", 1, false});

}  // namespace strandline::wire
