// The verbs of a visit as a door asks for them: a document in, an answer out. No effect on anything.
#pragma once

#include <functional>
#include <string_view>

#include "strandline/wire/answer.h"
#include "strandline/wire/document.h"
#include "strandline/wire/later.h"

namespace strandline::salon {

// How to work, not what on.
struct Effort {
  ParallelFor parallel = serial_for;
  std::function<bool()> cancelled = [] { return false; };
};

// A visit read and checked. Problems carry JSON pointers into `document`. A zone may lie in several bowls, in their
// order: predict, fade and grow take them as steps; schedule and what_if answer zone_in_two_bowls.
Result<wire::ReadVisit> open_visit(const wire::Json& document, const wire::Sources& sources);

Result<wire::AssessAnswer> assess(const wire::ReadVisit& asked);
Result<wire::AimAnswer> aim(const wire::ReadVisit& asked);
// Problem no_bowls: there is nothing on the hair to predict.
Result<wire::PredictAnswer> predict(const wire::ReadVisit& asked, const Effort& effort);
Result<wire::FormulateAnswer> formulate(const wire::ReadVisit& asked, const Effort& effort);
// From the document's own bowls where there are any, else from a plan.
Result<Timeline> schedule(const wire::ReadVisit& asked, const Effort& effort);
Result<wire::PlanAnswer> plan(const wire::ReadVisit& asked, const Effort& effort);
// What each zone can become today with this shelf; the document's aims are not read.
Result<wire::ReachAnswer> reach(const wire::ReadVisit& asked, const Effort& effort);
// Problem no_bowls. Searches nothing.
Result<wire::PlanAnswer> what_if(const wire::ReadVisit& asked, const Effort& effort);

// The weeks after the document's own bowls; without any, of the colour that is there.
Result<wire::FadeAnswer> fade(const wire::ReadVisit& asked, const Habit& habit);
Result<wire::GrowAnswer> grow(const wire::ReadVisit& asked);

// By name, the document still as JSON: what the HTTP door serves. Problem unknown_verb.
Result<wire::Json> answer(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                          const Effort& effort);

}  // namespace strandline::salon
