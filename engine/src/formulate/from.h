// formulate() from any point of a visit: the certified search on the hair as it is by then.
#pragma once

#include "formulate/situation.h"

namespace strandline {

struct From {
  const Situation& now;
  const Head& head;        // as it was read; what people are told starts there
  char first_label = 'A';  // of the bowls
  bool other_ways = true;
};

Result<Plan> formulate_from(const From& from, const std::vector<Target>& targets, const Shelf& shelf,
                            const FormulaPolicy& policy, const FormulateOptions& options);

}  // namespace strandline
