// The chosen plan as a net of difference constraints, forwards in time.
#pragma once

#include <vector>

#include "schedule/search.h"

namespace strandline {

struct PlannedJob {
  Job job;
  int start = 0, end = 0;  // ticks from "hands on", as late as the basin time allows
  int earliest = 0;        // earliest start with the same basin time, people and order
};

// start of `to` >= start of `from` + ticks.
struct Link {
  int from = 0, to = 0;
  int ticks = 0;
  bool house = false;  // only because the house wants that order
};

struct PlannedJobs {
  std::vector<PlannedJob> jobs;  // by start; the sequence of every person is kept
  std::vector<Link> links;       // hands, mixes before their use, removals after development, house order
  int basin = 0;
};

PlannedJobs plan_jobs(const Instance& instance, const Shortest& found);

// Index of the removal of an application's packet; -1 = it leaves at the basin time.
int removal_of(const PlannedJobs& plan, int application);

}  // namespace strandline
