// Copies of the salon file, made by themselves and each tried: read whole, and restored into a scratch file.
#pragma once

#include <chrono>
#include <condition_variable>
#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

#include "strandline/salon/world.h"

namespace strandline::salon {

// Where the key of a salon lies: `key`; when that is "", beside its file, or "salon-key" here where it is in a
// database.
std::string backup_key(const std::string& db, const std::string& key);

// Whether a copy can be restored: it is, into a scratch file beside it, which is opened with the key of the salon
// (whoever was erased since is erased from it) and gone again. Problems as of restore_salon().
Result<store::Verified> check_backup(const std::string& from, const std::string& key);

struct BackupsAsked {
  std::string db, key;           // key "" = beside the salon file
  std::filesystem::path folder;  // where copies lie
  std::chrono::milliseconds every = std::chrono::hours(24);
  int keep = 30;  // copies, the oldest go first; those of anything else are left alone
};

// A copy now, named by its instant, and tried; then all but the newest `keep` go. Nothing goes when it fails. Problems:
// those of back_up_salon() and check_backup(), cannot_write {file}.
Result<std::filesystem::path> back_up_now(const BackupsAsked& asked, const std::string& now);

// The newest copy in a folder that back_up_now() made; nothing when there is none.
std::optional<std::filesystem::path> newest_backup(const std::filesystem::path& folder);

// Calls back_up_now() at once and then again and again, in a thread of its own.
class Backups {
 public:
  // `tell` hears, in that thread, what went wrong.
  Backups(BackupsAsked asked, std::function<std::string()> now, std::function<void(const Problems&)> tell);
  ~Backups();
  Backups(const Backups&) = delete;
  Backups& operator=(const Backups&) = delete;

 private:
  void run(const std::stop_token& stop);

  BackupsAsked asked_;
  std::function<std::string()> now_;
  std::function<void(const Problems&)> tell_;
  std::mutex mutex_;
  std::condition_variable_any bell_;
  std::jthread thread_;
};

}  // namespace strandline::salon
