#include "strandline/store/store.h"

#include <sodium.h>

#include <chrono>
#include <mutex>

#include "checks.h"
#include "drafts.h"
#include "journal.h"
#include "key_file.h"
#include "labels.h"
#include "migrations.h"
#include "open_file.h"
#include "postgres_store.h"
#include "sqlite.h"

namespace strandline::store {

namespace {

// A connection and whoever uses it now.
struct Lane {
  std::unique_ptr<Connection> db;
  std::timed_mutex mutex;
};

class SqliteStore : public Store {
 public:
  // `file` and `reader` are empty in memory: there, readers and writers take turns.
  SqliteStore(Options options, Keys keys, std::unique_ptr<SalonFile> file, std::unique_ptr<Connection> writer,
              std::unique_ptr<Connection> reader)
      : options_(std::move(options)),
        keys_(std::move(keys)),
        file_(std::move(file)),
        writer_(std::make_shared<Lane>()),
        reader_(writer_) {
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

  Expected<std::vector<Fact>> hand_in(const std::vector<NewFact>& facts, const std::string& forget,
                                      std::int64_t seen) override {
    std::vector<Fact> made;
    const auto done = write([&](Connection& db) -> Expected<void> {
      made.clear();
      for (const NewFact& fact : facts) {
        auto kept = append_fact(db, keys_, fact);
        if (!kept) return tl::unexpected(kept.error());
        made.push_back(std::move(*kept));
      }
      return forget.empty() ? Expected<void>() : forget_draft(db, forget, seen);
    });
    if (!forget.empty()) labels_.forget();
    if (!done) return tl::unexpected(done.error());
    return made;
  }

  Expected<std::vector<Fact>> facts(const FactsAsked& asked) override {
    return read([&](Connection& db) { return read_facts(db, keys_, asked); });
  }

  Expected<Save> save(const NewDraft& asked) override {
    Save made;
    const auto done = write([&](Connection& db) -> Expected<void> {
      auto kept = save_draft(db, keys_, asked);
      if (!kept) return tl::unexpected(kept.error());
      made = std::move(*kept);
      return {};
    });
    // What failed may be there all the same.
    if (!done && done.error().code == "store_unavailable") labels_.forget();
    if (!done) return tl::unexpected(done.error());
    const auto row = visit(asked.visit_id);
    if (row && *row)
      labels_.put(without_body(**row));
    else
      labels_.forget();
    return made;
  }

  Expected<std::optional<VisitRow>> visit(const std::string& visit_id) override {
    return read([&](Connection& db) { return read_draft(db, keys_, visit_id); });
  }

  Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked) override {
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    return labels_.list(asked, [&] { return read([&](Connection& db) { return read_labels(db, keys_); }); });
  }

  Expected<std::vector<Save>> changes(std::int64_t after, int limit) override {
    return read([&](Connection& db) { return read_saves(db, after, limit); });
  }

  Expected<void> erase(const std::string& owner) override {
    // Listed first: cut off after it, the next opening does the rest.
    {
      const auto lane = enter(*writer_);
      if (!lane) return tl::unexpected(lane.error());
      if (auto listed = keys_.list_erased(owner); !listed) return listed;
    }
    const auto done = write([&](Connection& db) { return keys_.destroy_erased(db); });
    labels_.forget();
    if (!done) return done;
    return emptied_wal();
  }

  Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop) override {
    if (!file_) {
      const auto lane = enter(*writer_);
      if (!lane) return tl::unexpected(lane.error());
      if (const auto drafts = check_drafts(*writer_->db, keys_); !drafts) return tl::unexpected(drafts.error());
      return check_chain(*writer_->db);
    }
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    // On a connection of its own: it takes long in a long journal, and nobody waits for it.
    auto db = open_sqlite(options_, true);
    if (!db) return tl::unexpected(db.error());
    (*db)->until(stop);
    if (const auto whole = check_structure(**db, file_->path(), true); !whole) return tl::unexpected(whole.error());
    if (const auto drafts = check_drafts(**db, keys_); !drafts) return tl::unexpected(drafts.error());
    return check_chain(**db);
  }

  // Whatever was removed is in no older page of PATH-wal any more. As far as no reader is in the way; closing does it.
  Expected<void> emptied_wal() {
    const auto lane = enter(*writer_);
    if (!lane) return tl::unexpected(lane.error());
    return file_ ? writer_->db->script("PRAGMA wal_checkpoint(TRUNCATE)") : Expected<void>();
  }

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

  static VisitRow without_body(VisitRow row) {
    row.body.clear();
    return row;
  }

  template <class Work>
  auto read(const Work& work) -> decltype(work(std::declval<Connection&>())) {
    const auto lane = enter(*reader_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    return work(*reader_->db);
  }

  // One transaction, acknowledged when it lies in the file that others will open and is anchored.
  Expected<void> write(const std::function<Expected<void>(Connection&)>& work) {
    const auto lane = enter(*writer_);
    if (!lane) return tl::unexpected(lane.error());
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    Head newest;
    const auto done = writer_->db->transaction([&]() -> Expected<void> {
      if (auto worked = work(*writer_->db); !worked) return worked;
      const auto head = read_head(*writer_->db);
      if (!head) return tl::unexpected(head.error());
      newest = *head;
      return {};
    });
    if (!done || !file_) return done;
    if (const auto there = still_there(); !there) return tl::unexpected(there.error());
    return file_->anchor(newest);
  }

  Options options_;
  Keys keys_;
  Labels labels_;
  std::unique_ptr<SalonFile> file_;  // outlives the connections: closed before them, it would open their locks
  std::shared_ptr<Lane> writer_, reader_;
};

Expected<void> check_opened(Connection& db, const SalonFile& file, bool lacks_wal, bool as_found) {
  if (as_found) {
    if (const auto ours = check_identity(db, file.path()); !ours) return tl::unexpected(ours.error());
    return check_structure(db, file.path());
  }
  const auto anchored = file.anchored();
  return anchored ? check_journal(db, file.path(), *anchored, lacks_wal) : tl::unexpected(anchored.error());
}

// The master key of a file that has been accepted; one is made where the file has none yet.
Expected<Keys> master_of(Connection& db, const std::string& path) {
  auto key = read_key(path);
  if (!key) return tl::unexpected(key.error());
  auto erased = read_erased(path);
  if (!erased) return tl::unexpected(erased.error());
  const auto sealed = has_facts(db);
  if (!sealed) return tl::unexpected(sealed.error());
  if (*key) {
    Keys keys(**key, path, std::move(*erased));
    // Before anything is written to a file that may be another salon's.
    if (*sealed) {
      if (auto ours = keys.recognise(db); !ours) return tl::unexpected(ours.error());
    }
    return keys;
  }
  if (*sealed) return tl::unexpected(file_trouble("store_key_missing", path));
  const Key made = Key::made();
  if (auto kept = write_key(path, made); !kept) return tl::unexpected(kept.error());
  return Keys(made, path, std::move(*erased));
}

}  // namespace

Expected<Fact> Store::append(const NewFact& fact) {
  return hand_in({fact}, "", 0).map([](std::vector<Fact> made) { return std::move(made.front()); });
}

std::string key_path(const Options& options) {
  if (!options.key.empty()) return real_path(options.key);
  return is_postgres(options.path) ? real_path("salon-key") : real_path(options.path) + "-key";
}

Expected<std::unique_ptr<Store>> open_file(Options options, bool fresh) {
  auto file = SalonFile::lock(options.path, fresh);
  if (!file) return tl::unexpected(file.error());
  options.path = (*file)->path();
  options.key = key_path(options);
  const bool without_wal = !fresh && lacks_wal(options.path);
  auto writer = open_sqlite(options);
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
  auto keys = master_of(**writer, options.key);
  if (!keys) return tl::unexpected(keys.error());
  if (auto set = (*writer)->script("PRAGMA journal_mode = WAL"); !set) return tl::unexpected(set.error());
  if (auto made = migrate(**writer, *keys, options.as_found); !made) return tl::unexpected(made.error());
  // What was moved out of an older file, or erased from this one, is in no page of PATH-wal either.
  if (auto emptied = (*writer)->script("PRAGMA wal_checkpoint(TRUNCATE)"); !emptied)
    return tl::unexpected(emptied.error());
  const auto moved = read_head(**writer);
  if (!moved) return tl::unexpected(moved.error());
  if (auto kept = (*file)->anchor(*moved, true); !kept) return tl::unexpected(kept.error());
  auto reader = open_sqlite(options, true);
  if (!reader) return tl::unexpected(reader.error());
  (*file)->remember();
  return std::make_unique<SqliteStore>(options, std::move(*keys), std::move(*file), std::move(*writer),
                                       std::move(*reader));
}

Expected<std::unique_ptr<Store>> Store::open(const Options& options) {
  if (sodium_init() < 0) return tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0});
  if (is_postgres(options.path)) return open_postgres(options);
  if (options.path != ":memory:") return open_file(options, false);
  auto db = open_sqlite(options);
  if (!db) return tl::unexpected(db.error());
  const Keys keys(Key::made(), "", {});
  if (const auto made = migrate(**db, keys, false); !made) return tl::unexpected(made.error());
  return std::make_unique<SqliteStore>(options, keys, nullptr, std::move(*db), nullptr);
}

}  // namespace strandline::store
