// Is this a salon file, whole, and as new as what was acknowledged?
#pragma once

#include "salon_file.h"
#include "sql.h"

namespace strandline::store {

// Whether facts and drafts have their tables, or it is a file of before.
Expected<bool> has_facts(Connection& db);
// Whether it is one of the first files, which were never anchored and kept their WAL mode when closed. Troubles:
// store_foreign (another program's database), store_newer. Reads only.
Expected<bool> check_identity(Connection& db, const std::string& path);
// SQLite's own check of the file's structure; `indexes` compares them with their tables too, which takes longer.
// Trouble: store_damaged.
Expected<void> check_structure(Connection& db, const std::string& path, bool indexes = false);
Expected<Head> read_head(Connection& db);
// All of it, and that it holds what was acknowledged last: `anchored`, when that is known. Else a file that `lacks_wal`
// is refused. Troubles: those above, store_incomplete (`seq` is the newest fact that is there), store_other (another
// fact in its place), store_without_wal.
Expected<void> check_journal(Connection& db, const std::string& path, const std::optional<Head>& anchored,
                             bool lacks_wal);
// The first fact whose place, hash or chain is broken; of a file of before, the first entry.
Expected<std::optional<std::int64_t>> check_chain(Connection& db);
Expected<std::optional<std::int64_t>> check_facts(Connection& db);
Expected<std::optional<std::int64_t>> check_entries(Connection& db);

}  // namespace strandline::store
