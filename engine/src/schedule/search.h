// Exact search for the shortest plan.
#pragma once

#include <optional>

#include "schedule/layout.h"

namespace strandline {

struct Shortest {
  Layout layout;
  int basin = 0;  // ticks from "hands on" to the basin time
};

struct ShortestSearch {
  std::optional<Shortest> best;
  bool proven = true;
  long nodes = 0;
};

// The earliest basin time and its plan. Ties go to fewer pairs out of order, then fewer mixes and removals.
// Branch and bound over sequences, hands and mixes; the bound is work over hands, and dominated states are
// dropped.
ShortestSearch search(const Instance& instance);

// First basin time at or after `ticks` at which the basin is free for all that happens there and someone is
// there for every task of the tail; kNever = none.
int next_basin_time(const Instance& instance, int ticks);

}  // namespace strandline
