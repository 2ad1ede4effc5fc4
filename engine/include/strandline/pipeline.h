// THE file: the verbs of a visit in order. Each takes values and returns values; doors add files, clocks and words.
//
//   assess → aim → predict / formulate → schedule
#pragma once

#include <vector>

#include "strandline/afterwards.h"
#include "strandline/assess.h"
#include "strandline/formulate.h"
#include "strandline/predict.h"
#include "strandline/route.h"
#include "strandline/schedule.h"
#include "strandline/visit.h"

namespace strandline {

// Every problem of a visit document with its place, before anything is computed.
Problems check(const Visit& visit);

struct VisitPlan {
  Assessment assessment;
  std::vector<Target> targets;
  Plan plan;
  Timeline timeline;
  Verdicts verdicts;          // before any bowl; where they stop the visit there is none
  std::vector<Route> routes;  // ways over more than one step, best first; only where a wish is out of reach of one bowl
  Afterwards after;           // of what is offered first
};

// assess + aim + formulate + schedule in one answer.
Result<VisitPlan> plan(const Visit& visit, const FormulateOptions& options = {});

// The same from the colourist's own bowls: nothing is searched, everything else follows (a changed gram). Bowls that
// pass a rule get no forecast: the zones stay as they are, no clock, and the verdicts say which rule.
Result<VisitPlan> what_if(const Visit& visit, const PredictOptions& options = {});

// In the order in which they go on: by step, then as they are listed.
std::vector<Bowl> by_step(std::vector<Bowl> bowls);

// The own bowls in that order, on each zone for as long as the clock leaves them there, from when half of it was
// touched; for as long as they say where no clock holds them. Requires check(visit) empty.
std::vector<Step> on_the_clock(const Visit& visit);

// What the own bowls break, each on the hair it finds: rules of house and range, law, stock. Stops, not advice.
Problems stops(const Visit& visit);

// One clock for all bowls: step after step, each rinsed out before the next is mixed. Problems: those of schedule().
Result<Timeline> clock(const Visit& visit, const std::vector<PlannedBowl>& bowls);

}  // namespace strandline
