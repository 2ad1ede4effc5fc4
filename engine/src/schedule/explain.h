// Why there is no plan: which clock breaks, by how much, and what would mend it.
#pragma once

#include "schedule/search.h"

namespace strandline {

// Requires that `search(instance)` found nothing. Each remedy named in the parameters has been tried: "yes"
// or "no".
Problems explain(const Instance& instance);

}  // namespace strandline
