#include "salon_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <sstream>

namespace strandline::store {

namespace {

constexpr const char* mark = "strandline-head";
constexpr std::array<std::string_view, 3> suffixes{"", "-wal", "-head"};
constexpr mode_t owner_only = 0600;

tl::unexpected<Trouble> failed(const std::string& path) {
  return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
}

}  // namespace

Trouble file_trouble(const char* code, const std::string& path) { return {code, path, 0}; }

std::string real_path(const std::string& path) {
  std::error_code error;
  const auto real = std::filesystem::weakly_canonical(std::filesystem::absolute(path, error), error);
  return error ? path : real.string();
}

std::optional<SalonFile::Identity> SalonFile::identity_of(const std::string& path) {
  struct stat seen{};
  if (::stat(path.c_str(), &seen) != 0) return std::nullopt;
  return Identity{seen.st_dev, seen.st_ino};
}

Expected<std::unique_ptr<SalonFile>> SalonFile::lock(const std::string& path, bool fresh) {
  std::unique_ptr<SalonFile> out(new SalonFile(real_path(path)));
  const std::string& real = out->path_;
  struct stat seen{};
  if (!fresh && ::stat(real.c_str(), &seen) != 0) {
    return errno == ENOENT ? tl::unexpected(file_trouble("store_missing", real)) : failed(real);
  }
  if (!fresh && !S_ISREG(seen.st_mode)) return tl::unexpected(file_trouble("store_foreign", real));
  const std::string head = real + "-head";
  out->head_ = ::open(head.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW);
  if (out->head_ < 0 && errno == ENOENT) {
    out->head_ = ::open(head.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, owner_only);
    out->made_head_ = out->head_ >= 0;
    if (out->head_ < 0 && errno == EEXIST) return tl::unexpected(file_trouble("store_open_elsewhere", real));
  }
  if (out->head_ < 0) return failed(head);
  if (::flock(out->head_, LOCK_EX | LOCK_NB) != 0) {
    out->made_head_ = false;
    return errno == EWOULDBLOCK ? tl::unexpected(file_trouble("store_open_elsewhere", real)) : failed(real);
  }
  // Locked is the file of that name, not one that another program has just taken away again.
  struct stat locked{};
  if (::fstat(out->head_, &locked) != 0) return failed(head);
  if (identity_of(head) != Identity{locked.st_dev, locked.st_ino})
    return tl::unexpected(file_trouble("store_open_elsewhere", real));
  if (fresh) {
    // What a start that was cut off has left.
    for (const char* suffix : {"", "-wal", "-shm", "-journal"}) ::unlink((real + suffix).c_str());
    const int made = ::open(real.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, owner_only);
    if (made < 0) return failed(real);
    ::close(made);
  }
  return out;
}

Expected<void> SalonFile::accept() {
  made_head_ = false;
  for (const char* suffix : {"", "-wal", "-shm", "-head"}) {
    const std::string file = path_ + suffix;
    struct stat seen{};
    const bool open_to_others =
        ::stat(file.c_str(), &seen) == 0 && (seen.st_mode & 0777) != owner_only && seen.st_uid == ::geteuid();
    if (open_to_others && ::chmod(file.c_str(), owner_only) != 0) return failed(file);
  }
  return {};
}

SalonFile::~SalonFile() {
  if (made_head_) ::unlink((path_ + "-head").c_str());
  if (head_ >= 0) ::close(head_);
}

Expected<std::optional<Head>> read_anchor(const std::string& path) {
  std::ifstream in(path + "-head");
  std::string word, line;
  if (!std::getline(in, line)) return std::optional<Head>();
  Head head;
  int version = 0;
  std::istringstream words(line);
  // The first version knew no saves.
  const bool read = words >> word >> version >> head.store_seq && word == mark && (version == 1 || version == 2) &&
                    (version == 1 || words >> head.saves) && head.store_seq >= 0 && head.saves >= 0;
  if (!read) return tl::unexpected(file_trouble("store_head_unreadable", path));
  words >> head.hash;
  return std::optional(head);
}

Expected<std::optional<Head>> SalonFile::anchored() const { return read_anchor(path_); }

Expected<void> sync_folder(const std::string& path) {
  const int folder = ::open(std::filesystem::path(path).parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  const bool synced = folder >= 0 && ::fsync(folder) == 0;
  const auto out = synced ? Expected<void>() : failed(path);
  if (folder >= 0) ::close(folder);
  return out;
}

Expected<void> SalonFile::anchor(const Head& head, bool durable) const {
  // Always as long, so that it is one write inside one sector that needs no new room.
  std::ostringstream text;
  text << mark << " 2 " << std::setw(20) << head.store_seq << ' ' << std::setw(20) << head.saves << ' ' << std::setw(64)
       << head.hash << '\n';
  const std::string line = text.str();
  if (::pwrite(head_, line.data(), line.size(), 0) != static_cast<ssize_t>(line.size())) return failed(path_ + "-head");
  if (!durable) return {};
  if (::fsync(head_) != 0) return failed(path_ + "-head");
  return sync_folder(path_);
}

void SalonFile::remember() {
  for (std::size_t i = 0; i < opened_.size(); ++i) opened_[i] = identity_of(path_ + std::string(suffixes[i]));
}

Expected<void> SalonFile::still_there() const {
  for (std::size_t i = 0; i < opened_.size(); ++i) {
    const std::string file = path_ + std::string(suffixes[i]);
    if (opened_[i] && identity_of(file) != opened_[i]) return tl::unexpected(file_trouble("store_moved", file));
  }
  return {};
}

bool lacks_wal(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  char header[20]{};
  constexpr int write_version = 18, with_wal = 2;  // https://sqlite.org/fileformat2.html, section 1.3
  if (!in.read(header, sizeof header) || header[write_version] != with_wal) return false;
  std::error_code absent;
  const auto size = std::filesystem::file_size(path + "-wal", absent);
  return absent || size == 0;
}

}  // namespace strandline::store
