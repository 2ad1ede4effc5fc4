#include "strandline/store/store.h"

#include <sodium.h>

#include <mutex>

#include "chain.h"
#include "connection.h"
#include "migrations.h"
#include "plain.h"

namespace strandline::store {

namespace {

constexpr std::string_view entry_columns = "store_seq, id, visit_id, seq, made_at, kind, body, hash";

constexpr std::string_view visit_columns =
    "visits.visit_id, visits.store_seq, visits.seq, opened_at, changed_at, client, date";

VisitRow visit_of(const Row& row) {
  return {row.text(0), row.integer(1), row.integer(2), row.text(3), row.text(4), row.text(5), row.text(6), "", ""};
}

Entry entry_of(const Row& row) {
  return {row.integer(0), row.text(1), row.text(2), row.integer(3), row.text(4), row.text(5), row.text(6), row.blob(7)};
}

Entry told(Entry entry) {
  entry.hash = hexadecimal(entry.hash);
  return entry;
}

class SqliteStore : public Store {
 public:
  explicit SqliteStore(std::unique_ptr<Connection> db) : db_(std::move(db)) {}

  Expected<Entry> append(const NewEntry& asked) override {
    const std::lock_guard lock(mutex_);
    Entry made;
    const auto done = db_->transaction([&]() -> Expected<void> {
      auto known = one("SELECT " + std::string(entry_columns) + " FROM entries WHERE id = $id", {{"$id", asked.id}});
      if (!known) return tl::unexpected(known.error());
      if (*known) return accept_again(asked, **known, made);
      return write(asked, made);
    });
    if (!done) return tl::unexpected(done.error());
    return told(std::move(made));
  }

  Expected<std::optional<VisitRow>> visit(const std::string& visit_id) override {
    const std::lock_guard lock(mutex_);
    std::optional<VisitRow> out;
    const auto read = db_->run(
        "SELECT " + std::string(visit_columns) +
            ", entries.id, entries.body FROM visits JOIN entries USING (store_seq) WHERE visits.visit_id = $visit",
        {{"$visit", visit_id}}, [&](const Row& r) {
          out = visit_of(r);
          out->entry_id = r.text(7);
          out->body = r.text(8);
        });
    if (!read) return tl::unexpected(read.error());
    return out;
  }

  Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked) override {
    const std::lock_guard lock(mutex_);
    std::vector<VisitRow> out;
    const auto read =
        db_->run("SELECT " + std::string(visit_columns) +
                     " FROM visits WHERE store_seq < $before AND ($find = '' OR instr(plain(client), $find) > 0) AND "
                     "($client = '' OR plain(client) = $client) ORDER BY store_seq DESC LIMIT $limit",
                 {{"$before", asked.before},
                  {"$find", plain(asked.find)},
                  {"$client", plain(asked.client)},
                  {"$limit", std::int64_t{asked.limit}}},
                 [&](const Row& r) { out.push_back(visit_of(r)); });
    if (!read) return tl::unexpected(read.error());
    return out;
  }

  Expected<std::vector<Entry>> changes(std::int64_t after, int limit) override {
    const std::lock_guard lock(mutex_);
    std::vector<Entry> out;
    const auto read = db_->run("SELECT " + std::string(entry_columns) +
                                   " FROM entries WHERE store_seq > $after ORDER BY store_seq LIMIT $limit",
                               {{"$after", after}, {"$limit", std::int64_t{limit}}},
                               [&](const Row& r) { out.push_back(told(entry_of(r))); });
    if (!read) return tl::unexpected(read.error());
    return out;
  }

  Expected<std::optional<std::int64_t>> verify() override {
    const std::lock_guard lock(mutex_);
    std::optional<std::int64_t> broken;
    std::string before;
    std::int64_t next = 1;
    const auto read =
        db_->run("SELECT " + std::string(entry_columns) + " FROM entries ORDER BY store_seq", {}, [&](const Row& r) {
          const Entry e = entry_of(r);
          const bool holds = e.store_seq == next++ && e.hash == chain_hash(before, e);
          if (!holds && !broken) broken = e.store_seq;
          before = e.hash;
        });
    if (!read) return tl::unexpected(read.error());
    if (broken) return broken;
    // The list must say what the journal says.
    const auto compared = db_->run(
        "SELECT min(store_seq) FROM (SELECT store_seq, visit_id, seq, made_at, coalesce(json_extract(body, "
        "'$.client'), "
        "''), coalesce(json_extract(body, '$.date'), '') FROM entries AS e WHERE seq = (SELECT max(seq) FROM entries "
        "WHERE visit_id = e.visit_id) EXCEPT SELECT store_seq, visit_id, seq, changed_at, client, date FROM visits)",
        {}, [&](const Row& r) {
          if (r.integer(0) > 0) broken = r.integer(0);
        });
    if (!compared) return tl::unexpected(compared.error());
    return broken;
  }

 private:
  Expected<std::optional<Entry>> one(const std::string& sql, const std::map<std::string, Value>& values) {
    std::optional<Entry> out;
    const auto read = db_->run(sql, values, [&](const Row& row) { out = entry_of(row); });
    if (!read) return tl::unexpected(read.error());
    return out;
  }

  // Handed in twice: the same entry is the answer, another one under its id is a conflict.
  static Expected<void> accept_again(const NewEntry& asked, const Entry& known, Entry& made) {
    made = known;
    if (known.visit_id == asked.visit_id && known.body == asked.body && known.kind == asked.kind) return {};
    return tl::unexpected(Trouble{"store_id_taken", asked.id, known.seq});
  }

  Expected<void> write(const NewEntry& asked, Entry& made) {
    auto last = one("SELECT " + std::string(entry_columns) + " FROM entries ORDER BY store_seq DESC LIMIT 1", {});
    if (!last) return tl::unexpected(last.error());
    std::int64_t newest = 0;
    const auto read = db_->run("SELECT coalesce(max(seq), 0) FROM entries WHERE visit_id = $visit",
                               {{"$visit", asked.visit_id}}, [&](const Row& row) { newest = row.integer(0); });
    if (!read) return read;
    if (newest != asked.after_seq) return tl::unexpected(Trouble{"store_conflict", "changed meanwhile", newest});
    made = {*last ? (*last)->store_seq + 1 : 1,
            asked.id,
            asked.visit_id,
            newest + 1,
            asked.made_at,
            asked.kind,
            asked.body,
            ""};
    made.hash = chain_hash(*last ? (*last)->hash : "", made);
    return db_->run(
        "INSERT INTO entries (store_seq, id, visit_id, seq, made_at, kind, body, hash) "
        "VALUES ($store_seq, $id, $visit, $seq, $made_at, $kind, $body, $hash)",
        {{"$store_seq", made.store_seq},
         {"$id", made.id},
         {"$visit", made.visit_id},
         {"$seq", made.seq},
         {"$made_at", made.made_at},
         {"$kind", made.kind},
         {"$body", made.body},
         {"$hash", Value::blob(made.hash)}});
  }

  std::mutex mutex_;
  std::unique_ptr<Connection> db_;
};

}  // namespace

Expected<std::unique_ptr<Store>> Store::open(const Options& options) {
  if (sodium_init() < 0) return tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0});
  auto db = Connection::open(options);
  if (!db) return tl::unexpected(db.error());
  if (const auto made = migrate(**db); !made) return tl::unexpected(made.error());
  return std::make_unique<SqliteStore>(std::move(*db));
}

}  // namespace strandline::store
