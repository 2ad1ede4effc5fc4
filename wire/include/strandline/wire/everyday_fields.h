// Keys of what happens around the bowl.
#pragma once

#include "strandline/wire/bowl_fields.h"
#include "strandline/wire/everyday.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

inline constexpr Rules who_rules{.required = true, .max_length = 120};
inline constexpr Rules sentence_rules{.max_length = 600};
inline constexpr Rules needed_sentence{.required = true, .max_length = 600};
inline constexpr Rules named_fact{.required = true, .max_length = 80};
inline constexpr Rules money_rules{.min = 0, .max = 1e6};
inline constexpr Rules day_minutes{.min = 0, .max = 1440, .note = "minutes"};

template <>
struct Words<SaidTo> {
  static constexpr std::string_view name = "SaidTo";
  static constexpr WordList<SaidTo, 2> list{{{SaidTo::client, "client"}, {SaidTo::parent, "parent"}}};
};
template <>
struct Fields<Refused> {
  static constexpr std::string_view name = "Refused";
  static constexpr auto list = std::make_tuple(
      field("reasons", &Refused::reasons, {.required = true, .max_length = 600, .max_items = 20}),
      field("offer", &Refused::offer, sentence_rules), field("words", &Refused::words, needed_sentence),
      field("said_to", &Refused::said_to),
      field("refer_to", &Refused::refer_to, {.max_length = 200, .note = "who can help; empty = nobody"}));
};

template <>
struct Fields<HandedOver> {
  static constexpr std::string_view name = "HandedOver";
  using H = HandedOver;
  static constexpr auto list = std::make_tuple(
      field("to", &H::to, who_rules), field("on_hair", &H::on_hair, {.max_length = 600, .max_items = 60}),
      field("next", &H::next, needed_sentence), field("promised", &H::promised, sentence_rules));
};
template <>
struct Fields<HandoverAccepted> {
  static constexpr std::string_view name = "HandoverAccepted";
  static constexpr auto list = std::make_tuple(field("fact", &HandoverAccepted::fact, named_fact),
                                               field("name", &HandoverAccepted::name, who_rules));
};
template <>
struct Fields<Briefed> {
  static constexpr std::string_view name = "Briefed";
  static constexpr auto list =
      std::make_tuple(field("to", &Briefed::to, who_rules), field("task", &Briefed::task, needed_sentence));
};
template <>
struct Fields<BriefConfirmed> {
  static constexpr std::string_view name = "BriefConfirmed";
  static constexpr auto list = std::make_tuple(field("fact", &BriefConfirmed::fact, named_fact),
                                               field("name", &BriefConfirmed::name, who_rules));
};
template <>
struct Fields<Prepared> {
  static constexpr std::string_view name = "Prepared";
  static constexpr auto list =
      std::make_tuple(field("done", &Prepared::done, {.required = true, .max_length = 200, .max_items = 40}),
                      field("left_out", &Prepared::left_out, {.max_length = 200, .max_items = 40}),
                      field("name", &Prepared::name, {.max_length = 120}));
};

template <>
struct Words<PaidBy> {
  static constexpr std::string_view name = "PaidBy";
  static constexpr WordList<PaidBy, 5> list{{{PaidBy::cash, "cash"},
                                             {PaidBy::card, "card"},
                                             {PaidBy::transfer, "transfer"},
                                             {PaidBy::voucher, "voucher"},
                                             {PaidBy::nothing, "nothing"}}};
};
template <>
struct Fields<PaidLine> {
  static constexpr std::string_view name = "PaidLine";
  static constexpr auto list =
      std::make_tuple(field("words", &PaidLine::words, {.required = true, .max_length = 200}),
                      field("price", &PaidLine::price, {.required = true, .min = 0, .max = 1e6}));
};
template <>
struct Fields<Paid> {
  static constexpr std::string_view name = "Paid";
  static constexpr auto list =
      std::make_tuple(field("lines", &Paid::lines, {.required = true, .max_items = 60}),
                      field("deposit", &Paid::deposit, {.min = 0, .max = 1e6, .note = "paid before, deducted"}),
                      field("paid", &Paid::paid, {.required = true, .min = 0, .max = 1e6}),
                      field("currency", &Paid::currency, {.required = true, .max_length = 8}),
                      field("receipt", &Paid::receipt, {.max_length = 60}), field("by", &Paid::by));
};

template <>
struct Fields<Advised> {
  static constexpr std::string_view name = "Advised";
  static constexpr auto list =
      std::make_tuple(field("product", &Advised::product, {.max_length = 120}),
                      field("name", &Advised::name, {.required = true, .max_length = 200}),
                      field("reason", &Advised::reason, needed_sentence), field("price", &Advised::price, money_rules),
                      field("taken", &Advised::taken));
};

template <>
struct Fields<Bin> {
  static constexpr std::string_view name = "Bin";
  static constexpr auto list = std::make_tuple(field("bin", &Bin::bin, {.required = true, .max_length = 120}),
                                               field("grams", &Bin::grams, {.min = 0, .max = 20000, .note = "g"}));
};
template <>
struct Fields<WorkedClean> {
  static constexpr std::string_view name = "WorkedClean";
  using W = WorkedClean;
  static constexpr auto list = std::make_tuple(
      field("agent", &W::agent, {.max_length = 200, .note = "of disinfection"}),
      field("tools", &W::tools, {.max_length = 200}), field("contact_min", &W::contact_min, day_minutes),
      field("gloves", &W::gloves, {.min = 0, .max = 50, .note = "pairs"}),
      field("powder_min", &W::powder_min, day_minutes), field("break_min", &W::break_min, day_minutes),
      field("bins", &W::bins, {.max_items = 12}));
};

template <>
struct Fields<Committed> {
  static constexpr std::string_view name = "Committed";
  using C = Committed;
  static constexpr auto list = std::make_tuple(
      field("zone", &C::zone, {.max_length = 130}), field("level", &C::level, {.required = true, .min = 1, .max = 10}),
      field("bowls", &C::bowls, {.required = true, .max_items = 12}), field("why", &C::why, sentence_rules),
      field("practice", &C::practice, {.max_length = 200, .note = "a head that is nobody's"}));
};

template <>
struct Words<SignOff> {
  static constexpr std::string_view name = "SignOff";
  static constexpr WordList<SignOff, 5> list{{{SignOff::skin_test, "skin_test"},
                                              {SignOff::reading, "reading"},
                                              {SignOff::plan, "plan"},
                                              {SignOff::check, "check"},
                                              {SignOff::rinse, "rinse"}}};
};
template <>
struct Fields<SignedOff> {
  static constexpr std::string_view name = "SignedOff";
  static constexpr auto list =
      std::make_tuple(field("step", &SignedOff::step, {.required = true}), field("name", &SignedOff::name, who_rules),
                      field("remark", &SignedOff::remark, sentence_rules));
};

template <>
struct Words<PhotoOf> {
  static constexpr std::string_view name = "PhotoOf";
  static constexpr WordList<PhotoOf, 5> list{{{PhotoOf::before, "before"},
                                              {PhotoOf::after, "after"},
                                              {PhotoOf::wish, "wish"},
                                              {PhotoOf::skin_test, "skin_test"},
                                              {PhotoOf::other, "other"}}};
};
template <>
struct Fields<Photo> {
  static constexpr std::string_view name = "Photo";
  static constexpr auto list = std::make_tuple(
      field("of", &Photo::of, {.required = true}), field("view", &Photo::view, {.max_length = 60}),
      field("light", &Photo::light, {.max_length = 60}), field("card", &Photo::card, {.max_length = 60}),
      field("jpeg", &Photo::jpeg,
            {.required = true, .max_length = 600000, .note = "base64; without Exif, XMP and comments"}),
      field("consent", &Photo::consent, {.required = true, .max_length = 200, .note = "who agreed to it being kept"}));
};

}  // namespace strandline::wire
