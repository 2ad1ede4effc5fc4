#include "connection.h"

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

}  // namespace

std::string Row::text(int column) const {
  const void* bytes = handed_out(statement_, sqlite3_column_text(statement_, column));
  return bytes ? std::string(static_cast<const char*>(bytes),
                             static_cast<std::size_t>(sqlite3_column_bytes(statement_, column)))
               : "";
}

std::string Row::blob(int column) const {
  const void* bytes = handed_out(statement_, sqlite3_column_blob(statement_, column));
  return bytes ? std::string(static_cast<const char*>(bytes),
                             static_cast<std::size_t>(sqlite3_column_bytes(statement_, column)))
               : "";
}

Value Value::blob(std::string bytes) {
  Value out(bytes);
  out.kind = Kind::blob;
  return out;
}

Expected<std::unique_ptr<Connection>> Connection::open(const Options& options, bool reading) {
  std::unique_ptr<Connection> out(new Connection(options.fails));
  if (out->failing()) return tl::unexpected(unavailable("open"));
  constexpr int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_FULLMUTEX;
  if (sqlite3_open_v2(options.path.c_str(), &out->db_, flags, nullptr) != SQLITE_OK) return out->trouble();
  sqlite3_extended_result_codes(out->db_, 1);
  sqlite3_busy_timeout(out->db_, options.patience_ms);
  sqlite3_db_config(out->db_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, reading ? 1 : 0, nullptr);
  const std::string rules =
      "PRAGMA cell_size_check = ON; PRAGMA synchronous = FULL; PRAGMA secure_delete = ON; PRAGMA temp_store = MEMORY;";
  if (auto set = out->script(rules + (reading ? "PRAGMA query_only = ON" : "")); !set) {
    const bool foreign = set.error().code == "store_foreign";
    return tl::unexpected(foreign ? Trouble{"store_foreign", options.path, 0} : set.error());
  }
  return out;
}

Connection::~Connection() {
  for (const auto& [sql, statement] : statements_) sqlite3_finalize(statement);
  sqlite3_close(db_);
}

tl::unexpected<Trouble> Connection::trouble() const {
  if (!db_) return tl::unexpected(unavailable("out of memory"));
  const std::string said = sqlite3_errmsg(db_);
  const int code = sqlite3_errcode(db_) & 0xff;
  if (code == SQLITE_CORRUPT) return tl::unexpected(Trouble{"store_damaged", said, 0});
  if (code == SQLITE_NOTADB) return tl::unexpected(Trouble{"store_foreign", said, 0});
  return tl::unexpected(unavailable(said));
}

Expected<void> Connection::script(const std::string& sql) {
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  if (sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) return trouble();
  return {};
}

Expected<sqlite3_stmt*> Connection::prepared(std::string_view sql) {
  if (const auto found = statements_.find(sql); found != statements_.end()) return found->second;
  const auto made = statements_.emplace(std::string(sql), nullptr).first;
  if (sqlite3_prepare_v2(db_, sql.data(), static_cast<int>(sql.size()), &made->second, nullptr) == SQLITE_OK)
    return made->second;
  auto failed = trouble();
  statements_.erase(made);
  return failed;
}

Expected<void> Connection::run(std::string_view sql, const std::map<std::string, Value>& values,
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
    if (each) each(Row(*statement));
  }
}

void Connection::until(const std::stop_token& stop) {
  constexpr int steps = 1000;  // of SQLite's machine, between two looks
  stop_ = stop;
  const auto asked = [](void* own) { return static_cast<Connection*>(own)->stop_.stop_requested() ? 1 : 0; };
  sqlite3_progress_handler(db_, steps, asked, this);
}

Expected<void> Connection::transaction(const std::function<Expected<void>()>& work) {
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

}  // namespace strandline::store
