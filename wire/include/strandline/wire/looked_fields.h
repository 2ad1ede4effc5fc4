// Keys of what was agreed to be kept, tested, looked at and finished.
#pragma once

#include "strandline/wire/everyday_fields.h"
#include "strandline/wire/looked.h"

namespace strandline::wire {

inline constexpr Rules short_text{.max_length = 200};
inline constexpr Rules level_seen{.min = 1, .max = 10};

template <>
struct Words<TestOf> {
  static constexpr std::string_view name = "TestOf";
  static constexpr WordList<TestOf, 3> list{
      {{TestOf::skin, "skin"}, {TestOf::metal, "metal"}, {TestOf::strand, "strand"}}};
};
template <>
struct Fields<TestMade> {
  static constexpr std::string_view name = "TestMade";
  using M = TestMade;
  static constexpr auto list = std::make_tuple(
      field("of", &M::of, {.required = true}), field("site", &M::site, {.required = true, .max_length = 200}),
      field("method", &M::method, short_text), field("product", &M::product, short_text),
      field("maker", &M::maker, short_text), field("batch", &M::batch, short_text),
      field("minutes", &M::minutes, {.min = 0, .max = 10080, .note = "minutes of exposure"}),
      field("seen", &M::seen, {.max_length = 600, .note = "what showed, in words"}),
      field("level", &M::level, level_seen), field("measured", &M::measured),
      field("name", &M::name, {.required = true, .max_length = 120, .note = "who made it"}),
      field("signed_by", &M::signed_by, {.max_length = 120, .note = "the client"}));
};

template <>
struct Words<Saw> {
  static constexpr std::string_view name = "Saw";
  static constexpr WordList<Saw, 7> list{{{Saw::end_point, "end_point"},
                                          {Saw::not_yet, "not_yet"},
                                          {Saw::too_far, "too_far"},
                                          {Saw::overlap, "overlap"},
                                          {Saw::seepage, "seepage"},
                                          {Saw::stain, "stain"},
                                          {Saw::uneven, "uneven"}}};
};
template <>
struct Fields<Checked> {
  static constexpr std::string_view name = "Checked";
  static constexpr auto list =
      std::make_tuple(field("saw", &Checked::saw, {.required = true}),
                      field("zone", &Checked::zone, {.max_length = 130}), field("level", &Checked::level, level_seen),
                      field("at_min", &Checked::at_min, {.min = 0, .max = 1440, .note = "minutes since hands went on"}),
                      field("note", &Checked::note, {.max_length = 600}));
};

template <>
struct Fields<Finished> {
  static constexpr std::string_view name = "Finished";
  static constexpr auto list =
      std::make_tuple(field("done", &Finished::done, {.required = true, .max_length = 200, .max_items = 40}),
                      field("left_out", &Finished::left_out, {.max_length = 200, .max_items = 40}),
                      field("name", &Finished::name, {.max_length = 120}));
};

template <>
struct Words<ConsentTo> {
  static constexpr std::string_view name = "ConsentTo";
  static constexpr WordList<ConsentTo, 3> list{
      {{ConsentTo::health, "health"}, {ConsentTo::photos, "photos"}, {ConsentTo::sharing, "sharing"}}};
};
template <>
struct Fields<Consented> {
  static constexpr std::string_view name = "Consented";
  static constexpr auto list = std::make_tuple(field("to", &Consented::to, {.required = true}),
                                               field("given", &Consented::given, {.required = true}),
                                               field("words", &Consented::words, {.required = true, .max_length = 600}),
                                               field("name", &Consented::name, {.required = true, .max_length = 120}));
};

}  // namespace strandline::wire
