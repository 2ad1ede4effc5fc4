#include "transfer.h"

#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <map>

#include "checks.h"
#include "drafts.h"
#include "key_file.h"
#include "keys.h"
#include "migrations.h"
#include "open_file.h"
#include "postgres_store.h"
#include "sqlite.h"
#include "strandline/store/move.h"

namespace strandline::store {

namespace {

namespace fs = std::filesystem;

struct Column {
  const char* name;
  Value::Kind kind;
};
struct Table {
  const char* name;
  std::vector<Column> columns;
};
constexpr auto number = Value::Kind::number, text = Value::Kind::text, blob = Value::Kind::blob;

// All that a salon is, in an order in which nothing refers to what is not there; `master` is claimed.
const std::vector<Table>& tables() {
  static const std::vector<Table> all{
      {"facts",
       {{"store_seq", number},
        {"id", text},
        {"stream", text},
        {"seq", number},
        {"made_at", text},
        {"kind", text},
        {"version", number},
        {"about", text},
        {"key", text},
        {"body", blob},
        {"hash", blob}}},
      {"keys", {{"owner", text}, {"wrapped", blob}}},
      {"saves",
       {{"store_seq", number}, {"id", text}, {"visit_id", text}, {"seq", number}, {"made_at", text}, {"digest", blob}}},
      {"drafts",
       {{"visit_id", text},
        {"store_seq", number},
        {"seq", number},
        {"save_id", text},
        {"opened_at", text},
        {"changed_at", text},
        {"person", text},
        {"label", blob},
        {"body", blob}}}};
  return all;
}

Expected<void> copy_rows(Connection& from, Connection& to, const Table& table) {
  std::string names, marks;
  for (const Column& c : table.columns) {
    names += (names.empty() ? "" : ", ") + std::string(c.name);
    marks += (marks.empty() ? "$" : ", $") + std::string(c.name);
  }
  const std::string put = "INSERT INTO " + std::string(table.name) + " (" + names + ") VALUES (" + marks + ")";
  Expected<void> done;
  const auto read = from.run("SELECT " + names + " FROM " + table.name, {}, [&](const Row& r) {
    if (!done) return;
    std::map<std::string, Value> values;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const auto [name, kind] = table.columns[i];
      const int at = static_cast<int>(i);
      values.emplace('$' + std::string(name), kind == number ? Value(r.integer(at))
                                              : kind == text ? Value(r.text(at))
                                                             : Value::blob(r.blob(at)));
    }
    done = to.run(put, values);
  });
  return read ? done : read;
}

// Everything but the master's mark, and the same number of rows on both sides.
Expected<void> copy_salon(Connection& from, Connection& to) {
  for (const Table& table : tables()) {
    if (auto copied = copy_rows(from, to, table); !copied) return copied;
    std::array<std::int64_t, 2> rows{};
    const std::string count = "SELECT count(*) FROM " + std::string(table.name);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (auto read = (i == 0 ? from : to).run(count, {}, [&](const Row& r) { rows[i] = r.integer(0); }); !read)
        return read;
    }
    if (rows[0] != rows[1]) return tl::unexpected(Trouble{"store_move_differs", table.name, rows[1]});
  }
  return {};
}

Expected<Keys> keys_of(const Options& options) {
  const std::string path = key_path(options);
  const auto master = read_key(path);
  if (!master) return tl::unexpected(master.error());
  if (!*master) return tl::unexpected(file_trouble("store_key_missing", path));
  auto erased = read_erased(path);
  if (!erased) return tl::unexpected(erased.error());
  return Keys(**master, path, std::move(*erased));
}

// Into an empty file, which is whole on the plate afterwards.
Expected<void> fill_file(Postgres& from, const Head& head, const Keys& keys, const std::string& path) {
  const int made = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (made < 0) return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
  ::close(made);
  auto file = open_sqlite({.path = path, .fails = {}});
  if (!file) return tl::unexpected(file.error());
  if (auto ready = migrate(**file, keys, false); !ready) return ready;
  return (*file)->transaction([&]() -> Expected<void> {
    if (auto emptied = (*file)->script("DELETE FROM keys"); !emptied) return emptied;
    if (auto copied = copy_salon(from, **file); !copied) return copied;
    // The next save goes on counting where the salon was, though the newest were forgotten.
    if (auto gone = (*file)->script("DELETE FROM sqlite_sequence WHERE name = 'saves'"); !gone) return gone;
    return (*file)->run("INSERT INTO sqlite_sequence (name, seq) VALUES ('saves', $saves)", {{"$saves", head.saves}});
  });
}

// Inside a transaction of `db`: the file at `to`, checked against what the database holds.
Expected<Verified> write_file(Postgres& db, const Options& options, const Keys& keys, const std::string& to) {
  const std::string making = to + "-new";
  ::unlink(making.c_str());
  const auto undo = [&] {
    for (const char* suffix : {"", "-journal", "-wal", "-shm"}) ::unlink((making + suffix).c_str());
  };
  const auto head = salon_head(db);
  if (!head) return tl::unexpected(head.error());
  auto done =
      fill_file(db, *head, keys, making).and_then([&] { return Store::verify_file(making, key_path(options)); });
  if (done && (done->entries != head->store_seq || done->hash != head->hash))
    done = tl::unexpected(Trouble{"store_move_differs", "facts", done->entries});
  if (done && !done->broken && ::renameat2(AT_FDCWD, making.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) != 0)
    done = tl::unexpected(errno == EEXIST ? file_trouble("store_exists", to)
                                          : Trouble{"store_unavailable", to + ": " + std::strerror(errno), 0});
  undo();
  if (!done || done->broken) return done;
  if (auto synced = sync_folder(to); !synced) return tl::unexpected(synced.error());
  return done;
}

Expected<void> refuse_taken(const std::string& path) {
  std::error_code error;
  if (fs::exists(path, error)) return tl::unexpected(file_trouble("store_exists", path));
  for (const char* suffix : {"-head", "-wal"}) {
    if (fs::exists(path + suffix, error)) return tl::unexpected(file_trouble("store_left_over", path + suffix));
  }
  return {};
}

// As the owner of the tables, inside the transaction that held the salon still.
Expected<void> leave(Postgres& db) {
  if (auto own = db.script("RESET ROLE; SET LOCAL strandline.leaving = 'yes'"); !own) return own;
  for (const char* table : {"all_facts", "all_keys", "all_masters", "all_drafts", "all_saves", "all_salons"}) {
    if (auto gone = db.run("DELETE FROM strandline." + std::string(table) + " WHERE salon = $salon",
                           {{"$salon", db.place().salon}});
        !gone)
      return gone;
  }
  return {};
}

Expected<Verified> move_out(const Options& from, const std::string& to) {
  const std::string path = real_path(to);
  if (auto free = refuse_taken(path); !free) return tl::unexpected(free.error());
  const auto keys = keys_of(from);
  if (!keys) return tl::unexpected(keys.error());
  auto db = Postgres::open(from);
  if (!db) return tl::unexpected(db.error());
  Expected<Verified> found;
  bool left = false;
  const auto done = (*db)->transaction([&]() -> Expected<void> {
    if (auto ours = keys->recognise(**db); !ours) return ours;
    found = write_file(**db, from, *keys, path);
    if (!found) return tl::unexpected(found.error());
    if (found->broken) return {};
    auto gone = leave(**db);
    if (!gone) ::unlink(path.c_str());  // the database still is the salon
    left = gone.has_value();
    return gone;
  });
  if (done) return found;
  // Both may hold it now; which one does is only known once the database answers, so the file stays.
  if (left) return tl::unexpected(Trouble{"store_move_unsure", path, 0});
  return tl::unexpected(done.error());
}

Expected<Verified> move_in(const Options& from, const std::string& to) {
  const std::string path = real_path(from.path);
  Options database = from;
  database.path = to, database.key = key_path(from);
  {
    // Brought up to date, compared with what was acknowledged, and closed as one plain file.
    const auto opened = Store::open(from);
    if (!opened) return tl::unexpected(opened.error());
  }
  const auto held = SalonFile::lock(path);
  if (!held) return tl::unexpected(held.error());
  auto done = copy_in(database, path);
  if (!done || done->broken) return done;
  for (const char* suffix : {"", "-head"}) {
    if (::renameat2(AT_FDCWD, (path + suffix).c_str(), AT_FDCWD, (path + "-moved" + suffix).c_str(),
                    RENAME_NOREPLACE) != 0)
      return tl::unexpected(Trouble{"store_unavailable", path + suffix + ": " + std::strerror(errno), 0});
  }
  if (auto synced = sync_folder(path); !synced) return tl::unexpected(synced.error());
  return done;
}

}  // namespace

Expected<Verified> copy_out(const Options& database, const std::string& to) {
  const std::string path = real_path(to);
  const auto keys = keys_of(database);
  if (!keys) return tl::unexpected(keys.error());
  auto db = Postgres::open(database);
  if (!db) return tl::unexpected(db.error());
  std::error_code error;
  if (fs::exists(path, error)) return tl::unexpected(file_trouble("store_exists", path));
  Expected<Verified> found;
  const auto done = (*db)->reading([&]() -> Expected<void> {
    const auto there = has_salon(**db);
    if (!there) return tl::unexpected(there.error());
    if (!*there) return tl::unexpected(Trouble{"store_missing", (*db)->place().told, 0});
    if (auto ours = keys->recognise(**db); !ours) return ours;
    found = write_file(**db, database, *keys, path);
    return found ? Expected<void>() : tl::unexpected(found.error());
  });
  return done ? found : tl::unexpected(done.error());
}

Expected<Verified> copy_in(const Options& database, const std::string& from) {
  const auto whole = Store::verify_file(from, key_path(database));
  if (!whole || whole->broken) return whole;
  const auto keys = keys_of(database);
  if (!keys) return tl::unexpected(keys.error());
  auto file = open_sqlite({.path = from, .fails = {}}, true);
  if (!file) return tl::unexpected(file.error());
  const auto head = read_head(**file);
  if (!head) return tl::unexpected(head.error());
  auto opened = Postgres::open(database);
  if (!opened) return tl::unexpected(opened.error());
  Postgres& db = **opened;
  const auto done = db.founding([&]() -> Expected<void> {
    const auto known = has_salon(db);
    if (!known) return tl::unexpected(known.error());
    if (*known) return tl::unexpected(Trouble{"store_exists", db.place().told, 0});
    if (auto made = db.run("INSERT INTO salons (saves) VALUES ($saves)", {{"$saves", head->saves}}); !made) return made;
    if (auto ours = keys->claim(db); !ours) return ours;
    if (auto copied = copy_salon(**file, db); !copied) return copied;
    if (auto gone = keys->destroy_erased(db); !gone) return gone;
    const auto arrived = salon_head(db);
    if (!arrived) return tl::unexpected(arrived.error());
    const auto broken = check_facts(db);
    if (!broken) return tl::unexpected(broken.error());
    if (*broken || *arrived != *head) return tl::unexpected(Trouble{"store_move_differs", "facts", arrived->store_seq});
    return check_drafts(db, *keys);
  });
  if (!done) return tl::unexpected(done.error());
  return whole;
}

bool is_address(const std::string& path) { return is_postgres(path) && read_place(path).has_value(); }

Expected<Verified> move_salon(const Options& from, const std::string& to) {
  if (sodium_init() < 0) return tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0});
  if (is_postgres(from.path) == is_postgres(to)) return tl::unexpected(Trouble{"store_move_between", "", 0});
  return is_postgres(to) ? move_in(from, to) : move_out(from, to);
}

}  // namespace strandline::store
