// Looks at a lightener on the hair.
#pragma once

#include "schedule/network.h"

namespace strandline {

struct Look {
  int person = 0;
  int start = 0, end = 0;  // ticks from "hands on"
  int during = -1;         // planned job beside which it is taken; -1 = free hands
};

// From the first look on, one every check_every_min … check_every_max minutes until the last lightener
// leaves. Free hands are used where there are any in that window; else the look is taken beside a running
// job, whose minutes (from past visits) contain such looks. A problem when nobody who can look is there. `taken`: looks
// that are over, by time; they come first in the answer.
Result<std::vector<Look>> looks(const Instance& instance, const PlannedJobs& plan, std::vector<Look> taken = {});

}  // namespace strandline
