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
  if (auto read = number(
          "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND name = 'entries_are_not_removed'", ours);
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

Expected<Head> read_head(Connection& db) {
  Head out;
  const auto read = db.run("SELECT store_seq, hash FROM entries ORDER BY store_seq DESC LIMIT 1", {},
                           [&out](const Row& row) { out = {row.integer(0), hexadecimal(row.blob(1))}; });
  if (!read) return tl::unexpected(read.error());
  return out;
}

Expected<void> check_journal(Connection& db, const std::string& path, const std::optional<Head>& anchored,
                             bool lacks_wal) {
  const auto unmarked = check_identity(db, path);
  if (!unmarked) return tl::unexpected(unmarked.error());
  if (auto whole = check_structure(db, path); !whole) return whole;
  const auto head = read_head(db);
  if (!head) return tl::unexpected(head.error());
  if (!anchored || anchored->store_seq == 0) {
    // The first program left files in this state when it ended as it should, too.
    const bool usual = *unmarked && head->store_seq > 0;
    if (anchored || !lacks_wal || usual) return {};
    return tl::unexpected(file_trouble("store_without_wal", path));
  }
  std::optional<std::string> hash;
  const auto read = db.run("SELECT hash FROM entries WHERE store_seq = $seq", {{"$seq", anchored->store_seq}},
                           [&hash](const Row& row) { hash = hexadecimal(row.blob(0)); });
  if (!read) return read;
  if (!hash) return tl::unexpected(Trouble{"store_incomplete", path, head->store_seq});
  if (*hash != anchored->hash) return tl::unexpected(Trouble{"store_other", path, anchored->store_seq});
  return {};
}

Expected<std::optional<std::int64_t>> check_chain(Connection& db) {
  std::optional<std::int64_t> broken;
  std::string before;
  std::int64_t next = 1;
  const auto read = db.run(
      "SELECT store_seq, id, visit_id, seq, made_at, kind, body, hash FROM entries ORDER BY store_seq", {},
      [&](const Row& r) {
        const Entry e{r.integer(0), r.text(1), r.text(2), r.integer(3), r.text(4), r.text(5), r.text(6), r.blob(7)};
        const bool holds = e.store_seq == next++ && e.hash == chain_hash(before, e);
        if (!holds && !broken) broken = e.store_seq;
        before = e.hash;
      });
  if (!read) return tl::unexpected(read.error());
  if (broken) return broken;
  const auto compared = db.run(
      "SELECT min(store_seq) FROM (SELECT store_seq, visit_id, seq, made_at, coalesce(json_extract(body, '$.client'), "
      "''), coalesce(json_extract(body, '$.date'), '') FROM entries AS e WHERE seq = (SELECT max(seq) FROM entries "
      "WHERE visit_id = e.visit_id) EXCEPT SELECT store_seq, visit_id, seq, changed_at, client, date FROM visits)",
      {}, [&](const Row& r) {
        if (r.integer(0) > 0) broken = r.integer(0);
      });
  if (!compared) return tl::unexpected(compared.error());
  return broken;
}

}  // namespace strandline::store
