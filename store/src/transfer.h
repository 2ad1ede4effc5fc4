// Rows of a salon between a file and a database.
#pragma once

#include "postgres.h"
#include "strandline/store/store.h"

namespace strandline::store {

// One state of the salon in the database as a new file, read whole before it gets its name.
Expected<Verified> copy_out(const Options& database, const std::string& to);
// A new salon in the database from the whole file at `from`, which nobody changes meanwhile.
Expected<Verified> copy_in(const Options& database, const std::string& from);

}  // namespace strandline::store
