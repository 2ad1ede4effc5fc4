// What follows the development: at the basin without a gap, then the dry tasks.
#pragma once

#include <optional>
#include <vector>

#include "schedule/instance.h"

namespace strandline {

struct TailStep {
  int task = 0;  // index in the request
  int person = 0;
  int start = 0, end = 0;  // ticks from "hands on"
};

// The tail from a basin time on; absent when the basin is taken or nobody is there for one of its tasks.
std::optional<std::vector<TailStep>> lay_tail(const Instance& instance, int basin);

}  // namespace strandline
