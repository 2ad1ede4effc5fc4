// One step of a clock behind another.
#pragma once

#include "strandline/schedule.h"

namespace strandline {

// As things stand for a step that begins `at` minutes after hands on.
ScheduleRequest begun(ScheduleRequest request, double at);

// Every time later by `by` minutes.
void shift(Timeline& timeline, double by);

// `next` begins when `all` has ended.
void follow(Timeline& all, Timeline next, int step, double late_tolerance);

}  // namespace strandline
