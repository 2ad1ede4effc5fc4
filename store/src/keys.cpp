#include "keys.h"

#include "key_file.h"

namespace strandline::store {

namespace {

constexpr std::string_view claimed = "strandline salon";

}  // namespace

Expected<void> Keys::recognise(Connection& db) const {
  bool wrong = false;
  const auto read = db.run("SELECT box FROM master", {},
                           [&](const Row& r) { wrong = master_.open(r.blob(0), beside({"master"})) != claimed; });
  if (!read) return read;
  return wrong ? tl::unexpected(Trouble{"store_key_wrong", key_path_, 0}) : Expected<void>();
}

Expected<void> Keys::claim(Connection& db) const {
  if (auto ours = recognise(db); !ours) return ours;
  return db.run("INSERT INTO master SELECT 1, $box WHERE NOT EXISTS (SELECT 1 FROM master)",
                {{"$box", Value::blob(master_.seal(claimed, beside({"master"})))}});
}

Expected<Key> Keys::made_for(Connection& db, const std::string& owner) const {
  if (erased_.contains(owner)) return tl::unexpected(Trouble{"store_erased", owner, 0});
  std::optional<std::string> wrapped;
  const auto read = db.run("SELECT wrapped FROM keys WHERE owner = $owner", {{"$owner", owner}},
                           [&](const Row& r) { wrapped = r.blob(0); });
  if (!read) return tl::unexpected(read.error());
  if (wrapped && wrapped->empty()) return tl::unexpected(Trouble{"store_erased", owner, 0});
  if (wrapped) {
    const auto known = unwrapped(owner, *wrapped);
    return known ? Expected<Key>(*known) : tl::unexpected(Trouble{"store_damaged", "key of " + owner, 0});
  }
  const Key made = Key::made();
  const auto kept =
      db.run("INSERT INTO keys VALUES ($owner, $wrapped)",
             {{"$owner", owner}, {"$wrapped", Value::blob(master_.seal(made.bytes(), beside({"key", owner})))}});
  if (!kept) return tl::unexpected(kept.error());
  return made;
}

std::optional<Key> Keys::unwrapped(const std::string& owner, const std::string& wrapped) const {
  const auto bytes = master_.open(wrapped, beside({"key", owner}));
  return bytes ? Key::of(*bytes) : std::nullopt;
}

Expected<void> Keys::list_erased(const std::string& owner) {
  if (!key_path_.empty()) {
    if (auto listed = add_erased(key_path_, owner); !listed) return listed;
  }
  erased_.insert(owner);
  return {};
}

Expected<void> Keys::destroy_erased(Connection& db) const {
  for (const std::string& owner : erased_) {
    if (auto gone = destroy(db, owner); !gone) return gone;
  }
  return {};
}

Expected<void> Keys::destroy(Connection& db, const std::string& owner) {
  const Value who(owner), nothing = Value::blob("");
  using Values = std::map<std::string, Value>;
  const std::pair<const char*, Values> all[]{
      {"UPDATE keys SET wrapped = $nothing WHERE owner IN (SELECT visit_id FROM drafts WHERE person = $owner)",
       {{"$owner", who}, {"$nothing", nothing}}},
      {"DELETE FROM saves WHERE visit_id = $owner OR visit_id IN (SELECT visit_id FROM drafts WHERE person = $owner)",
       {{"$owner", who}}},
      {"DELETE FROM drafts WHERE visit_id = $owner OR person = $owner", {{"$owner", who}}},
      // One that never had a key gets none.
      {"DELETE FROM keys WHERE owner = $owner", {{"$owner", who}}},
      {"INSERT INTO keys VALUES ($owner, $nothing)", {{"$owner", who}, {"$nothing", nothing}}}};
  for (const auto& [sql, values] : all) {
    if (auto gone = db.run(sql, values); !gone) return gone;
  }
  return {};
}

Expected<void> Keys::check(Connection& db) const {
  std::string lost;
  const auto read = db.run(
      "SELECT DISTINCT f.key, k.owner IS NULL, k.wrapped FROM facts AS f LEFT JOIN keys AS k ON k.owner = f.key WHERE "
      "f.key <> ''",
      {}, [&](const Row& r) {
        const std::string wrapped = r.blob(2);
        if (r.integer(1) != 0 || (!wrapped.empty() && !unwrapped(r.text(0), wrapped))) lost = r.text(0);
      });
  if (!read) return read;
  return lost.empty() ? Expected<void>() : tl::unexpected(Trouble{"store_damaged", "key of " + lost, 0});
}

}  // namespace strandline::store
