// The store over PostgreSQL: one salon of a database, from as many servers as there are.
#pragma once

#include "keys.h"
#include "postgres.h"
#include "salon_file.h"

namespace strandline::store {

// Store::open(), make() and verify_file() where the path is a database. The master key lies in a file as ever.
Expected<std::unique_ptr<Store>> open_postgres(const Options& options);
Expected<void> make_postgres(const Options& options, const std::function<Expected<void>(Store&)>& fill);
Expected<Verified> verify_postgres(const Options& options);

// Inside a transaction of `db`: whether the salon is there, and its newest fact and save.
Expected<bool> has_salon(Connection& db);
Expected<Head> salon_head(Connection& db);

}  // namespace strandline::store
