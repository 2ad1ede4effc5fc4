#include "postgres_store.h"

#include <sodium.h>

#include <chrono>
#include <mutex>

#include "chain.h"
#include "checks.h"
#include "drafts.h"
#include "journal.h"
#include "key_file.h"
#include "labels.h"
#include "open_file.h"

namespace strandline::store {

namespace {

// A connection and whoever uses it now.
struct Lane {
  std::unique_ptr<Postgres> db;
  std::timed_mutex mutex;
};

// Keeps nothing of the salon in memory but the master key: what another server wrote is seen at the next question.
class PostgresStore final : public Store {
 public:
  // Without a `reader`, readers and writers take turns.
  PostgresStore(Options options, Keys keys, std::unique_ptr<Postgres> writer, std::unique_ptr<Postgres> reader)
      : options_(std::move(options)), keys_(std::move(keys)), writer_(std::make_shared<Lane>()), reader_(writer_) {
    writer_->db = std::move(writer);
    if (!reader) return;
    reader_ = std::make_shared<Lane>();
    reader_->db = std::move(reader);
  }

  Expected<std::vector<Fact>> hand_in(const std::vector<NewFact>& facts, const std::string& forget,
                                      std::int64_t seen) override {
    std::vector<Fact> made;
    const auto done = write([&](Connection& db) -> Expected<void> {
      for (const NewFact& fact : facts) {
        auto kept = append_fact(db, keys_, fact);
        if (!kept) return tl::unexpected(kept.error());
        made.push_back(std::move(*kept));
      }
      return forget.empty() ? Expected<void>() : forget_draft(db, forget, seen);
    });
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
    if (!done) return tl::unexpected(done.error());
    return made;
  }

  Expected<std::optional<VisitRow>> visit(const std::string& visit_id) override {
    return read([&](Connection& db) { return read_draft(db, keys_, visit_id); });
  }

  Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked) override {
    Labels labels;
    return labels.list(asked, [&] { return read([&](Connection& db) { return read_labels(db, keys_); }); });
  }

  Expected<std::vector<Save>> changes(std::int64_t after, int limit) override {
    return read([&](Connection& db) { return read_saves(db, after, limit); });
  }

  Expected<void> erase(const std::string& owner) override {
    // Listed first, as for a file: a database put back from an older copy forgets nobody's erasure.
    if (auto listed = list_erased(owner); !listed) return listed;
    return write([&](Connection& db) { return Keys::destroy(db, owner); });
  }

  Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop) override {
    // On a connection of its own: it takes long in a long journal, and nobody waits for it.
    std::unique_ptr<Postgres> own;
    if (reader_ != writer_) {
      auto opened = Postgres::open(options_);
      if (!opened) return tl::unexpected(opened.error());
      own = std::move(*opened);
      own->until(stop);
    }
    Expected<std::optional<std::int64_t>> found;
    const auto look = [&](Postgres& db) -> Expected<void> {
      return db.reading([&]() -> Expected<void> {
        if (auto drafts = check_drafts(db, keys_); !drafts) return drafts;
        found = check_facts(db);
        return found ? Expected<void>() : tl::unexpected(found.error());
      });
    };
    if (own) {
      if (auto done = look(*own); !done) return tl::unexpected(done.error());
      return found;
    }
    const auto lane = enter(*writer_);
    if (!lane) return tl::unexpected(lane.error());
    if (auto done = look(*writer_->db); !done) return tl::unexpected(done.error());
    return found;
  }

  // The connection of one without a reader, for whoever lent it.
  std::unique_ptr<Postgres> given_back() { return std::move(writer_->db); }

 private:
  using Turn = std::unique_lock<std::timed_mutex>;

  Expected<Turn> enter(Lane& lane) const {
    Turn turn(lane.mutex, std::chrono::system_clock::now() + std::chrono::milliseconds(options_.patience_ms));
    if (!turn) return tl::unexpected(Trouble{"store_unavailable", "the database takes too long", 0});
    return turn;
  }

  Expected<void> list_erased(const std::string& owner) {
    const auto lane = enter(*writer_);
    return lane ? keys_.list_erased(owner) : tl::unexpected(lane.error());
  }

  template <class Work>
  auto read(const Work& work) -> decltype(work(std::declval<Connection&>())) {
    const auto lane = enter(*reader_);
    if (!lane) return tl::unexpected(lane.error());
    std::optional<decltype(work(std::declval<Connection&>()))> found;
    const auto done = reader_->db->reading([&]() -> Expected<void> {
      found = work(*reader_->db);
      return *found ? Expected<void>() : tl::unexpected(found->error());
    });
    if (!done) return tl::unexpected(done.error());
    return std::move(*found);
  }

  Expected<void> write(const std::function<Expected<void>(Connection&)>& work) {
    const auto lane = enter(*writer_);
    if (!lane) return tl::unexpected(lane.error());
    return writer_->db->transaction([&] { return work(*writer_->db); });
  }

  Options options_;
  Keys keys_;
  std::shared_ptr<Lane> writer_, reader_;
};

Expected<Keys> read_keys(const std::string& path) {
  auto key = read_key(path);
  if (!key) return tl::unexpected(key.error());
  if (!*key) return tl::unexpected(file_trouble("store_key_missing", path));
  auto erased = read_erased(path);
  if (!erased) return tl::unexpected(erased.error());
  return Keys(**key, path, std::move(*erased));
}

Expected<void> expect_salon(Postgres& db) {
  const auto there = has_salon(db);
  if (!there) return tl::unexpected(there.error());
  return *there ? Expected<void>() : tl::unexpected(Trouble{"store_missing", db.place().told, 0});
}

}  // namespace

Expected<bool> has_salon(Connection& db) {
  bool there = false;
  const auto read = db.run("SELECT saves FROM salons", {}, [&](const Row&) { there = true; });
  if (!read) return tl::unexpected(read.error());
  return there;
}

Expected<Head> salon_head(Connection& db) {
  Head out;
  auto read = db.run("SELECT store_seq, hash FROM facts ORDER BY store_seq DESC LIMIT 1", {},
                     [&](const Row& r) { out = {r.integer(0), hexadecimal(r.blob(1))}; });
  if (read) read = db.run("SELECT saves FROM salons", {}, [&](const Row& r) { out.saves = r.integer(0); });
  if (!read) return tl::unexpected(read.error());
  return out;
}

Expected<std::unique_ptr<Store>> open_postgres(const Options& options) {
  auto keys = read_keys(key_path(options));
  if (!keys) return tl::unexpected(keys.error());
  auto writer = Postgres::open(options);
  if (!writer) return tl::unexpected(writer.error());
  auto& db = **writer;
  // Before anything is written: that it is this salon's key.
  auto ours = db.reading([&]() -> Expected<void> {
    auto there = expect_salon(db);
    return there ? keys->recognise(db) : there;
  });
  if (!ours) return tl::unexpected(ours.error());
  if (!keys->none_erased()) {
    if (auto gone = db.transaction([&] { return keys->destroy_erased(db); }); !gone)
      return tl::unexpected(gone.error());
  }
  auto reader = Postgres::open(options);
  if (!reader) return tl::unexpected(reader.error());
  return std::make_unique<PostgresStore>(options, std::move(*keys), std::move(*writer), std::move(*reader));
}

Expected<void> make_postgres(const Options& options, const std::function<Expected<void>(Store&)>& fill) {
  auto opened = Postgres::open(options);
  if (!opened) return tl::unexpected(opened.error());
  Postgres& db = **opened;
  const std::string key = key_path(options);
  auto there = read_key(key);
  if (!there) return tl::unexpected(there.error());
  if (!*there) {
    if (auto kept = write_key(key, Key::made()); !kept) return kept;
  }
  auto keys = read_keys(key);
  if (!keys) return tl::unexpected(keys.error());
  // The whole of it is one transaction: the store's own are parts of it.
  return db.founding([&]() -> Expected<void> {
    const auto known = has_salon(db);
    if (!known) return tl::unexpected(known.error());
    if (*known) return tl::unexpected(Trouble{"store_exists", db.place().told, 0});
    if (auto made = db.run("INSERT INTO salons (saves) VALUES (0)"); !made) return made;
    if (auto ours = keys->claim(db); !ours) return ours;
    PostgresStore store(options, *keys, std::move(*opened), nullptr);
    auto filled = fill(store);
    *opened = store.given_back();
    return filled;
  });
}

Expected<Verified> verify_postgres(const Options& options) {
  auto opened = Postgres::open(options);
  if (!opened) return tl::unexpected(opened.error());
  Postgres& db = **opened;
  const auto master = read_key(key_path(options));
  if (!master) return tl::unexpected(master.error());
  Verified out;
  const auto done = db.reading([&]() -> Expected<void> {
    if (auto there = expect_salon(db); !there) return there;
    const auto head = salon_head(db);
    if (!head) return tl::unexpected(head.error());
    const auto broken = check_facts(db);
    if (!broken) return tl::unexpected(broken.error());
    out = {head->store_seq, head->hash, false, master->has_value(), *broken};
    if (!*master) return {};
    const Keys keys(**master, key_path(options), {});
    if (auto ours = keys.recognise(db); !ours) return ours;
    return check_drafts(db, keys);
  });
  if (!done) return tl::unexpected(done.error());
  return out;
}

}  // namespace strandline::store
