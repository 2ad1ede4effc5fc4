// Answers to the verbs of a visit in a salon that learned from its results.
#pragma once

#include <memory>
#include <string>

#include "strandline/salon/learning.h"
#include "strandline/salon/verbs.h"

namespace strandline::salon {

// What the salon's results teach of whoever the visit is of, and who works.
struct Taught {
  std::shared_ptr<const Lesson> lesson;
  std::string person, colourist;  // ids; empty = nobody known
};

// As answer(), on the shelf as it behaves here on this person. Answers that hold bowls get "learned": what results make
// of each zone that they touch, and in words what was learned that bears on it. A likelihood is shown as a number where
// every range on the zone has enough results and what was stated of them held.
Result<wire::Json> answer(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                          const Effort& effort, const Beside& beside, const Taught& taught);

}  // namespace strandline::salon
