// `replan`: the clock of a visit that has begun. The plan runs on by itself; a mark says what really happened, at once
// or afterwards, and all that lies ahead of it is planned anew. Minutes count from "hands on".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/mark.h"
#include "strandline/schedule.h"
#include "strandline/visit.h"

namespace strandline {

// One part that went into a bowl.
struct Addition {
  std::string bowl;
  int mix = 1;
  std::string product;
  double grams = 0;
  double at_min = 0;
};

struct Leftover {
  std::string bowl;
  int mix = 1;
  double grams = 0;
};

// A bowl as it was agreed, with what its label and its clock need when nothing else can be asked.
struct RunningBowl {
  Bowl bowl;
  std::string range_name;
  std::vector<std::string> names;  // of its parts, in their order
  double mix_life_min = 60;        // from the start of mixing to the last touch
};

struct Running {
  std::string since;  // instant of minute 0, UTC; never read by the engine
  std::vector<RunningBowl> bowls;
  Timeline plan;  // as it was when the visit began
  std::vector<Mark> marks;
  std::vector<Addition> additions;
  std::vector<Leftover> leftovers;
  std::optional<double> leave_by;    // the client must leave then
  std::optional<double> stopped_at;  // stop now: the clocks stand still
  std::optional<double> ended_at;
};

struct Replanned {
  Timeline timeline;                  // the past as it was, from the last mark on as planned anew
  std::vector<std::string> too_late;  // applications for which the longest time of what is on the hair leaves no room
  // Where the client would leave too late: without these, last first, it is in time.
  std::vector<std::string> fits_without;
  Problems notes;
};

// The marks in the order of their times, each planned on from the one before it. `now_min` is when the question is
// asked: what fits before `leave_by` is counted from then. What is on the hair stays for its shortest time and no
// longer than its longest: applications that would break that are told in `too_late` and not planned. Deterministic.
// Problems: those of bad input; unknown_task {task} · already_on {task} as notes.
Result<Replanned> replan(const Visit& visit, const Running& running, double now_min);

}  // namespace strandline
