#pragma once

#include "connection.h"

namespace strandline::store {

inline constexpr std::int64_t application_id = 1400129108;  // "StrT", set by migration 3
inline constexpr std::int64_t marked_since = 3;
std::int64_t newest_migration();

// Runs every embedded migration that the file has not seen, all in one transaction.
Expected<void> migrate(Connection& db);

}  // namespace strandline::store
