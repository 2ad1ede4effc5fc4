#pragma once

#include "connection.h"

namespace strandline::store {

inline constexpr std::int64_t application_id = 1400129108;  // "StrT", set by a migration
std::int64_t newest_migration();

// Runs every embedded migration that the file has not seen, all in one transaction. Trouble store_newer when
// the file has seen more than this program knows.
Expected<void> migrate(Connection& db);

}  // namespace strandline::store
