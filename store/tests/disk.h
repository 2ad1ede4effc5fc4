// A disk under SQLite that can fail, and whose power can be cut. All goes to the real files; beside them is written
// down what a sync has made durable and what has not reached the plate yet.
#pragma once

#include <sqlite3.h>

#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace strandline::store {

enum class Call { open, read, write, truncate, sync, remove };

class Disk {
 public:
  // SQLite's own choice from now on, until it goes. One at a time.
  Disk();
  ~Disk();
  Disk(const Disk&) = delete;
  Disk& operator=(const Disk&) = delete;

  // Asked before each call; what is not SQLITE_OK is its answer. A write that fails may have written its first half,
  // and what a failed sync was asked for is forgotten: never durable unless written again.
  std::function<int(Call)> fails;
  // A sync that answers without having done anything.
  bool lies = false;
  // Calls that would change something so far; after `last_change` of them the power is off, and nothing works any more.
  int changes = 0, last_change = std::numeric_limits<int>::max();

  // What `path` holds after the power went: what was durable, and of the rest any part, in any order, torn anywhere;
  // nothing when there is no file then.
  std::optional<std::string> after_cut(const std::string& path, std::mt19937& random) const;

 private:
  struct Write {
    std::int64_t at = 0;
    std::string bytes;
    bool cuts = false;  // ends the file at `at` instead
  };
  struct Plate {
    std::optional<std::string> durable;  // nothing = no name in the folder yet
    std::vector<Write> pending;
  };
  struct File;
  friend struct Calls;

  int ask(Call call);
  bool off() const { return changes > last_change; }
  void opened(const std::string& path);
  void write(const std::string& path, Write write);
  void synced(const std::string& path);
  void removed(const std::string& path, bool synced);

  sqlite3_vfs vfs_{};
  sqlite3_vfs* real_ = nullptr;
  std::map<std::string, Plate> plates_;
  std::map<std::string, Plate> removed_;  // may be back after a cut
};

}  // namespace strandline::store
