// What the store asks of a database: statements by text, values by name, errors as values. Two drivers: sqlite.h,
// postgres.h. The SQL is the same for both as far as it goes.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <stop_token>
#include <string>
#include <string_view>

#include "strandline/store/store.h"

namespace strandline::store {

// One row of a running statement; columns from 0. NULL is 0 and "".
class Row {
 public:
  virtual std::int64_t integer(int column) const = 0;
  virtual std::string text(int column) const = 0;
  virtual std::string blob(int column) const = 0;

 protected:
  ~Row() = default;
};

// A value to bind: 64-bit number, text or blob.
struct Value {
  Value(std::int64_t v) : number(v) {}                        // NOLINT: reads as the value it is
  Value(const std::string& v) : text(v), kind(Kind::text) {}  // NOLINT
  static Value blob(std::string bytes) {
    Value out(bytes);
    out.kind = Kind::blob;
    return out;
  }

  enum class Kind { number, text, blob };
  std::int64_t number = 0;
  std::string text;
  Kind kind = Kind::number;
};

class Connection {
 public:
  Connection() = default;
  virtual ~Connection() = default;
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  // Every statement of a script, in order; nothing is read back.
  virtual Expected<void> script(const std::string& sql) = 0;
  // One statement with $names bound; `each` sees every row.
  virtual Expected<void> run(std::string_view sql, const std::map<std::string, Value>& values = {},
                             const std::function<void(const Row&)>& each = {}) = 0;
  // Whatever runs ends with store_unavailable once it is asked to.
  virtual void until(const std::stop_token& stop) = 0;
  // One transaction that writes, and no other beside it in this salon: all of `work`, or nothing when it fails.
  virtual Expected<void> transaction(const std::function<Expected<void>()>& work) = 0;
};

}  // namespace strandline::store
