// A bowl as it is written.
#pragma once

#include "strandline/formulate.h"
#include "strandline/wire/encode.h"

namespace strandline::wire {

template <>
struct Fields<Part> {
  static constexpr std::string_view name = "Part";
  static constexpr auto list = std::make_tuple(field("product", &Part::product, {.required = true, .max_length = 60}),
                                               field("grams", &Part::grams, {.required = true, .min = 0, .max = 5000}));
};

template <>
struct Fields<Formula> {
  static constexpr auto list = std::make_tuple(
      field("range", &Formula::range, {.required = true, .max_length = 60}),
      field("parts", &Formula::parts, {.required = true, .max_items = 20}),
      field("minutes", &Formula::minutes, {.required = true, .min = 0, .max = 600, .note = "from the last touch"}),
      field("damp_hair", &Formula::damp_hair));
};

template <>
struct Fields<Bowl> {
  static constexpr std::string_view name = "Bowl";
  static constexpr auto list =
      std::make_tuple(field("label", &Bowl::label, {.required = true, .max_length = 20}), inlined(&Bowl::formula),
                      field("zones", &Bowl::zones, {.required = true, .max_items = 500}),
                      field("step", &Bowl::step,
                            {.min = 1, .max = 4, .note = "goes on when the bowls of the step before are rinsed out"}));
};

}  // namespace strandline::wire
