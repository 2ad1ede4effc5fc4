#pragma once

#include "connection.h"

namespace strandline::store {

// Runs every embedded migration that the file has not seen, all in one transaction. Trouble store_newer when
// the file has seen more than this program knows.
Expected<void> migrate(Connection& db);

}  // namespace strandline::store
