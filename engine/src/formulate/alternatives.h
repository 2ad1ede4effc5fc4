// Other plans worth a look: worse on the whole, better in one way that a colourist may weigh differently today.
#pragma once

#include "formulate/choose.h"

namespace strandline {

// At most one per axis; none where it would be the same bowls, or more than kWorseMost levels worse.
Result<std::vector<Alternative>> alternatives(const ChoiceInput& in, const std::vector<Target>& targets,
                                              Chooser& chooser, BowlSearch& search, const Choice& best,
                                              const Plan& plan, const PredictOptions& options);

}  // namespace strandline
