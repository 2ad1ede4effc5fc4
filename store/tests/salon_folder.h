// A folder for one salon file, gone at the end of the test.
#pragma once

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>

#include "strandline/store/store.h"

namespace strandline::store {

inline NewFact fact(const std::string& id, const std::string& stream, std::int64_t after,
                    const std::string& body = R"({"grams":30})", const std::string& key = "") {
  return {id, stream, after, "2026-03-09T09:00:00Z", "mixed", body, key};
}

inline NewDraft draft(const std::string& id, const std::string& visit, std::int64_t after,
                      const std::string& body = R"({"client":"A"})", const std::string& person = "") {
  return {id, visit, after, "2026-03-09T09:00:00Z", body, person};
}

// How often to try; STRANDLINE_STORE_TIMES asks for that many times more.
inline int times(int usual) {
  const char* asked = std::getenv("STRANDLINE_STORE_TIMES");
  return usual * (asked ? std::atoi(asked) : 1);
}

class SalonFolder {
 public:
  SalonFolder() {
    // In memory where it can be: nothing here waits for a real plate.
    const std::filesystem::path memory("/dev/shm");
    const auto above = ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
    std::string name = (above / "strandline-store-XXXXXX").string();
    EXPECT_NE(mkdtemp(name.data()), nullptr);
    folder_ = std::filesystem::canonical(name);
  }
  ~SalonFolder() { std::filesystem::remove_all(folder_); }
  SalonFolder(const SalonFolder&) = delete;
  SalonFolder& operator=(const SalonFolder&) = delete;

  std::string path(const std::string& name = "salon.sqlite") const { return (folder_ / name).string(); }
  Options options() const { return {.path = path(), .fails = {}, .patience_ms = 200}; }

  // With so many facts, and as many saves of one draft.
  void make(int entries = 0) const {
    const auto made = Store::make(options(), [&](Store& store) -> Expected<void> {
      for (int i = 0; i < entries; ++i) {
        if (auto kept = store.append(fact("e" + std::to_string(i), "v", i)); !kept) return tl::unexpected(kept.error());
        if (auto kept = store.save(draft("d" + std::to_string(i), "v", i)); !kept) return tl::unexpected(kept.error());
      }
      return {};
    });
    ASSERT_TRUE(made) << made.error().code << made.error().detail;
  }
  std::unique_ptr<Store> open() const {
    auto opened = Store::open(options());
    EXPECT_TRUE(opened) << opened.error().code << ' ' << opened.error().detail;
    return opened ? std::move(*opened) : nullptr;
  }
  // The code with which opening is refused.
  std::string refusal() const {
    const auto opened = Store::open(options());
    return opened ? "opened" : opened.error().code;
  }
  // SQL from another program.
  void sql(const std::string& text) const {
    sqlite3* db = nullptr;
    ASSERT_EQ(sqlite3_open(path().c_str(), &db), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(db, text.c_str(), nullptr, nullptr, nullptr), SQLITE_OK) << sqlite3_errmsg(db);
    sqlite3_close(db);
  }
  std::string bytes(const std::string& suffix = "") const {
    std::ifstream in(path() + suffix, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  std::optional<std::string> there(const std::string& suffix) const {
    return std::filesystem::exists(path() + suffix) ? std::optional(bytes(suffix)) : std::nullopt;
  }
  // Nothing = no such file.
  void put(const std::optional<std::string>& bytes, const std::string& suffix) const {
    if (bytes) return write(*bytes, suffix);
    std::filesystem::remove(path() + suffix);
  }
  void write(const std::string& bytes, const std::string& suffix = "") const {
    std::ofstream(path() + suffix, std::ios::binary) << bytes;
  }

 private:
  std::filesystem::path folder_;
};

}  // namespace strandline::store
