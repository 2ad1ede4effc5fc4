#include "checks.h"

#include "chain.h"
#include "migrations.h"

namespace strandline::store {

Expected<bool> check_identity(Connection& db, const std::string& path) {
  std::int64_t application = 0, version = 0, ours = 0;
  const auto number = [&db](const char* sql, std::int64_t& out) {
    return db.run(sql, {}, [&out](const Row& row) { out = row.integer(0); });
  };
  if (auto read = number("PRAGMA application_id", application); !read) {
    return tl::unexpected(read.error().code == "store_foreign" ? file_trouble("store_foreign", path) : read.error());
  }
  if (auto read = number("PRAGMA user_version", version); !read) return tl::unexpected(read.error());
  if (auto read =
          number("SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND name IN ('entries_are_not_removed', "
                 "'facts_are_not_removed')",
                 ours);
      !read) {
    return tl::unexpected(read.error());
  }
  // The first files bore no mark; their trigger tells them.
  const bool unmarked = application == 0 && version > 0 && version < marked_since;
  if (ours == 0 || (application != application_id && !unmarked))
    return tl::unexpected(file_trouble("store_foreign", path));
  if (version > newest_migration()) return tl::unexpected(Trouble{"store_newer", path, version});
  return unmarked;
}

Expected<void> check_structure(Connection& db, const std::string& path, bool indexes) {
  std::string said;
  const char* how = indexes ? "PRAGMA integrity_check(1)" : "PRAGMA quick_check(1)";
  const auto checked = db.run(how, {}, [&said](const Row& row) { said = row.text(0); });
  if (!checked) return checked;
  if (said != "ok") return tl::unexpected(Trouble{"store_damaged", path + ": " + said, 0});
  return {};
}

Expected<bool> has_facts(Connection& db) {
  std::int64_t found = 0;
  const auto read = db.run("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = 'facts'", {},
                           [&found](const Row& row) { found = row.integer(0); });
  if (!read) return tl::unexpected(read.error());
  return found > 0;
}

Expected<Head> read_head(Connection& db) {
  const auto facts = has_facts(db);
  if (!facts) return tl::unexpected(facts.error());
  Head out;
  auto read = db.run(
      "SELECT store_seq, hash FROM " + std::string(*facts ? "facts" : "entries") + " ORDER BY store_seq DESC LIMIT 1",
      {}, [&out](const Row& row) { out = {row.integer(0), hexadecimal(row.blob(1))}; });
  // Counted on when a draft is forgotten.
  if (read && *facts) {
    read = db.run("SELECT seq FROM sqlite_sequence WHERE name = 'saves'", {},
                  [&out](const Row& row) { out.saves = row.integer(0); });
  }
  if (!read) return tl::unexpected(read.error());
  return out;
}

namespace {

// The head of the journal that was moved into facts and drafts, when this one was.
Expected<std::optional<Head>> moved_from(Connection& db) {
  std::optional<Head> out;
  const auto read = db.run(
      "SELECT json_extract(about, '$.entries'), json_extract(about, '$.hash') FROM facts WHERE store_seq = 1 AND kind "
      "= "
      "'moved'",
      {}, [&out](const Row& row) { out = Head{row.integer(0), row.text(1)}; });
  if (!read) return tl::unexpected(read.error());
  return out;
}

}  // namespace

Expected<void> check_journal(Connection& db, const std::string& path, const std::optional<Head>& anchored,
                             bool lacks_wal) {
  const auto unmarked = check_identity(db, path);
  if (!unmarked) return tl::unexpected(unmarked.error());
  if (auto whole = check_structure(db, path); !whole) return whole;
  const auto head = read_head(db);
  if (!head) return tl::unexpected(head.error());
  if (!anchored || (anchored->store_seq == 0 && anchored->saves == 0)) {
    // The first program left files in this state when it ended as it should, too.
    const bool usual = *unmarked && head->store_seq > 0;
    if (anchored || !lacks_wal || usual) return {};
    return tl::unexpected(file_trouble("store_without_wal", path));
  }
  const auto facts = has_facts(db);
  if (!facts) return tl::unexpected(facts.error());
  if (*facts) {
    // Moved, and cut off before that was anchored.
    const auto before = moved_from(db);
    if (!before) return tl::unexpected(before.error());
    if (*before && anchored->saves == 0 && **before == *anchored) return {};
  }
  const bool saves_missing = anchored->saves > head->saves;
  const auto incomplete = tl::unexpected(Trouble{"store_incomplete", path, head->store_seq});
  if (anchored->store_seq == 0) return saves_missing ? Expected<void>(incomplete) : Expected<void>();
  std::optional<std::string> hash;
  const auto read =
      db.run("SELECT hash FROM " + std::string(*facts ? "facts" : "entries") + " WHERE store_seq = $seq",
             {{"$seq", anchored->store_seq}}, [&hash](const Row& row) { hash = hexadecimal(row.blob(0)); });
  if (!read) return read;
  if (hash && *hash != anchored->hash) return tl::unexpected(Trouble{"store_other", path, anchored->store_seq});
  return hash && !saves_missing ? Expected<void>() : Expected<void>(incomplete);
}

namespace {

// Follows a chain from row to row.
struct Walk {
  std::optional<std::int64_t> broken;
  std::string before;
  std::int64_t next = 1;
  void see(std::int64_t store_seq, const std::string& hash, const std::string& expected) {
    if ((store_seq != next++ || hash != expected) && !broken) broken = store_seq;
    before = hash;
  }
};

}  // namespace

Expected<std::optional<std::int64_t>> check_entries(Connection& db) {
  Walk walk;
  const auto read =
      db.run("SELECT store_seq, id, visit_id, seq, made_at, kind, body, hash FROM entries ORDER BY store_seq", {},
             [&](const Row& r) {
               walk.see(r.integer(0), r.blob(7),
                        hash_of({walk.before, std::to_string(r.integer(0)), r.text(1), r.text(2),
                                 std::to_string(r.integer(3)), r.text(4), r.text(5), r.text(6)}));
             });
  if (!read) return tl::unexpected(read.error());
  return walk.broken;
}

Expected<std::optional<std::int64_t>> check_chain(Connection& db) {
  const auto facts = has_facts(db);
  if (!facts) return tl::unexpected(facts.error());
  return *facts ? check_facts(db) : check_entries(db);
}

Expected<std::optional<std::int64_t>> check_facts(Connection& db) {
  Walk walk;
  const auto read = db.run(
      "SELECT store_seq, id, stream, seq, made_at, kind, version, about, key, body, hash FROM facts ORDER BY store_seq",
      {}, [&](const Row& r) {
        Fact f;
        f.store_seq = r.integer(0), f.id = r.text(1), f.stream = r.text(2), f.seq = r.integer(3);
        f.made_at = r.text(4), f.kind = r.text(5), f.version = static_cast<int>(r.integer(6));
        f.about = r.text(7), f.key = r.text(8), f.body = r.blob(9);
        walk.see(f.store_seq, r.blob(10), chain_hash(walk.before, f));
      });
  if (!read) return tl::unexpected(read.error());
  return walk.broken;
}

}  // namespace strandline::store
