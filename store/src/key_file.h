// What lies outside the salon file: the master key, and who was erased.
#pragma once

#include <optional>
#include <set>
#include <string>

#include "seal.h"
#include "strandline/store/store.h"

namespace strandline::store {

// The master key in the file at `path`; nothing when there is no such file. Trouble store_key_unreadable.
Expected<std::optional<Key>> read_key(const std::string& path);
// Written for its owner alone and on the plate before it returns; never over a file that is there (store_key_there).
Expected<void> write_key(const std::string& path, const Key& key);

// Owners whose keys were destroyed, beside the key file so that an older salon file cannot bring them back.
std::string erased_path(const std::string& key_path);
Expected<std::set<std::string>> read_erased(const std::string& key_path);
Expected<void> add_erased(const std::string& key_path, const std::string& owner);

}  // namespace strandline::store
