#pragma once

#include "keys.h"

namespace strandline::store {

// Files up to version 3 kept every save of a visit in the clear, chained, as `entries`. The newest of each visit
// becomes its draft; one fact says how many there were and what their newest hash was; the rest is gone. Trouble
// store_damaged where the chain does not hold, unless taken `as_found`.
Expected<void> move_entries(Connection& db, const Keys& keys, bool as_found);

}  // namespace strandline::store
