// A visit that has begun: its plan, what really happened, what went into the bowls.
#pragma once

#include "strandline/running.h"
#include "strandline/wire/bowl_fields.h"
#include "strandline/wire/schedule_fields.h"

namespace strandline::wire {

template <>
struct Words<Marked> {
  static constexpr std::string_view name = "Marked";
  static constexpr WordList<Marked, 4> list{{{Marked::started, "started"},
                                             {Marked::done, "done"},
                                             {Marked::left_out, "left_out"},
                                             {Marked::ran_out, "ran_out"}}};
};

template <>
struct Fields<Mark> {
  static constexpr std::string_view name = "Mark";
  static constexpr auto list = std::make_tuple(
      field("task", &Mark::task, {.required = true, .max_length = 160}), field("what", &Mark::what, told),
      field("at_min", &Mark::at_min, {.required = true, .min = 0, .max = 1440}));
};

template <>
struct Fields<Addition> {
  static constexpr std::string_view name = "Addition";
  using A = Addition;
  static constexpr auto list = std::make_tuple(field("bowl", &A::bowl, {.required = true, .max_length = 20}),
                                               field("mix", &A::mix, {.required = true, .min = 1, .max = 99}),
                                               field("product", &A::product, {.required = true, .max_length = 60}),
                                               field("grams", &A::grams, {.required = true, .min = 0, .max = 5000}),
                                               field("at_min", &A::at_min, {.required = true, .min = 0, .max = 1440}));
};

template <>
struct Fields<Leftover> {
  static constexpr std::string_view name = "Leftover";
  using L = Leftover;
  static constexpr auto list = std::make_tuple(field("bowl", &L::bowl, {.required = true, .max_length = 20}),
                                               field("mix", &L::mix, {.required = true, .min = 1, .max = 99}),
                                               field("grams", &L::grams, {.required = true, .min = 0, .max = 5000}));
};

template <>
struct Fields<RunningBowl> {
  static constexpr std::string_view name = "RunningBowl";
  using R = RunningBowl;
  static constexpr auto list =
      std::make_tuple(inlined(&R::bowl), field("range_name", &R::range_name, {.max_length = 120}),
                      field("names", &R::names, {.max_items = 20, .note = "of its parts, in their order"}),
                      field("mix_life_min", &R::mix_life_min,
                            {.min = 1, .max = 1440, .note = "minutes from the start of mixing to the last touch"}));
};

template <>
struct Fields<Running> {
  static constexpr std::string_view name = "Running";
  using R = Running;
  static constexpr auto list = std::make_tuple(
      field("since", &R::since, {.required = true, .max_length = 40, .note = "instant of minute 0, UTC"}),
      field("bowls", &R::bowls, {.required = true, .max_items = 12, .note = "as agreed when the visit began"}),
      field("plan", &R::plan, {.required = true, .note = "the clock as it was then"}),
      field("marks", &R::marks, {.max_items = 200}), field("additions", &R::additions, {.max_items = 500}),
      field("leftovers", &R::leftovers, {.max_items = 100}), field("leave_by", &R::leave_by, minutes_rules),
      field("stopped_at", &R::stopped_at, minutes_rules), field("ended_at", &R::ended_at, minutes_rules));
};

}  // namespace strandline::wire
