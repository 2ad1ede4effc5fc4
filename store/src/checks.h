// Is this a salon file, whole, and as new as what was acknowledged?
#pragma once

#include "connection.h"
#include "salon_file.h"

namespace strandline::store {

// Troubles: store_foreign (another program's database), store_newer. Reads only.
Expected<void> check_identity(Connection& db, const std::string& path);
// SQLite's own check of the file's structure. Trouble: store_damaged.
Expected<void> check_structure(Connection& db, const std::string& path);
Expected<Head> read_head(Connection& db);
// Whether the journal holds the entry that was acknowledged last. Troubles: store_incomplete (`seq` is the newest entry
// that is there), store_other (another entry in its place).
Expected<void> check_head(Connection& db, const Head& anchored, const std::string& path);
// The first entry whose place, hash or chain is broken, or that the list of visits tells otherwise.
Expected<std::optional<std::int64_t>> check_chain(Connection& db);

}  // namespace strandline::store
