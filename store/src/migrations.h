#pragma once

#include "keys.h"

namespace strandline::store {

inline constexpr std::int64_t application_id = 1400129108;  // "StrT", set by migration 3
inline constexpr std::int64_t marked_since = 3;
std::int64_t newest_migration();

// Runs every embedded migration that the file has not seen, claims it for the master key, and destroys again what was
// erased, all in one transaction. `as_found` moves the entries of a file of before although their chain is broken.
Expected<void> migrate(Connection& db, const Keys& keys, bool as_found);

}  // namespace strandline::store
