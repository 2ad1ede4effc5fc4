// The clock planned anew, as it is answered.
#pragma once

#include "strandline/wire/answer_fields.h"
#include "strandline/wire/running_fields.h"

namespace strandline::wire {

template <>
struct Fields<Replanned> {
  static constexpr std::string_view name = "Replanned";
  static constexpr std::string_view verb = "replan";
  using R = Replanned;
  static constexpr auto list =
      std::make_tuple(field("timeline", &R::timeline, told), field("too_late", &R::too_late, told),
                      field("fits_without", &R::fits_without, told), field("notes", &R::notes, told));
};

}  // namespace strandline::wire
