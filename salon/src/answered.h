// What answer() does, with a turn of the visit before it is answered and of the answer after.
#pragma once

#include <functional>

#include "strandline/salon/verbs.h"

namespace strandline::salon {

struct Turns {
  std::function<void(Visit&)> before = [](Visit&) {};
  std::function<void(wire::Json&)> after = [](wire::Json&) {};
};

Result<wire::Json> answered(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                            const Effort& effort, const Beside& beside, const Turns& turns);

}  // namespace strandline::salon
