#include "strandline/salon/backups.h"

#include <algorithm>
#include <vector>

namespace strandline::salon {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view beginning = "salon-", ending = ".backup";

// "2026-03-09T09:00:00Z" → "salon-20260309T090000Z.backup"
std::string name_at(const std::string& now) {
  std::string out(beginning);
  std::copy_if(now.begin(), now.end(), std::back_inserter(out), [](char c) { return c != '-' && c != ':'; });
  return out + std::string(ending);
}

// The oldest first.
std::vector<fs::path> copies_in(const fs::path& folder) {
  std::vector<fs::path> copies;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(beginning) && name.ends_with(ending)) copies.push_back(entry.path());
  }
  std::sort(copies.begin(), copies.end());
  return copies;
}

void prune(const fs::path& folder, int keep) {
  const std::vector<fs::path> copies = copies_in(folder);
  std::error_code error;
  for (std::size_t i = 0; i + static_cast<std::size_t>(keep) < copies.size(); ++i) fs::remove(copies[i], error);
}

}  // namespace

std::string backup_key(const std::string& db, const std::string& key) {
  if (!key.empty()) return key;
  return in_database(db) ? "salon-key" : db + "-key";
}

Result<store::Verified> check_backup(const std::string& from, const std::string& key) {
  const std::string scratch = from + "-scratch";
  const auto gone = [&] {
    std::error_code error;
    for (const char* suffix : {"", "-head", "-wal", "-shm", "-journal", "-new"}) fs::remove(scratch + suffix, error);
  };
  gone();  // what a check that was cut off left behind
  const auto done = restore_salon(scratch, from, key);
  gone();
  return done;
}

Result<fs::path> back_up_now(const BackupsAsked& asked, const std::string& now) {
  std::error_code error;
  fs::create_directories(asked.folder, error);
  if (error) return tl::unexpected(Problems{{"cannot_write", "", {{"file", asked.folder.string()}}}});
  const fs::path copy = asked.folder / name_at(now);
  const std::string key = backup_key(asked.db, asked.key);
  const auto made =
      back_up_salon(asked.db, copy, key).and_then([&](const store::Verified&) { return check_backup(copy, key); });
  if (!made) return tl::unexpected(made.error());
  prune(asked.folder, asked.keep);
  return copy;
}

std::optional<fs::path> newest_backup(const fs::path& folder) {
  const std::vector<fs::path> copies = copies_in(folder);
  return copies.empty() ? std::nullopt : std::optional(copies.back());
}

Backups::Backups(BackupsAsked asked, std::function<std::string()> now, std::function<void(const Problems&)> tell)
    : asked_(std::move(asked)), now_(std::move(now)), tell_(std::move(tell)) {
  thread_ = std::jthread([this](const std::stop_token& stop) { run(stop); });
}

Backups::~Backups() {
  thread_.request_stop();
  bell_.notify_all();
}

void Backups::run(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  while (!stop.stop_requested()) {
    if (const auto made = back_up_now(asked_, now_()); !made && tell_) tell_(made.error());
    bell_.wait_for(lock, stop, asked_.every, [] { return false; });
  }
}

}  // namespace strandline::salon
