// A salon from its file into a database with many, and back.
#pragma once

#include "strandline/store/store.h"

namespace strandline::store {

// Whether it is the address of a salon in a database, rather than a file: postgresql://HOST/DATABASE#SALON, readable
// and without a password.
bool is_address(const std::string& path);

// All of the salon at `from` to `to`, one of them a file and the other a database (postgresql://…#salon); the key file
// stays the same (`from.key`). Nothing is written to the salon meanwhile; what arrived is read whole and must end in
// the same hash with as many facts, drafts, saves and keys, or there is nothing at `to` and everything at `from`. Then
// a file is called PATH-moved (with its head), and a database holds nothing of it any more. Troubles: those of opening,
// store_exists, store_move_between (not a file and a database), store_move_differs, store_move_unsure (the file is
// whole at `detail`, and the database did not say whether it let go: if it still opens there, remove the file).
Expected<Verified> move_salon(const Options& from, const std::string& to);

}  // namespace strandline::store
