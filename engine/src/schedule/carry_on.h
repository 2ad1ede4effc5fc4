// One step of a running visit after a mark.
#pragma once

#include <string>
#include <vector>

#include "strandline/mark.h"
#include "strandline/schedule.h"

namespace strandline {

// What must not be planned: left out by a mark, or out of time.
struct CarriedOn {
  Timeline timeline;
  std::vector<std::string> too_late;  // applications
};

// `told`: the step as it was planned up to the mark; tasks whose time has come by `at_min` are taken as begun, and as
// over when their end has. `mark` absent = planned anew as things stand. `left_out`: applications that are not wanted;
// those that are on the hair already stay. Requires a request that schedule() accepts and a timeline of it. `nodes`:
// what the searches may still spend together; once it is spent each gets a few, and what does not fit is left out at
// once.
Result<CarriedOn> carry_on(const ScheduleRequest& request, const Timeline& told, const Mark* mark, double at_min,
                           const std::vector<std::string>& left_out, long& nodes);

// Applications that have not been begun by then, in the order in which they are planned.
std::vector<std::string> ahead(const Timeline& told, double at_min);

}  // namespace strandline
