#include "disk.h"

#include <algorithm>
#include <cstring>
#include <fstream>
#include <iterator>
#include <new>
#include <stdexcept>

namespace strandline::store {

namespace {

constexpr std::size_t sector = 512;

void put(std::string& file, std::int64_t at, std::string_view bytes) {
  const auto from = static_cast<std::size_t>(at);
  if (file.size() < from + bytes.size()) file.resize(from + bytes.size(), '\0');
  std::copy(bytes.begin(), bytes.end(), file.begin() + at);
}

std::optional<std::string> read_whole(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return std::nullopt;
  return std::string(std::istreambuf_iterator<char>(in), {});
}

}  // namespace

struct Disk::File {
  sqlite3_file base;
  Disk* disk;
  std::string* path;  // empty = SQLite's own scratch file
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

// What SQLite calls.
struct Calls {
  using File = Disk::File;
  static File& of(sqlite3_file* f) { return *reinterpret_cast<File*>(f); }
  static sqlite3_file* real(sqlite3_file* f) { return of(f).real(); }
  static const sqlite3_io_methods& methods(sqlite3_file* f) { return *real(f)->pMethods; }

  static int close(sqlite3_file* f) {
    const int done = methods(f).xClose(real(f));
    delete of(f).path;
    return done;
  }
  static int read(sqlite3_file* f, void* out, int size, sqlite3_int64 at) {
    if (const int failed = of(f).disk->ask(Call::read)) return failed;
    return methods(f).xRead(real(f), out, size, at);
  }
  static int write(sqlite3_file* f, const void* bytes, int size, sqlite3_int64 at) {
    Disk& disk = *of(f).disk;
    const int failed = disk.ask(Call::write);
    // Of a failed write any first part may be there; here it is one half.
    const int written = failed ? size / 2 : size;
    if (disk.off()) return failed;
    const int done = methods(f).xWrite(real(f), bytes, written, at);
    if (done == SQLITE_OK) {
      disk.write(*of(f).path, {at, {static_cast<const char*>(bytes), static_cast<std::size_t>(written)}});
    }
    return failed ? failed : done;
  }
  static int truncate(sqlite3_file* f, sqlite3_int64 size) {
    if (const int failed = of(f).disk->ask(Call::truncate)) return failed;
    const int done = methods(f).xTruncate(real(f), size);
    if (done == SQLITE_OK) of(f).disk->write(*of(f).path, {size, "", true});
    return done;
  }
  // The plate is the model's; nothing waits for the real one.
  static int sync(sqlite3_file* f, int) {
    Disk& disk = *of(f).disk;
    if (const int failed = disk.ask(Call::sync)) {
      if (!disk.off()) disk.plates_[*of(f).path].pending.clear();
      return failed;
    }
    if (!disk.lies) disk.synced(*of(f).path);
    return SQLITE_OK;
  }
  static int size(sqlite3_file* f, sqlite3_int64* out) { return methods(f).xFileSize(real(f), out); }
  static int lock(sqlite3_file* f, int how) { return methods(f).xLock(real(f), how); }
  static int unlock(sqlite3_file* f, int how) { return methods(f).xUnlock(real(f), how); }
  static int reserved(sqlite3_file* f, int* out) { return methods(f).xCheckReservedLock(real(f), out); }
  static int control(sqlite3_file* f, int what, void* with) { return methods(f).xFileControl(real(f), what, with); }
  static int sector_size(sqlite3_file* f) { return methods(f).xSectorSize(real(f)); }
  static int traits(sqlite3_file* f) { return methods(f).xDeviceCharacteristics(real(f)); }
  static int map(sqlite3_file* f, int region, int size, int extend, void volatile** out) {
    return methods(f).xShmMap(real(f), region, size, extend, out);
  }
  static int map_lock(sqlite3_file* f, int offset, int n, int how) {
    return methods(f).xShmLock(real(f), offset, n, how);
  }
  static void barrier(sqlite3_file* f) { methods(f).xShmBarrier(real(f)); }
  static int unmap(sqlite3_file* f, int remove) { return methods(f).xShmUnmap(real(f), remove); }

  static Disk& disk(sqlite3_vfs* vfs) { return *static_cast<Disk*>(vfs->pAppData); }

  static int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* f, int flags, int* got) {
    static const sqlite3_io_methods io = {.iVersion = 2,
                                          .xClose = close,
                                          .xRead = read,
                                          .xWrite = write,
                                          .xTruncate = truncate,
                                          .xSync = sync,
                                          .xFileSize = size,
                                          .xLock = lock,
                                          .xUnlock = unlock,
                                          .xCheckReservedLock = reserved,
                                          .xFileControl = control,
                                          .xSectorSize = sector_size,
                                          .xDeviceCharacteristics = traits,
                                          .xShmMap = map,
                                          .xShmLock = map_lock,
                                          .xShmBarrier = barrier,
                                          .xShmUnmap = unmap,
                                          .xFetch = nullptr,
                                          .xUnfetch = nullptr};
    File& file = of(f);
    file.base.pMethods = nullptr;
    if (const int failed = disk(vfs).ask(Call::open)) return failed;
    if (path) disk(vfs).opened(path);
    file.real()->pMethods = nullptr;
    const int done = disk(vfs).real_->xOpen(disk(vfs).real_, path, file.real(), flags, got);
    if (done != SQLITE_OK) return done;
    file.disk = &disk(vfs);
    file.path = new std::string(path ? path : "");
    file.base.pMethods = &io;
    return done;
  }
  static int remove(sqlite3_vfs* vfs, const char* path, int sync_folder) {
    if (const int failed = disk(vfs).ask(Call::remove)) return failed;
    const int done = disk(vfs).real_->xDelete(disk(vfs).real_, path, 0);
    if (done == SQLITE_OK) disk(vfs).removed(path, sync_folder != 0 && !disk(vfs).lies);
    return done;
  }
};

Disk::Disk() : real_(sqlite3_vfs_find("unix")) {
  if (!real_) throw std::runtime_error("no file system");
  vfs_ = *real_;
  vfs_.zName = "disk";
  vfs_.pNext = nullptr;
  vfs_.pAppData = this;
  vfs_.szOsFile = static_cast<int>(sizeof(File)) + real_->szOsFile;
  vfs_.xOpen = Calls::open;
  vfs_.xDelete = Calls::remove;
  sqlite3_vfs_register(&vfs_, 1);
}

Disk::~Disk() {
  sqlite3_vfs_unregister(&vfs_);
  sqlite3_vfs_register(real_, 1);
}

int Disk::ask(Call call) {
  if (call != Call::open && call != Call::read) ++changes;
  if (off()) return SQLITE_IOERR;
  return fails ? fails(call) : SQLITE_OK;
}

void Disk::opened(const std::string& path) {
  if (!plates_.contains(path)) plates_[path].durable = read_whole(path);
}

void Disk::write(const std::string& path, Write write) {
  if (!path.empty()) plates_[path].pending.push_back(std::move(write));
}

void Disk::synced(const std::string& path) {
  Plate& plate = plates_[path];
  // The first sync of a file puts its name into the folder, and with it whatever else happened there.
  if (!plate.durable) removed_.clear();
  std::string file = plate.durable.value_or("");
  for (const Write& w : plate.pending) {
    if (w.cuts) file.resize(static_cast<std::size_t>(w.at), '\0');
    put(file, w.at, w.bytes);
  }
  plate.durable = std::move(file);
  plate.pending.clear();
}

void Disk::removed(const std::string& path, bool synced) {
  if (synced) {
    removed_.clear();
  } else if (plates_[path].durable) {
    removed_[path] = std::move(plates_[path]);
  }
  plates_[path] = {};
}

std::optional<std::string> Disk::after_cut(const std::string& path, std::mt19937& random) const {
  const auto chance = [&random](unsigned of) { return random() % of == 0; };
  auto found = plates_.find(path);
  if (found == plates_.end() || !found->second.durable) {
    const auto back = removed_.find(path);
    const bool returns = back != removed_.end() && chance(2);
    const bool named = found != plates_.end() && !found->second.pending.empty() && chance(2);
    if (!returns && !named) return std::nullopt;
    if (returns) found = back;
  }
  const Plate& plate = found->second;
  std::string file = plate.durable.value_or("");
  std::vector<Write> rest;
  const unsigned kept = random() % 4;  // of four: none, some, most, all
  for (const Write& w : plate.pending) {
    if (w.cuts) {
      if (random() % 3 < kept) rest.push_back(w);
      continue;
    }
    // In the sectors of a plate, each of which comes there whole, not at all, or (rarely) as noise.
    for (std::size_t from = 0; from < w.bytes.size();) {
      const std::size_t at = static_cast<std::size_t>(w.at) + from;
      const std::size_t size = std::min(w.bytes.size() - from, sector - at % sector);
      std::string part = w.bytes.substr(from, size);
      from += size;
      if (random() % 3 >= kept) continue;
      if (chance(50)) std::generate(part.begin(), part.end(), [&] { return static_cast<char>(random()); });
      rest.push_back({static_cast<std::int64_t>(at), std::move(part)});
    }
  }
  if (chance(2)) std::shuffle(rest.begin(), rest.end(), random);
  for (const Write& w : rest) {
    if (w.cuts) file.resize(static_cast<std::size_t>(w.at), '\0');
    put(file, w.at, w.bytes);
  }
  return file;
}

}  // namespace strandline::store
