// The verbs of a visit as a door asks for them: a document in, an answer out. No effect on anything.
#pragma once

#include <functional>
#include <string_view>

#include "strandline/wire/advice.h"
#include "strandline/wire/answer.h"
#include "strandline/wire/document.h"
#include "strandline/wire/later.h"

namespace strandline::salon {

// How to work, not what on.
struct Effort {
  ParallelFor parallel = serial_for;
  // Asked often, from any thread; true = nobody waits for the answer any more.
  std::function<bool()> cancelled = [] { return false; };
};

// A visit read and checked. Problems carry JSON pointers into `document`. A zone may lie in several bowls, in their
// order: predict, fade and grow take them as steps; schedule and what_if answer zone_in_two_bowls.
Result<wire::ReadVisit> open_visit(const wire::Json& document, const wire::Sources& sources);

Result<wire::AssessAnswer> assess(const wire::ReadVisit& asked);
Result<wire::AimAnswer> aim(const wire::ReadVisit& asked);
// Problem no_bowls: there is nothing on the hair to predict.
Result<wire::PredictAnswer> predict(const wire::ReadVisit& asked, const Effort& effort);
// Of every verb that searches: too_many_scenarios where the document asks for more than the head can be searched with.
Result<wire::FormulateAnswer> formulate(const wire::ReadVisit& asked, const Effort& effort);
// From the document's own bowls where there are any, else from a plan.
Result<Timeline> schedule(const wire::ReadVisit& asked, const Effort& effort);
// The clock of a visit that has begun, from its marks. Problem not_begun. Takes milliseconds.
Result<Replanned> replan(const wire::ReadVisit& asked);
Result<wire::PlanAnswer> plan(const wire::ReadVisit& asked, const Effort& effort);
// What each zone can become today with this shelf; the document's aims are not read.
Result<wire::ReachAnswer> reach(const wire::ReadVisit& asked, const Effort& effort);
// Problem no_bowls. Searches nothing.
Result<wire::PlanAnswer> what_if(const wire::ReadVisit& asked, const Effort& effort);

// The document's own bowls beside the best. Problems no_bowls, no_wish; of this and the next two out_of_time where the
// document's seconds were over before the search was: nothing in their answers could say so.
Result<wire::ReviewAnswer> review(const wire::ReadVisit& asked, const Effort& effort);
// Problems no_bowls, unknown_range, range_gives_no_colour.
Result<wire::RemadeAnswer> convert(const wire::ReadVisit& asked, const std::string& range, const Effort& effort);
// Problems no_bowls, unknown_product.
Result<wire::RemadeAnswer> substitute(const wire::ReadVisit& asked, const std::string& product, const Effort& effort);

// The weeks after the document's own bowls; without any, of the colour that is there.
Result<wire::FadeAnswer> fade(const wire::ReadVisit& asked, const Habit& habit, const Effort& effort);
Result<wire::GrowAnswer> grow(const wire::ReadVisit& asked, const Effort& effort);

// What a verb asks for beside the document: a range to convert to, a product to do without.
struct Beside {
  std::string range, product;
};

// By name, the document still as JSON: what the HTTP door serves. Problems unknown_verb ·
// given_up when it was cancelled · out_of_time {seconds} when it was not there well after the document's seconds; a
// search that is stopped at its seconds mostly is, with the best so far.
Result<wire::Json> answer(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                          const Effort& effort, const Beside& beside = {});

}  // namespace strandline::salon
