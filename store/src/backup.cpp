// Copies of a salon file, the file again from one, and its key again from words.
#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "checks.h"
#include "key_file.h"
#include "keys.h"
#include "open_file.h"
#include "salon_file.h"
#include "sqlite.h"
#include "transfer.h"

namespace strandline::store {

namespace {

namespace fs = std::filesystem;

constexpr mode_t owner_only = 0600;

tl::unexpected<Trouble> failed(const std::string& path) {
  return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
}

Expected<void> ready() {
  return sodium_init() < 0 ? tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0})
                           : Expected<void>();
}

Expected<void> synced(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  const bool done = file >= 0 && ::fsync(file) == 0;
  const auto out = done ? Expected<void>() : failed(path);
  if (file >= 0) ::close(file);
  return out;
}

// One state of the file at `from`, written to `to` for its owner alone.
Expected<void> copy(const std::string& from, const std::string& to) {
  ::unlink(to.c_str());
  const int made = ::open(to.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, owner_only);
  if (made < 0) return failed(to);
  ::close(made);
  const auto db = open_sqlite({.path = from, .fails = {}});
  if (!db) return tl::unexpected(db.error());
  if (auto ours = check_identity(**db, from); !ours) return tl::unexpected(ours.error());
  if (auto written = (*db)->run("VACUUM INTO $to", {{"$to", to}}); !written) return written;
  return synced(to);
}

// `made` gets the name `to`, which nothing has.
Expected<void> name(const std::string& made, const std::string& to) {
  if (::renameat2(AT_FDCWD, made.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) != 0) {
    return errno == EEXIST ? tl::unexpected(file_trouble("store_exists", to)) : failed(to);
  }
  return sync_folder(to);
}

// Copied, read whole with the key, then named; nothing is left of one that does not hold.
Expected<Verified> checked_copy(const std::string& from, const std::string& to, const std::string& key) {
  const std::string making = to + "-new";
  const auto master = read_key(key);
  if (!master) return tl::unexpected(master.error());
  if (!*master) return tl::unexpected(file_trouble("store_key_missing", key));
  auto done = copy(from, making).and_then([&] { return Store::verify_file(making, key); });
  if (done && !done->broken) {
    if (auto named = name(making, to); !named) done = tl::unexpected(named.error());
  }
  for (const char* suffix : {"", "-wal", "-shm", "-journal"}) ::unlink((making + suffix).c_str());
  return done;
}

}  // namespace

Expected<Verified> Store::back_up(const Options& options, const std::string& to) {
  if (auto good = ready(); !good) return tl::unexpected(good.error());
  if (is_postgres(options.path)) return copy_out(options, to);
  const std::string path = real_path(options.path), target = real_path(to);
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return tl::unexpected(file_trouble("store_missing", path));
  if (fs::exists(target, error)) return tl::unexpected(file_trouble("store_exists", target));
  const auto whole = verify_file(path, key_path(options));
  if (!whole || whole->broken) return whole;
  return checked_copy(path, target, key_path(options));
}

Expected<Verified> Store::restore(const Options& options, const std::string& from) {
  if (auto good = ready(); !good) return tl::unexpected(good.error());
  if (is_postgres(options.path)) return copy_in(options, real_path(from));
  const std::string path = real_path(options.path), source = real_path(from);
  std::error_code error;
  if (fs::exists(path, error)) return tl::unexpected(file_trouble("store_exists", path));
  for (const char* suffix : {"-head", "-wal"}) {
    if (fs::exists(path + suffix, error)) return tl::unexpected(file_trouble("store_left_over", path + suffix));
  }
  const auto whole = verify_file(source, key_path(options));
  if (!whole || whole->broken) return whole;
  const auto done = checked_copy(source, path, key_path(options));
  if (!done || done->broken) return done;
  // Opened once: whoever was erased since is erased from it, and it is anchored.
  const auto opened = open(options);
  if (!opened) return tl::unexpected(opened.error());
  return done;
}

Expected<std::string> Store::recovery_words(const Options& options) {
  if (auto good = ready(); !good) return tl::unexpected(good.error());
  const auto key = read_key(key_path(options));
  if (!key) return tl::unexpected(key.error());
  if (!*key) return tl::unexpected(file_trouble("store_key_missing", key_path(options)));
  return words_of(**key);
}

Expected<void> Store::recover_key(const Options& options, const std::string& words) {
  if (auto good = ready(); !good) return good;
  const auto key = key_of_words(words);
  if (!key) return tl::unexpected(Trouble{"store_key_words", "", 0});
  const std::string path = real_path(options.path);
  std::error_code error;
  // Without the file, which may come from a copy later, nothing can be compared.
  if (fs::exists(path, error)) {
    const auto db = open_sqlite({.path = path, .fails = {}}, true);
    if (!db) return tl::unexpected(db.error());
    if (auto ours = check_identity(**db, path); !ours) return tl::unexpected(ours.error());
    const auto sealed = has_facts(**db);
    if (!sealed) return tl::unexpected(sealed.error());
    if (*sealed) {
      if (auto same = Keys(*key, path, {}).recognise(**db); !same) return same;
    }
  }
  return write_key(key_path(options), *key);
}

}  // namespace strandline::store
