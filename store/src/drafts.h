// Drafts: each visit that is still worked on, sealed with a key of its own.
#pragma once

#include "keys.h"

namespace strandline::store {

// Inside a transaction. Troubles: store_conflict, store_id_taken, store_erased.
Expected<Save> save_draft(Connection& db, const Keys& keys, const NewDraft& asked);
// Inside a transaction: gone with its saves; its key too, unless facts are sealed with it.
// store_conflict when `seen` is not its newest save.
Expected<void> forget_draft(Connection& db, const std::string& visit_id, std::int64_t seen);

// Troubles: store_damaged where a box does not open beside what stands next to it.
Expected<std::optional<VisitRow>> read_draft(Connection& db, const Keys& keys, const std::string& visit_id);
// All of them without their bodies, in order of their newest saves.
Expected<std::vector<VisitRow>> read_labels(Connection& db, const Keys& keys);
Expected<std::vector<Save>> read_saves(Connection& db, std::int64_t after, int limit);
// That every draft opens and is the newest that was saved. Trouble store_damaged.
Expected<void> check_drafts(Connection& db, const Keys& keys);

}  // namespace strandline::store
