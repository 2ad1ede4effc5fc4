// Facts in their table.
#pragma once

#include "keys.h"

namespace strandline::store {

// Trouble store_not_json.
Expected<void> expect_json(Connection& db, const std::string& text);
// Inside a transaction. Troubles: store_conflict, store_id_taken, store_erased.
Expected<Fact> append_fact(Connection& db, const Keys& keys, const NewFact& asked);
// Each compared with its hash: store_damaged rather than one that is not as it was written.
Expected<std::vector<Fact>> read_facts(Connection& db, const Keys& keys, const FactsAsked& asked);

}  // namespace strandline::store
