// The whole persistence promise: one SQLite file that holds a journal of facts and the drafts of visits.
//
// A fact is something that happened, for good: never changed or removed, each with the BLAKE2b-256 hash of the fact
// before it and of its own fields, so that a change anywhere is found by verify(). Its header is clear and names
// nobody; its body is clear, or sealed with the key of one person or visit and gone once that key is destroyed. A draft
// is a visit that is still worked on: it changes with each save, is always sealed, and is forgotten when it is handed
// in. The master key, which seals the others, lies outside the file.
//
// Facts and saves are acknowledged only when they are on disk (WAL, synchronous FULL). Nothing is ever half-written: a
// call that fails leaves the file as it was. One object may be used from many threads.
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
// store_newer · store_damaged · store_incomplete (`seq` is the newest fact there) · store_other (other facts than were
// acknowledged) · store_without_wal (copied without its PATH-wal) · store_head_unreadable · store_key_missing ·
// store_key_wrong · store_key_unreadable. Later: store_moved (deleted or replaced meanwhile; nothing is taken any more)
// and code: store_unavailable (file, disk or lock; `detail` says which) · store_conflict (`seq` is the newest of that
// stream or visit) · store_id_taken (the id is that of another) · store_erased (`detail` is who) · store_not_json.
struct Trouble {
  std::string code;
  std::string detail;
  std::int64_t seq = 0;
};

template <class T>
using Expected = tl::expected<T, Trouble>;

struct NewFact {
  static constexpr std::int64_t at_the_end = -1;
  std::string id;              // unique over all facts; the same id handed in twice changes nothing
  std::string stream;          // what it is told of: a visit, a person, the salon
  std::int64_t after_seq = 0;  // the newest fact of this stream that the writer has seen, or at_the_end
  std::string made_at;         // UTC, 2026-03-09T09:00:00Z
  std::string kind;
  std::string body;          // a JSON text
  std::string key = {};      // whose key seals the body; "" = it is clear for good
  std::string about = "{}";  // a JSON text, clear for good: no name and nothing about anybody's health
  int version = 1;           // of the body, by kind
};

struct Fact {
  std::int64_t store_seq = 0;  // 1, 2, 3 … over the whole file
  std::string id, stream;
  std::int64_t seq = 0;  // 1, 2, 3 … within its stream
  std::string made_at, kind;
  int version = 1;
  std::string about, key, body;
  bool closed = false;  // sealed, and its key was destroyed: the body is ""
  std::string hash;     // hexadecimal
};

// Which facts, in order; "" = any.
struct FactsAsked {
  std::int64_t after = 0;  // store_seq
  std::string stream, key, kind;
  int limit = 200;
};

struct NewDraft {
  std::string id;  // of this save, unique over all saves; the same id handed in twice changes nothing
  std::string visit_id;
  std::int64_t after_seq = 0;  // the newest save of this visit that the writer has seen; 0 opens a visit
  std::string made_at;
  std::string body;    // a JSON text; "client" and "date" of it are listed
  std::string person;  // whose visit it is; "" = as before, or nobody's
};

struct Save {
  std::int64_t store_seq = 0;  // 1, 2, 3 … over all saves
  std::string id, visit_id;
  std::int64_t seq = 0;  // 1, 2, 3 … within its visit
  std::string made_at;
};

// A draft as it stands: its newest save.
struct VisitRow {
  std::string visit_id;
  std::int64_t store_seq = 0, seq = 0;
  std::string opened_at, changed_at, client, date, person;
  std::string entry_id, body;  // of the save; the body is empty in lists
};

// Which visits, newest change first.
struct VisitsAsked {
  std::int64_t before = std::numeric_limits<std::int64_t>::max();  // store_seq of the last row of the page before
  std::string find;    // part of a client's name; capitals and accents do not matter
  std::string client;  // the whole of it, likewise; "" = any
  int limit = 100;
  std::string person = {};
};

// BLAKE2b-256 of a text, hexadecimal: what it is known by, wherever it is kept.
std::string content_hash(const std::string& text);

// What verify_file() found.
struct Verified {
  std::int64_t entries = 0;
  std::string hash;       // of the newest, hexadecimal: written down elsewhere, it proves all before it
  bool anchored = false;  // PATH-head was there to compare with
  bool opened = false;    // the key was there: every draft was opened too
  std::optional<std::int64_t> broken;
};

struct Options {
  std::string path;  // ":memory:" = gone when closed
  // Asked before every call of the database; true = that call fails. For tests.
  std::function<bool()> fails;
  // Taken as it is, though facts that were acknowledged are missing or others are in their place.
  bool as_found = false;
  int patience_ms = 5000;  // for another program that writes, and for others in this one
  std::string key = {};    // file of the master key; "" = PATH-key
};

class Store {
 public:
  // An existing file, checked and brought up to date; one program at a time. Never makes one. Beside it lies PATH-head,
  // the newest fact and save acknowledged: a file without them is not opened. Whoever was erased is erased again.
  static Expected<std::unique_ptr<Store>> open(const Options& options);
  // A new file, with what `fill` writes: whole, or not there; and a master key, unless one is there. Troubles:
  // store_exists, store_left_over.
  static Expected<void> make(const Options& options, const std::function<Expected<void>(Store&)>& fill);
  // Reads all of a file that may be in use.
  static Expected<Verified> verify_file(const std::string& path, const std::string& key = {});
  // A copy of a file that may be in use, one state of it, without what was erased; read whole before it gets its name.
  // Never over a file that is there (store_exists).
  static Expected<Verified> back_up(const Options& options, const std::string& to);
  // The salon file again from a copy that is read whole first. Whoever was erased since is erased again. Troubles:
  // store_exists, store_left_over, store_key_missing, those of verify_file; entry_broken in its `broken`.
  static Expected<Verified> restore(const Options& options, const std::string& from);
  // The master key as words, to be printed and kept apart; and its file again from them. Troubles: store_key_missing,
  // store_key_words (they are no key), store_key_wrong (the key of another file), store_key_there.
  static Expected<std::string> recovery_words(const Options& options);
  static Expected<void> recover_key(const Options& options, const std::string& words);
  virtual ~Store() = default;

  Expected<Fact> append(const NewFact& fact);
  // All of them or none; the draft of `forget` is gone with them. `seen` is its newest save that the writer has seen:
  // store_conflict when there is a newer one, or none.
  virtual Expected<std::vector<Fact>> hand_in(const std::vector<NewFact>& facts, const std::string& forget,
                                              std::int64_t seen) = 0;
  // Each compared with its hash: store_damaged rather than one that is not as it was written.
  virtual Expected<std::vector<Fact>> facts(const FactsAsked& asked = {}) = 0;

  virtual Expected<Save> save(const NewDraft& draft) = 0;
  // As it was saved, or store_damaged.
  virtual Expected<std::optional<VisitRow>> visit(const std::string& visit_id) = 0;
  virtual Expected<std::vector<VisitRow>> visits(const VisitsAsked& asked = {}) = 0;
  // Saves with store_seq > after, in order.
  virtual Expected<std::vector<Save>> changes(std::int64_t after, int limit = 200) = 0;

  // Destroys the key of a person or visit for good, in every older copy that is opened here too: what it sealed can be
  // read by nobody any more. Their drafts are gone. Not undone by anything.
  virtual Expected<void> erase(const std::string& owner) = 0;

  // The first fact whose place, hash or chain is broken; nothing when all hold. store_damaged for a draft. Holds nobody
  // up; asked to stop, it answers store_unavailable.
  virtual Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop = {}) = 0;
};

}  // namespace strandline::store
