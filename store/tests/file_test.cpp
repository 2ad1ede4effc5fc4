// One file, one program; what is moved, copied, foreign or cut off is noticed.
#include <sys/stat.h>

#include <chrono>
#include <filesystem>
#include <thread>

#include "salon_folder.h"

namespace strandline::store {
namespace {

namespace fs = std::filesystem;

mode_t mode_of(const std::string& path) {
  struct stat seen{};
  EXPECT_EQ(::stat(path.c_str(), &seen), 0) << path;
  return seen.st_mode & 0777;
}

TEST(File, IsMadeOnRequestOnlyAndIsThereAfterReopening) {
  const SalonFolder salon;
  EXPECT_EQ(salon.refusal(), "store_missing");
  EXPECT_FALSE(fs::exists(salon.path()));
  EXPECT_FALSE(fs::exists(salon.path() + "-head"));
  salon.make();
  {
    const auto store = salon.open();
    EXPECT_TRUE(store->append(fact("a", "v", 0)));
    EXPECT_TRUE(store->save(draft("d", "v", 0)));
  }
  const auto again = salon.open();
  EXPECT_EQ((*again->visit("v"))->seq, 1);
  EXPECT_EQ(again->facts()->size(), 1u);
  EXPECT_FALSE(*again->verify());
  EXPECT_EQ(Store::make(salon.options(), [](Store&) { return Expected<void>{}; }).error().code, "store_exists");
}

TEST(File, IsMadeByANameWithoutAFolder) {
  const SalonFolder salon;
  const auto before = fs::current_path();
  fs::current_path(fs::path(salon.path()).parent_path());
  const auto made = Store::make({.path = "own.sqlite", .fails = {}}, [](Store&) { return Expected<void>{}; });
  EXPECT_TRUE(made) << made.error().detail;
  EXPECT_TRUE(Store::open({.path = "own.sqlite", .fails = {}}));
  fs::current_path(before);
}

TEST(File, ThatCannotBeFilledLeavesNothing) {
  const SalonFolder salon;
  const auto made =
      Store::make(salon.options(), [](Store&) -> Expected<void> { return tl::unexpected(Trouble{"unfilled", "", 0}); });
  EXPECT_EQ(made.error().code, "unfilled");
  EXPECT_TRUE(fs::is_empty(fs::path(salon.path()).parent_path()));
}

TEST(File, IsItsOwnersAlone) {
  const SalonFolder salon;
  salon.make();
  fs::permissions(salon.path(), fs::perms::group_read, fs::perm_options::add);
  const auto store = salon.open();
  store->append(fact("a", "v", 0));
  for (const char* suffix : {"", "-wal", "-shm", "-head", "-key"})
    EXPECT_EQ(mode_of(salon.path() + suffix), 0600u) << suffix;
}

TEST(File, IsServedByOneProgramAtATime) {
  const SalonFolder salon;
  salon.make();
  fs::create_symlink(salon.path(), salon.path("other-name"));
  const auto store = salon.open();
  EXPECT_EQ(salon.refusal(), "store_open_elsewhere");
  EXPECT_EQ(Store::open({.path = salon.path("other-name"), .fails = {}}).error().code, "store_open_elsewhere");
  EXPECT_TRUE(store->append(fact("a", "v", 0))) << "who was refused has taken nothing from the first";
}

TEST(File, OfAnotherProgramOrANewerOneIsRefusedUnchanged) {
  const SalonFolder salon;
  salon.sql("CREATE TABLE bookmarks (u); PRAGMA user_version = 1");
  fs::permissions(salon.path(), fs::perms::group_read, fs::perm_options::add);
  const std::string before = salon.bytes();
  const mode_t mode = mode_of(salon.path());
  EXPECT_EQ(salon.refusal(), "store_foreign");
  EXPECT_EQ(salon.bytes(), before);
  EXPECT_EQ(mode_of(salon.path()), mode);
  EXPECT_FALSE(fs::exists(salon.path() + "-head"));
  for (const std::string& other : {std::string(), std::string(50000, 'x'), std::string("SQLite format 3")}) {
    salon.write(other);
    EXPECT_EQ(salon.refusal(), "store_foreign") << other.size();
    EXPECT_EQ(Store::open(salon.options()).error().detail, salon.path());
    EXPECT_EQ(salon.bytes(), other);
  }
  fs::remove(salon.path());
  fs::create_directory(salon.path());
  EXPECT_EQ(salon.refusal(), "store_foreign");
  fs::remove(salon.path());
  salon.make();
  salon.sql("PRAGMA user_version = 999");
  EXPECT_EQ(salon.refusal(), "store_newer");
}

TEST(File, DeletedOrReplacedWhileOpenIsNoticed) {
  for (const char* suffix : {"", "-wal", "-head"}) {
    const SalonFolder salon;
    salon.make(1);
    const auto store = salon.open();
    ASSERT_TRUE(store->append(fact("a", "v", 1)));
    fs::rename(salon.path() + suffix, salon.path("away"));
    EXPECT_EQ(store->append(fact("b", "v", 2)).error().code, "store_moved") << suffix;
    EXPECT_EQ(store->save(draft("b", "v", 1)).error().code, "store_moved") << suffix;
    EXPECT_EQ(store->facts().error().code, "store_moved") << suffix;
    EXPECT_EQ(store->visit("v").error().code, "store_moved") << suffix;
    EXPECT_EQ(store->visits().error().code, "store_moved") << suffix;
    fs::copy(salon.path("away"), salon.path() + suffix);
    EXPECT_EQ(store->append(fact("b", "v", 2)).error().code, "store_moved") << suffix;
    fs::rename(salon.path("away"), salon.path() + suffix);
    EXPECT_TRUE(store->append(fact("b", "v", 2))) << suffix;
  }
}

TEST(File, DeletedIsNotMadeAgainSilently) {
  const SalonFolder salon;
  salon.make(1);
  salon.open();
  fs::remove(salon.path());
  EXPECT_EQ(salon.refusal(), "store_missing");
  EXPECT_EQ(Store::make(salon.options(), [](Store&) { return Expected<void>{}; }).error().code, "store_left_over");
}

TEST(File, CopiedWithoutItsWalIsToldFromAnEmptySalon) {
  const SalonFolder salon, copy, whole;
  salon.make();
  {
    const auto store = salon.open();
    for (int i = 0; i < 5; ++i) ASSERT_TRUE(store->append(fact("e" + std::to_string(i), "v", i)));
    fs::copy(salon.path(), copy.path());
    fs::copy(salon.path(), whole.path());
    fs::copy(salon.path() + "-wal", whole.path() + "-wal");
    for (const SalonFolder* one : {&copy, &whole}) fs::copy(salon.path() + "-key", one->path() + "-key");
  }
  EXPECT_EQ(copy.refusal(), "store_without_wal");
  EXPECT_EQ(Store::verify_file(copy.path()).error().code, "store_without_wal");
  auto taken = copy.options();
  taken.as_found = true;
  EXPECT_TRUE(Store::open(taken));
  EXPECT_EQ(copy.refusal(), "opened") << "once it was taken it is the salon file";
  EXPECT_EQ(whole.open()->facts()->size(), 5u);
  // Closed as it should be, one file is all of it.
  fs::copy_file(salon.path(), copy.path(), fs::copy_options::overwrite_existing);
  fs::remove(copy.path() + "-head");
  EXPECT_EQ(copy.open()->facts()->size(), 5u);
}

TEST(File, OlderOrOtherThanWhatWasAcknowledgedIsRefused) {
  const SalonFolder salon, other;
  salon.make(3);
  const std::string older = salon.bytes();
  salon.open()->save(draft("late", "v", 3));
  const std::string saved = salon.bytes();
  salon.write(older);
  EXPECT_EQ(salon.refusal(), "store_incomplete") << "a save is missing";
  salon.write(saved);
  salon.open()->append(fact("late", "v", 3));
  salon.write(older);
  EXPECT_EQ(salon.refusal(), "store_incomplete");
  EXPECT_EQ(Store::verify_file(salon.path()).error().code, "store_incomplete");
  other.make();
  {
    const auto store = other.open();
    for (int i = 0; i < 9; ++i) store->append(fact("o" + std::to_string(i), "w", i));
  }
  salon.write(other.bytes());
  EXPECT_EQ(salon.refusal(), "store_other");
  salon.write("nonsense\n", "-head");
  EXPECT_EQ(salon.refusal(), "store_head_unreadable");
}

TEST(File, ChangesBehindOurBackAreFound) {
  const SalonFolder salon;
  salon.make(3);
  salon.sql("DROP TRIGGER facts_are_not_changed; UPDATE facts SET body = x'7b7d' WHERE store_seq = 2");
  EXPECT_EQ(*salon.open()->verify(), std::optional<std::int64_t>(2));
  EXPECT_EQ(Store::verify_file(salon.path())->broken, std::optional<std::int64_t>(2));
  const SalonFolder older;
  older.make(3);
  older.sql("UPDATE drafts SET seq = 2");
  EXPECT_EQ(older.open()->verify().error().code, "store_damaged");
  EXPECT_EQ(Store::verify_file(older.path()).error().code, "store_damaged");
}

TEST(File, TheCheckEndsWhenAsked) {
  const SalonFolder salon;
  salon.make(400);
  const auto store = salon.open();
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(store->verify(stop.get_token()).error().code, "store_unavailable");
  EXPECT_EQ(*store->verify(), std::nullopt);
}

// A whole chain written anew holds in itself; the entry acknowledged last, kept outside, gives it away.
TEST(File, AChainWrittenAnewIsFoundByWhatWasAcknowledged) {
  const SalonFolder salon, forged;
  salon.make(3);
  salon.open();
  forged.make();
  {
    const auto store = forged.open();
    for (int i = 0; i < 3; ++i) store->append(fact("e" + std::to_string(i), "v", i, R"({"client":"Z"})"));
  }
  salon.write(forged.bytes());
  EXPECT_FALSE(Store::verify_file(forged.path())->broken);
  EXPECT_EQ(Store::verify_file(salon.path()).error().code, "store_other");
}

TEST(File, AWriterElsewhereDoesNotHoldUpReaders) {
  const SalonFolder salon;
  salon.make(3);
  const auto store = salon.open();
  sqlite3* db = nullptr;
  ASSERT_EQ(sqlite3_open(salon.path().c_str(), &db), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(db, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
  const auto seconds = [](const auto& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  };
  std::thread writer([&] { EXPECT_EQ(store->append(fact("a", "v", 3)).error().code, "store_unavailable"); });
  EXPECT_LT(seconds([&] { EXPECT_EQ(store->visits()->size(), 1u); }), 0.15);
  writer.join();
  sqlite3_exec(db, "ROLLBACK", nullptr, nullptr, nullptr);
  sqlite3_close(db);
  EXPECT_TRUE(store->append(fact("a", "v", 3)));
  EXPECT_EQ(Store::verify_file(salon.path())->entries, 4) << "may be read whole while it is in use";
}

// Whatever call of the database fails while a salon is made, it is there whole or not at all, and can be made again.
TEST(File, IsNeverHalfMade) {
  int failures = 0;
  for (int n = 1; n < 400; n += 7) {
    const SalonFolder salon;
    int calls = 0;
    auto options = salon.options();
    options.fails = [&] { return ++calls == n; };
    const auto made = Store::make(options, [](Store& store) -> Expected<void> {
      for (int i = 0; i < 3; ++i) {
        if (auto kept = store.append(fact("e" + std::to_string(i), "v", i)); !kept) return tl::unexpected(kept.error());
      }
      return {};
    });
    failures += !made;
    EXPECT_EQ(static_cast<bool>(made), fs::exists(salon.path())) << "call " << n;
    if (!made) salon.make(3);
    EXPECT_EQ(salon.open()->facts()->size(), 3u) << "call " << n;
    if (calls < n) break;
  }
  EXPECT_GT(failures, 2);
}

}  // namespace
}  // namespace strandline::store
