// The files of a salon: the database at PATH, SQLite's PATH-wal, and PATH-head, which holds the newest fact and save
// that were acknowledged and is locked while a program serves the file.
#pragma once

#include <sys/types.h>

#include <array>
#include <memory>
#include <optional>
#include <string>

#include "strandline/store/store.h"

namespace strandline::store {

// The newest fact of a journal: its store_seq and hash (hexadecimal); 0 and "" = none. And how many saves there were.
struct Head {
  std::int64_t store_seq = 0;
  std::string hash;
  std::int64_t saves = 0;
  bool operator==(const Head&) const = default;
};

class SalonFile {
 public:
  // Locks the files at `path` (symbolic links followed). `fresh` makes the database anew, empty. Troubles:
  // store_missing, store_open_elsewhere, store_unavailable.
  static Expected<std::unique_ptr<SalonFile>> lock(const std::string& path, bool fresh = false);
  ~SalonFile();
  SalonFile(const SalonFile&) = delete;
  SalonFile& operator=(const SalonFile&) = delete;

  const std::string& path() const { return path_; }
  // It is a salon file: only its owner may read it from now on. One that is not accepted is left as it was found.
  Expected<void> accept();
  // Says so when the file cannot be read as one.
  Expected<std::optional<Head>> anchored() const;
  // Read back by whoever opens the files next; after a power cut perhaps what stood there before. `durable` waits until
  // neither can happen.
  Expected<void> anchor(const Head& head, bool durable = false) const;
  // From now on these files are the ones that were opened.
  void remember();
  // Trouble store_moved: what lies there is no longer what was opened.
  Expected<void> still_there() const;

 private:
  explicit SalonFile(std::string path) : path_(std::move(path)) {}
  struct Identity {
    dev_t device = 0;
    ino_t number = 0;
    bool operator==(const Identity&) const = default;
  };
  static std::optional<Identity> identity_of(const std::string& path);

  std::string path_;
  int head_ = -1;
  bool made_head_ = false;
  std::array<std::optional<Identity>, 3> opened_;
};

// What was acknowledged as PATH-head tells it, without a lock; nothing when there is none.
Expected<std::optional<Head>> read_anchor(const std::string& path);
// Whether the database says that it was in use while its PATH-wal, which holds the newest facts then, is not there or
// empty.
bool lacks_wal(const std::string& path);
std::string real_path(const std::string& path);
// The names in the folder of `path` are there after a power cut too.
Expected<void> sync_folder(const std::string& path);
Trouble file_trouble(const char* code, const std::string& path);

}  // namespace strandline::store
