// One small class over the SQLite C API: prepared statements by text, values by name, errors as values.
#pragma once

#include <sqlite3.h>

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>

#include "strandline/store/store.h"

namespace strandline::store {

// One row of a running statement; columns from 0.
class Row {
 public:
  explicit Row(sqlite3_stmt* statement) : statement_(statement) {}
  std::int64_t integer(int column) const { return sqlite3_column_int64(statement_, column); }
  std::string text(int column) const;
  std::string blob(int column) const;

 private:
  sqlite3_stmt* statement_;
};

// A value to bind: 64-bit number, text or blob.
struct Value {
  Value(std::int64_t v) : number(v) {}                        // NOLINT: reads as the value it is
  Value(const std::string& v) : text(v), kind(Kind::text) {}  // NOLINT
  static Value blob(std::string bytes);

  enum class Kind { number, text, blob };
  std::int64_t number = 0;
  std::string text;
  Kind kind = Kind::number;
};

class Connection {
 public:
  // An existing file, or memory. `reading` = nothing is ever written, not even at the end.
  static Expected<std::unique_ptr<Connection>> open(const Options& options, bool reading = false);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  // Every statement of a script, in order; nothing is read back.
  Expected<void> script(const std::string& sql);
  // One statement with $names bound; `each` sees every row.
  Expected<void> run(std::string_view sql, const std::map<std::string, Value>& values = {},
                     const std::function<void(const Row&)>& each = {});
  // Whatever runs ends with store_unavailable once it is asked to.
  void until(const std::stop_token& stop);
  // BEGIN IMMEDIATE … COMMIT, or ROLLBACK when the work fails.
  Expected<void> transaction(const std::function<Expected<void>()>& work);

 private:
  explicit Connection(std::function<bool()> fails) : fails_(std::move(fails)) {}
  bool failing() const { return fails_ && fails_(); }
  tl::unexpected<Trouble> trouble() const;
  Expected<sqlite3_stmt*> prepared(std::string_view sql);

  std::function<bool()> fails_;
  std::stop_token stop_;
  sqlite3* db_ = nullptr;
  std::map<std::string, sqlite3_stmt*, std::less<>> statements_;
};

}  // namespace strandline::store
