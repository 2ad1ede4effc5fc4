#include "key_file.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

#include "chain.h"
#include "salon_file.h"

namespace strandline::store {

namespace {

constexpr const char* mark = "strandline-key 1";
constexpr mode_t owner_only = 0600;

// Appends `line` to the file at `path` and waits until it is on the plate.
Expected<void> write_line(const std::string& path, int how, const std::string& line) {
  const auto failed = [&path] {
    return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
  };
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC | O_NOFOLLOW | how, owner_only);
  if (file < 0) return failed();
  const bool written =
      ::write(file, line.data(), line.size()) == static_cast<ssize_t>(line.size()) && ::fsync(file) == 0;
  const auto out = written ? Expected<void>() : failed();
  ::close(file);
  return out ? sync_folder(path) : out;
}

}  // namespace

Expected<std::optional<Key>> read_key(const std::string& path) {
  struct stat seen{};
  if (::stat(path.c_str(), &seen) != 0 && errno == ENOENT) return std::optional<Key>();
  std::ifstream in(path);
  std::string line, hex;
  if (S_ISREG(seen.st_mode) && std::getline(in, line) && line.starts_with(mark)) {
    hex = line.substr(std::min(line.size(), std::strlen(mark) + 1));
    std::string bytes(Key::size, '\0');
    std::size_t length = 0;
    const char* end = nullptr;
    const int read = sodium_hex2bin(reinterpret_cast<unsigned char*>(bytes.data()), bytes.size(), hex.data(),
                                    hex.size(), nullptr, &length, &end);
    if (read == 0 && length == Key::size && end == hex.data() + hex.size()) return Key::of(bytes);
  }
  return tl::unexpected(file_trouble("store_key_unreadable", path));
}

Expected<void> write_key(const std::string& path, const Key& key) {
  if (struct stat seen{}; ::lstat(path.c_str(), &seen) == 0)
    return tl::unexpected(file_trouble("store_key_there", path));
  // Whole or not there: a start that is cut off leaves no half of a key under this name.
  const std::string making = path + "-new";
  ::unlink(making.c_str());
  if (auto done = write_line(making, O_EXCL, std::string(mark) + ' ' + hexadecimal(key.bytes()) + '\n'); !done)
    return done;
  if (::renameat2(AT_FDCWD, making.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) != 0) {
    return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
  }
  return sync_folder(path);
}

std::string erased_path(const std::string& key_path) { return key_path + "-erased"; }

Expected<std::set<std::string>> read_erased(const std::string& key_path) {
  std::set<std::string> out;
  std::ifstream in(erased_path(key_path));
  for (std::string line; std::getline(in, line);) {
    if (!line.empty()) out.insert(line);
  }
  if (in.bad()) return tl::unexpected(file_trouble("store_unavailable", erased_path(key_path)));
  return out;
}

Expected<void> add_erased(const std::string& key_path, const std::string& owner) {
  // A line that was cut off ends here, so that it swallows no other.
  return write_line(erased_path(key_path), O_APPEND, '\n' + owner + '\n');
}

}  // namespace strandline::store
