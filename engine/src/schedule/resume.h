// The rest of a step, from what has happened of it: forwards in time, exact.
#pragma once

#include <optional>
#include <vector>

#include "schedule/network.h"

namespace strandline {

// All in ticks from "hands on".
struct Touched {
  int first = 0, last = 0;  // the last may lie ahead: under the hands
};

struct Made {
  int start = 0, ready = 0;  // of a mix
};

struct SoFar {
  int now = 0, prepared = 0;
  std::vector<std::optional<Touched>> touched;  // by application
  std::vector<bool> gone;                       // by application: left out, or a packet that is out
  std::vector<std::optional<Made>> open;        // by bowl: the newest mix, unless it is empty
  std::vector<int> free;                        // by person: the hands are busy until then
};

struct Resumed {
  std::vector<PlannedJob> jobs;  // what lies ahead, by start; batch -1 = the mix that is there, 0 … = new ones
  int basin = 0;
  bool proven = true;
  long nodes = 0;
};

// The earliest basin time, then the fewest mixes and single removals; starts as late as that allows. Absent = no way
// keeps every clock. Stops after `node_limit` nodes with the best so far.
std::optional<Resumed> resume(const Instance& instance, const SoFar& so_far, long node_limit);

}  // namespace strandline
