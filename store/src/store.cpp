#include "strandline/store/store.h"

#include <sodium.h>

#include <chrono>
#include <mutex>

#include "chain.h"
#include "checks.h"
#include "connection.h"
#include "migrations.h"
#include "open_file.h"
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

Trouble damaged(std::int64_t store_seq) { return {"store_damaged", "entry " + std::to_string(store_seq), store_seq}; }

bool readable(const VisitRow& row) {
  return is_utf8(row.visit_id + row.opened_at + row.changed_at + row.client + row.date);
}

// A connection and whoever uses it now.
struct Lane {
  std::unique_ptr<Connection> db;
  std::timed_mutex mutex;
};

class SqliteStore : public Store {
 public:
  // `file` and `reader` are empty in memory: there, readers and writers take turns.
  SqliteStore(Options options, std::unique_ptr<SalonFile> file, std::unique_ptr<Connection> writer,
              std::unique_ptr<Connection> reader)
      : options_(std::move(options)), file_(std::move(file)), writer_(std::make_shared<Lane>()), reader_(writer_) {
    writer_->db = std::move(writer);
    if (!reader) return;
    reader_ = std::make_shared<Lane>();
    reader_->db = std::move(reader);
  }

  // Leaves one whole file behind that needs no PATH-wal; what another program still reads stays as it is.
  ~SqliteStore() override {
    if (!file_) return;
    reader_->db.reset();
    if (file_->still_there()) static_cast<void>(writer_->db->script("PRAGMA journal_mode = DELETE"));
    writer_->db.reset();
  }

  Expected<Entry> append(const NewEntry& asked) override {
    const auto lane = enter(*writer_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    Entry made;
    const auto done = writer_->db->transaction([&]() -> Expected<void> {
      auto known = one("SELECT " + std::string(entry_columns) + " FROM entries WHERE id = $id", {{"$id", asked.id}});
      if (!known) return tl::unexpected(known.error());
      if (*known) return accept_again(asked, **known, made);
      return write(asked, made);
    });
    if (!done) return tl::unexpected(done.error());
    made = told(std::move(made));
    if (!file_) return made;
    // Acknowledged is only what lies in the file that others will open.
    const Head newest = made.store_seq > anchored_.store_seq ? Head{made.store_seq, made.hash} : anchored_;
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    if (const auto kept = file_->anchor(newest); !kept) return tl::unexpected(kept.error());
    anchored_ = newest;
    return made;
  }

  Expected<std::optional<VisitRow>> visit(const std::string& visit_id) override {
    const auto lane = enter(*reader_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    std::optional<VisitRow> out;
    bool whole = true;
    const auto read = reader_->db->run(
        "SELECT " + std::string(visit_columns) +
            ", e.id, e.body, e.made_at, e.kind, e.hash, before.hash FROM visits JOIN entries AS e USING (store_seq) "
            "LEFT JOIN entries AS before ON before.store_seq = e.store_seq - 1 WHERE visits.visit_id = $visit",
        {{"$visit", visit_id}}, [&](const Row& r) {
          out = visit_of(r);
          out->entry_id = r.text(7);
          out->body = r.text(8);
          const Entry e{out->store_seq, out->entry_id, visit_id,  out->seq,
                        r.text(9),      r.text(10),    out->body, r.blob(11)};
          whole = e.hash == chain_hash(r.blob(12), e) && readable(*out) && is_utf8(out->entry_id);
        });
    if (!read) return tl::unexpected(read.error());
    if (!whole) return tl::unexpected(damaged(out->store_seq));
    return out;
  }

  Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked) override {
    const auto lane = enter(*reader_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    std::vector<VisitRow> out;
    const auto read = reader_->db->run(
        "SELECT " + std::string(visit_columns) +
            " FROM visits WHERE store_seq < $before AND ($find = '' OR instr(plain(client), $find) > 0) AND "
            "($client = '' OR plain(client) = $client) ORDER BY store_seq DESC LIMIT $limit",
        {{"$before", asked.before},
         {"$find", plain(asked.find)},
         {"$client", plain(asked.client)},
         {"$limit", std::int64_t{asked.limit}}},
        [&](const Row& r) { out.push_back(visit_of(r)); });
    if (!read) return tl::unexpected(read.error());
    for (const VisitRow& row : out) {
      if (!readable(row)) return tl::unexpected(damaged(row.store_seq));
    }
    return out;
  }

  Expected<std::vector<Entry>> changes(std::int64_t after, int limit) override {
    const auto lane = enter(*reader_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    std::vector<Entry> out;
    const auto read = reader_->db->run("SELECT " + std::string(entry_columns) +
                                           " FROM entries WHERE store_seq > $after ORDER BY store_seq LIMIT $limit",
                                       {{"$after", after}, {"$limit", std::int64_t{limit}}},
                                       [&](const Row& r) { out.push_back(told(entry_of(r))); });
    if (!read) return tl::unexpected(read.error());
    for (const Entry& e : out) {
      if (!is_utf8(e.id + e.visit_id + e.made_at + e.kind)) return tl::unexpected(damaged(e.store_seq));
    }
    return out;
  }

  Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop) override {
    if (!file_) {
      const auto lane = enter(*writer_);
      return lane ? check_chain(*writer_->db) : tl::unexpected(lane.error());
    }
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    // On a connection of its own: it takes long in a long journal, and nobody waits for it.
    auto db = Connection::open(options_, true);
    if (!db) return tl::unexpected(db.error());
    (*db)->until(stop);
    if (const auto whole = check_structure(**db, file_->path(), true); !whole) return tl::unexpected(whole.error());
    return check_chain(**db);
  }

  Head& anchored() { return anchored_; }

 private:
  using Turn = std::unique_lock<std::timed_mutex>;

  // Waits for its turn as long as for another program, no longer; by the wall clock, as the thread sanitizer does not
  // see a lock that is waited for by the steady one.
  Expected<Turn> enter(Lane& lane) {
    Turn turn(lane.mutex, std::chrono::system_clock::now() + std::chrono::milliseconds(options_.patience_ms));
    if (!turn) return tl::unexpected(Trouble{"store_unavailable", "another program holds the file", 0});
    return turn;
  }

  Expected<void> still_there() const { return file_ ? file_->still_there() : Expected<void>{}; }

  Expected<std::optional<Entry>> one(const std::string& sql, const std::map<std::string, Value>& values) {
    std::optional<Entry> out;
    const auto read = writer_->db->run(sql, values, [&](const Row& row) { out = entry_of(row); });
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
    const auto read = writer_->db->run("SELECT coalesce(max(seq), 0) FROM entries WHERE visit_id = $visit",
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
    return writer_->db->run(
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

  Options options_;
  std::unique_ptr<SalonFile> file_;  // outlives the connections: closed before them, it would open their locks
  std::shared_ptr<Lane> writer_, reader_;
  Head anchored_;
};

Expected<void> check_opened(Connection& db, const SalonFile& file, bool lacks_wal, bool as_found) {
  if (as_found) {
    if (const auto ours = check_identity(db, file.path()); !ours) return tl::unexpected(ours.error());
    return check_structure(db, file.path());
  }
  const auto anchored = file.anchored();
  return anchored ? check_journal(db, file.path(), *anchored, lacks_wal) : tl::unexpected(anchored.error());
}

}  // namespace

Expected<std::unique_ptr<Store>> open_file(Options options, bool fresh) {
  auto file = SalonFile::lock(options.path, fresh);
  if (!file) return tl::unexpected(file.error());
  options.path = (*file)->path();
  const bool without_wal = !fresh && lacks_wal(options.path);
  auto writer = Connection::open(options);
  if (!writer) return tl::unexpected(writer.error());
  if (!fresh) {
    if (auto good = check_opened(**writer, **file, without_wal, options.as_found); !good)
      return tl::unexpected(good.error());
    if (auto ours = (*file)->accept(); !ours) return tl::unexpected(ours.error());
    // Before the file says that it has a PATH-wal.
    const auto head = read_head(**writer);
    if (!head) return tl::unexpected(head.error());
    if (auto kept = (*file)->anchor(*head, true); !kept) return tl::unexpected(kept.error());
  } else if (auto ours = (*file)->accept(); !ours) {
    return tl::unexpected(ours.error());
  }
  if (auto set = (*writer)->script("PRAGMA journal_mode = WAL"); !set) return tl::unexpected(set.error());
  if (auto made = migrate(**writer); !made) return tl::unexpected(made.error());
  const auto head = read_head(**writer);
  if (!head) return tl::unexpected(head.error());
  auto reader = Connection::open(options, true);
  if (!reader) return tl::unexpected(reader.error());
  (*file)->remember();
  auto out = std::make_unique<SqliteStore>(options, std::move(*file), std::move(*writer), std::move(*reader));
  out->anchored() = *head;
  return out;
}

Expected<std::unique_ptr<Store>> Store::open(const Options& options) {
  if (sodium_init() < 0) return tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0});
  if (options.path != ":memory:") return open_file(options, false);
  auto db = Connection::open(options);
  if (!db) return tl::unexpected(db.error());
  if (const auto made = migrate(**db); !made) return tl::unexpected(made.error());
  return std::make_unique<SqliteStore>(options, nullptr, std::move(*db), nullptr);
}

}  // namespace strandline::store
