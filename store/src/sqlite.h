// The driver over the SQLite C API.
#pragma once

#include "sql.h"

namespace strandline::store {

// An existing file, or memory. `reading` = nothing is ever written, not even at the end.
Expected<std::unique_ptr<Connection>> open_sqlite(const Options& options, bool reading = false);

}  // namespace strandline::store
