// The whole persistence promise: an append-only journal of visits in one SQLite file.
//
// An entry is acknowledged only when it is on disk (WAL, synchronous FULL). Nothing is ever half-written: a
// call that fails leaves the journal as it was. Entries are never changed or removed; each carries the
// BLAKE2b-256 hash of the entry before it and of its own fields, so that a change anywhere is found by
// verify(). One object may be used from many threads, and several programs may have the same file open.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace strandline::store {

// At opening, `detail` names the file: store_missing · store_open_elsewhere · store_foreign (not a salon file) ·
// store_newer · store_damaged · store_incomplete (`seq` is the newest entry there) · store_other (other entries than
// were acknowledged) · store_without_wal (copied without its PATH-wal) · store_head_unreadable. Later: store_moved
// (deleted or replaced meanwhile; nothing is taken any more) and
// code: store_unavailable (file, disk or lock; `detail` says which) · store_conflict (`seq` is the newest
// entry of that visit) · store_id_taken (the id is that of another entry) · store_newer (written by a newer program).
struct Trouble {
  std::string code;
  std::string detail;
  std::int64_t seq = 0;
};

template <class T>
using Expected = tl::expected<T, Trouble>;

struct NewEntry {
  std::string id;  // unique over all entries; the same id handed in twice changes nothing
  std::string visit_id;
  std::int64_t after_seq = 0;  // the newest entry of this visit that the writer has seen; 0 opens a visit
  std::string made_at;         // UTC, 2026-03-09T09:00:00Z
  std::string kind;
  std::string body;  // a JSON text
};

struct Entry {
  std::int64_t store_seq = 0;  // 1, 2, 3 … over the whole file
  std::string id, visit_id;
  std::int64_t seq = 0;  // 1, 2, 3 … within its visit
  std::string made_at, kind, body;
  std::string hash;  // hexadecimal
};

// A visit as it stands: its newest entry.
struct VisitRow {
  std::string visit_id;
  std::int64_t store_seq = 0, seq = 0;
  std::string opened_at, changed_at, client, date;
  std::string entry_id, body;  // empty in lists
};

// Which visits, newest change first.
struct VisitsAsked {
  std::int64_t before = std::numeric_limits<std::int64_t>::max();  // store_seq of the last row of the page before
  std::string find;    // part of a client's name; capitals and accents do not matter
  std::string client;  // the whole of it, likewise; "" = any
  int limit = 100;
};

// What verify_file() found.
struct Verified {
  std::int64_t entries = 0;
  std::string hash;       // of the newest, hexadecimal: written down elsewhere, it proves all before it
  bool anchored = false;  // PATH-head was there to compare with
  std::optional<std::int64_t> broken;
};

struct Options {
  std::string path;  // ":memory:" = gone when closed
  // Asked before every call of the database; true = that call fails. For tests.
  std::function<bool()> fails;
  // Taken as it is, though entries that were acknowledged are missing or others are in their place.
  bool as_found = false;
  int patience_ms = 5000;  // for another program that writes, and for others in this one
};

class Store {
 public:
  // An existing file, checked and brought up to date; one program at a time. Never makes one. Beside it lies PATH-head,
  // the newest entry acknowledged: a file without that entry is not opened.
  static Expected<std::unique_ptr<Store>> open(const Options& options);
  // A new file, with what `fill` writes: whole, or not there. Troubles: store_exists, store_left_over.
  static Expected<void> make(const Options& options, const std::function<Expected<void>(Store&)>& fill);
  // Reads all of a file that may be in use.
  static Expected<Verified> verify_file(const std::string& path);
  virtual ~Store() = default;

  virtual Expected<Entry> append(const NewEntry& entry) = 0;
  // Its newest entry, compared with its hash: store_damaged rather than a document that is not as it was written.
  virtual Expected<std::optional<VisitRow>> visit(const std::string& visit_id) = 0;
  virtual Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked = {}) = 0;
  // Entries with store_seq > after, in order.
  virtual Expected<std::vector<Entry>> changes(std::int64_t after, int limit = 200) = 0;
  // The first entry whose place, hash or chain is broken; nothing when all hold. Holds nobody up; asked to stop, it
  // answers store_unavailable.
  virtual Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop = {}) = 0;
};

}  // namespace strandline::store
