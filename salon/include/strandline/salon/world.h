// Every effect that the use cases have, in one value; tests hand in their own.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "strandline/result.h"
#include "strandline/store/store.h"

namespace strandline::salon {

struct World {
  std::function<std::string()> now;     // UTC, 2026-03-09T09:00:00Z
  std::function<std::string()> new_id;  // 22 letters and digits, never the same twice
  std::shared_ptr<store::Store> store;
  std::function<Result<std::string>()> recovery_words = {};  // of the master key; empty where there is no file
};

std::string utc_now();  // of this machine's clock, 2026-03-09T09:00:00Z

// Whether a salon is said to be in a database: postgresql://HOST/DATABASE#SALON, readable and without a password.
bool in_database(const std::string& place);

// The clock and the random device of this machine, and the salon file at `path`, which must be there; `as_found` takes
// it although acknowledged entries are missing. ":memory:" = gone at the end. `key` "" = beside it, here and below.
store::Expected<World> real_world(const std::string& path, bool as_found = false, const std::string& key = {});
// A new salon file, with what `fill` writes into it: whole, or not there. Problems: store_exists, store_left_over,
// those of `fill`.
Result<void> make_salon(const std::string& path, const std::function<Result<void>(World&)>& fill,
                        const std::string& key = {});

// Reads all of a salon file, which may be in use. Problems: those of opening it, entry_broken {seq}.
Result<store::Verified> verify_salon(const std::string& path, const std::string& key = {});

// A copy of a salon file, which may be in use, read whole before it gets its name; and the salon file again from one.
// Problems as of Store::back_up() and Store::restore(), entry_broken {seq}.
Result<store::Verified> back_up_salon(const std::string& path, const std::string& to, const std::string& key = {});
Result<store::Verified> restore_salon(const std::string& path, const std::string& from, const std::string& key = {});
// A salon from its file into a database or back, as store::move_salon(); entry_broken {seq}.
Result<store::Verified> move_salon(const std::string& from, const std::string& to, const std::string& key = {});
// The words of the master key, and its file again from them.
Result<std::string> recovery_words(const std::string& path, const std::string& key = {});
Result<void> recover_key(const std::string& path, const std::string& words, const std::string& key = {});

}  // namespace strandline::salon
