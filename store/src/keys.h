// The keys of people and visits: random, each sealed by the master key in the table `keys`; empty there once destroyed.
#pragma once

#include <set>

#include "seal.h"
#include "sql.h"

namespace strandline::store {

class Keys {
 public:
  // `key_path` "" = in memory: nothing is written beside it.
  Keys(Key master, std::string key_path, std::set<std::string> erased)
      : master_(std::move(master)), key_path_(std::move(key_path)), erased_(std::move(erased)) {}

  // That this is the master key of the file; of one that has none yet, too. Trouble store_key_wrong.
  Expected<void> recognise(Connection& db) const;
  // Inside a transaction that writes: that this is the master key of the file. Trouble store_key_wrong.
  Expected<void> claim(Connection& db) const;
  // Inside one too: the key of `owner`, made where there is none. Trouble store_erased.
  Expected<Key> made_for(Connection& db, const std::string& owner) const;
  // From a row of `keys`; nothing when it was destroyed, or does not open.
  std::optional<Key> unwrapped(const std::string& owner, const std::string& wrapped) const;

  // From now on there is no key of `owner`, in an older copy of the file neither. Durable before it returns.
  Expected<void> list_erased(const std::string& owner);
  // Inside a transaction: what is listed loses its keys and its drafts.
  Expected<void> destroy_erased(Connection& db) const;
  // Likewise of one owner, who gets no other key.
  static Expected<void> destroy(Connection& db, const std::string& owner);
  // That no key of a fact is lost: each opens, or is empty as a destroyed one is. Trouble store_damaged.
  Expected<void> check(Connection& db) const;
  bool none_erased() const { return erased_.empty(); }

 private:
  Key master_;
  std::string key_path_;
  std::set<std::string> erased_;
};

}  // namespace strandline::store
