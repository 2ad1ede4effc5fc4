// A salon file from nothing, and one read from end to end.
#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include "checks.h"
#include "drafts.h"
#include "key_file.h"
#include "open_file.h"
#include "postgres_store.h"
#include "salon_file.h"
#include "sqlite.h"

namespace strandline::store {

Expected<void> Store::make(const Options& options, const std::function<Expected<void>(Store&)>& fill) {
  if (sodium_init() < 0) return tl::unexpected(Trouble{"store_unavailable", "no source of randomness", 0});
  if (is_postgres(options.path)) return make_postgres(options, fill);
  const std::string path = real_path(options.path), making = path + "-new";
  std::error_code error;
  if (std::filesystem::exists(path, error)) return tl::unexpected(file_trouble("store_exists", path));
  for (const char* suffix : {"-head", "-wal"}) {
    if (std::filesystem::exists(path + suffix, error))
      return tl::unexpected(file_trouble("store_left_over", path + suffix));
  }
  Options aside = options;
  aside.path = making;
  aside.key = key_path(options);
  const bool had_key = std::filesystem::exists(aside.key, error);
  const auto undo = [&] {
    for (const char* suffix : {"", "-wal", "-shm", "-head"}) ::unlink((making + suffix).c_str());
    if (!had_key) ::unlink(aside.key.c_str());
  };
  {
    auto store = open_file(aside, true);
    if (!store) return tl::unexpected(store.error());
    if (auto filled = fill(**store); !filled) {
      store->reset();
      undo();
      return filled;
    }
  }
  if (lacks_wal(making) || std::filesystem::exists(making + "-wal", error)) {
    return tl::unexpected(Trouble{"store_unavailable", making + " could not be finished", 0});
  }
  if (::renameat2(AT_FDCWD, making.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) != 0) {
    return tl::unexpected(Trouble{"store_unavailable", path + ": " + std::strerror(errno), 0});
  }
  ::unlink((making + "-head").c_str());
  return sync_folder(path);
}

Expected<Verified> Store::verify_file(const std::string& given, const std::string& key) {
  if (is_postgres(given)) return verify_postgres({.path = given, .fails = {}, .key = key});
  const std::string path = real_path(given);
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return tl::unexpected(file_trouble("store_missing", path));
  const bool without_wal = lacks_wal(path);
  // Read before the journal: what is acknowledged meanwhile is in the journal then.
  const auto anchored = read_anchor(path);
  if (!anchored) return tl::unexpected(anchored.error());
  auto db = open_sqlite({.path = path, .fails = {}}, true);
  if (!db) return tl::unexpected(db.error());
  if (auto good = check_journal(**db, path, *anchored, without_wal); !good) return tl::unexpected(good.error());
  if (auto whole = check_structure(**db, path, true); !whole) return tl::unexpected(whole.error());
  const auto broken = check_chain(**db);
  if (!broken) return tl::unexpected(broken.error());
  const auto head = read_head(**db);
  if (!head) return tl::unexpected(head.error());
  const auto master = read_key(key_path({.path = path, .fails = {}, .key = key}));
  if (!master) return tl::unexpected(master.error());
  const auto sealed = has_facts(**db);
  if (!sealed) return tl::unexpected(sealed.error());
  if (*master && *sealed) {
    const Keys keys(**master, key_path({.path = path, .fails = {}, .key = key}), {});
    if (auto ours = keys.recognise(**db); !ours) return tl::unexpected(ours.error());
    if (auto drafts = check_drafts(**db, keys); !drafts) return tl::unexpected(drafts.error());
  }
  return Verified{head->store_seq, head->hash, anchored->has_value(), *master && *sealed, *broken};
}

}  // namespace strandline::store
