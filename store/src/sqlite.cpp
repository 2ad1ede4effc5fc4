#include "sqlite.h"

#include <sqlite3.h>

#include <new>

namespace strandline::store {

namespace {

Trouble unavailable(std::string detail) { return {"store_unavailable", std::move(detail), 0}; }

int bind(sqlite3_stmt* statement, int index, const Value& v) {
  if (v.kind == Value::Kind::number) return sqlite3_bind_int64(statement, index, v.number);
  if (v.kind == Value::Kind::blob) {
    return sqlite3_bind_blob64(statement, index, v.text.data(), v.text.size(), SQLITE_TRANSIENT);
  }
  return sqlite3_bind_text64(statement, index, v.text.data(), v.text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
}

// A value that could not be handed out is none that is empty.
const void* handed_out(sqlite3_stmt* statement, const void* value) {
  if (!value && sqlite3_errcode(sqlite3_db_handle(statement)) == SQLITE_NOMEM) throw std::bad_alloc();
  return value;
}

class SqliteRow final : public Row {
 public:
  explicit SqliteRow(sqlite3_stmt* statement) : statement_(statement) {}
  std::int64_t integer(int column) const override { return sqlite3_column_int64(statement_, column); }
  std::string text(int column) const override {
    return bytes(handed_out(statement_, sqlite3_column_text(statement_, column)), column);
  }
  std::string blob(int column) const override {
    return bytes(handed_out(statement_, sqlite3_column_blob(statement_, column)), column);
  }

 private:
  std::string bytes(const void* from, int column) const {
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
    return from ? std::string(static_cast<const char*>(from), size) : "";
  }

  sqlite3_stmt* statement_;
};

class Sqlite final : public Connection {
 public:
  explicit Sqlite(std::function<bool()> fails) : fails_(std::move(fails)) {}
  Expected<void> open(const Options& options, bool reading);
  ~Sqlite() override;

  Expected<void> script(const std::string& sql) override;
  Expected<void> run(std::string_view sql, const std::map<std::string, Value>& values,
                     const std::function<void(const Row&)>& each) override;
  void until(const std::stop_token& stop) override;
  // BEGIN IMMEDIATE … COMMIT, or ROLLBACK when the work fails.
  Expected<void> transaction(const std::function<Expected<void>()>& work) override;

 private:
  bool failing() const { return fails_ && fails_(); }
  tl::unexpected<Trouble> trouble() const;
  Expected<sqlite3_stmt*> prepared(std::string_view sql);

  std::function<bool()> fails_;
  std::stop_token stop_;
  sqlite3* db_ = nullptr;
  std::map<std::string, sqlite3_stmt*, std::less<>> statements_;
};

Expected<void> Sqlite::open(const Options& options, bool reading) {
  if (failing()) return tl::unexpected(unavailable("open"));
  constexpr int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_FULLMUTEX;
  if (sqlite3_open_v2(options.path.c_str(), &db_, flags, nullptr) != SQLITE_OK) return trouble();
  sqlite3_extended_result_codes(db_, 1);
  sqlite3_busy_timeout(db_, options.patience_ms);
  sqlite3_db_config(db_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, reading ? 1 : 0, nullptr);
  const std::string rules =
      "PRAGMA cell_size_check = ON; PRAGMA synchronous = FULL; PRAGMA secure_delete = ON; PRAGMA temp_store = MEMORY;";
  if (auto set = script(rules + (reading ? "PRAGMA query_only = ON" : "")); !set) {
    const bool foreign = set.error().code == "store_foreign";
    return tl::unexpected(foreign ? Trouble{"store_foreign", options.path, 0} : set.error());
  }
  return {};
}

Sqlite::~Sqlite() {
  for (const auto& [sql, statement] : statements_) sqlite3_finalize(statement);
  sqlite3_close(db_);
}

tl::unexpected<Trouble> Sqlite::trouble() const {
  if (!db_) return tl::unexpected(unavailable("out of memory"));
  const std::string said = sqlite3_errmsg(db_);
  const int code = sqlite3_errcode(db_) & 0xff;
  if (code == SQLITE_CORRUPT) return tl::unexpected(Trouble{"store_damaged", said, 0});
  if (code == SQLITE_NOTADB) return tl::unexpected(Trouble{"store_foreign", said, 0});
  return tl::unexpected(unavailable(said));
}

Expected<void> Sqlite::script(const std::string& sql) {
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  if (sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) return trouble();
  return {};
}

Expected<sqlite3_stmt*> Sqlite::prepared(std::string_view sql) {
  if (const auto found = statements_.find(sql); found != statements_.end()) return found->second;
  const auto made = statements_.emplace(std::string(sql), nullptr).first;
  if (sqlite3_prepare_v2(db_, sql.data(), static_cast<int>(sql.size()), &made->second, nullptr) == SQLITE_OK)
    return made->second;
  auto failed = trouble();
  statements_.erase(made);
  return failed;
}

Expected<void> Sqlite::run(std::string_view sql, const std::map<std::string, Value>& values,
                           const std::function<void(const Row&)>& each) {
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  const auto statement = prepared(sql);
  if (!statement) return tl::unexpected(statement.error());
  struct Reset {
    sqlite3_stmt* s;
    ~Reset() {
      sqlite3_reset(s);
      sqlite3_clear_bindings(s);
    }
  } reset{*statement};
  for (const auto& [name, value] : values) {
    const int index = sqlite3_bind_parameter_index(*statement, name.c_str());
    if (index == 0 || bind(*statement, index, value) != SQLITE_OK) return trouble();
  }
  for (;;) {
    if (failing()) return tl::unexpected(unavailable("interrupted"));
    const int got = sqlite3_step(*statement);
    if (got == SQLITE_DONE) return {};
    if (got != SQLITE_ROW) return trouble();
    if (each) each(SqliteRow(*statement));
  }
}

void Sqlite::until(const std::stop_token& stop) {
  constexpr int steps = 1000;  // of SQLite's machine, between two looks
  stop_ = stop;
  const auto asked = [](void* own) { return static_cast<Sqlite*>(own)->stop_.stop_requested() ? 1 : 0; };
  sqlite3_progress_handler(db_, steps, asked, this);
}

Expected<void> Sqlite::transaction(const std::function<Expected<void>()>& work) {
  if (auto begun = script("BEGIN IMMEDIATE"); !begun) return begun;
  // Whatever ends the work, an exception too: a failed COMMIT may or may not have ended the transaction, and what is
  // still open is undone here, whatever the hook says.
  struct Undone {
    sqlite3* db;
    ~Undone() {
      if (!sqlite3_get_autocommit(db)) sqlite3_exec(db, "ROLLBACK", nullptr, nullptr, nullptr);
    }
  } undone{db_};
  auto done = work();
  if (done) done = script("COMMIT");
  return done;
}

}  // namespace

Expected<std::unique_ptr<Connection>> open_sqlite(const Options& options, bool reading) {
  auto out = std::make_unique<Sqlite>(options.fails);
  if (auto opened = out->open(options, reading); !opened) return tl::unexpected(opened.error());
  return out;
}

}  // namespace strandline::store
