// How the planned finish spreads when every duration does.
#pragma once

#include <optional>

#include "schedule/network.h"
#include "schedule/tail.h"

namespace strandline {

struct Forecast {
  double mean = 0, sd = 0;  // of the finish, minutes from "hands on"
  double on_time = 0;       // share of the fixed points that end by `due`
  double clocks_hold = 0;   // share in which no colour stays past its maximum
};

// Runs the plan forwards at fixed points of the durations: everybody keeps the sequence and starts when hands
// and mixes allow; waiting that the plan contains is kept, shortened by what the hands before it gained. The
// basin time is when the last minimum is over and the basin is free. `due` in minutes.
Forecast forecast(const Instance& instance, const PlannedJobs& plan, const std::vector<TailStep>& tail, double due);

}  // namespace strandline
