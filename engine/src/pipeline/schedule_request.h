// What the clock needs, from the bowls of one step.
#pragma once

#include "strandline/pipeline.h"

namespace strandline {

// What comes after these bowls.
struct Next {
  bool last = true;  // nothing: the hair is treated, dried and photographed
  bool on_damp_hair = false;
};

ScheduleRequest schedule_request(const Visit& visit, const std::vector<PlannedBowl>& bowls, const Next& next);

}  // namespace strandline
