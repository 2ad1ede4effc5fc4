// Copies and what can be wrong with them; the key from words.
#include "salon_folder.h"

namespace strandline::store {
namespace {

namespace fs = std::filesystem;

constexpr const char* health = R"({"answers":"xanthoxylum-rash"})";

void fill(const SalonFolder& salon) {
  salon.make(3);
  ASSERT_TRUE(salon.open()->append(fact("h", "person", 0, health, "person")));
}

std::string code_of(const Expected<Verified>& got) { return got ? "done" : got.error().code; }

TEST(Backup, IsTakenWhileTheFileIsInUseAndRestoredWhole) {
  const SalonFolder salon;
  fill(salon);
  const std::string copy = salon.path("copy.sqlite");
  {
    const auto store = salon.open();
    ASSERT_TRUE(store->append(fact("late", "v", 3)));
    const auto made = Store::back_up(salon.options(), copy);
    ASSERT_TRUE(made) << made.error().code << made.error().detail;
    EXPECT_EQ(made->entries, 5);
    EXPECT_TRUE(made->opened);
    EXPECT_EQ(code_of(Store::back_up(salon.options(), copy)), "store_exists");
    EXPECT_TRUE(store->append(fact("later", "v", 4))) << "goes on meanwhile";
  }
  EXPECT_EQ(fs::status(copy).permissions(), fs::perms::owner_read | fs::perms::owner_write);
  std::ifstream in(copy, std::ios::binary);
  EXPECT_EQ(std::string(std::istreambuf_iterator<char>(in), {}).find("xanthoxylum"), std::string::npos);
  EXPECT_EQ(code_of(Store::restore(salon.options(), copy)), "store_exists") << "never over a salon file";
  fs::remove(salon.path());
  EXPECT_EQ(code_of(Store::restore(salon.options(), copy)), "store_left_over");
  fs::remove(salon.path() + "-head");
  ASSERT_EQ(code_of(Store::restore(salon.options(), copy)), "done");
  const auto store = salon.open();
  EXPECT_EQ(store->facts()->size(), 5u);
  EXPECT_EQ((*store->visit("v"))->seq, 3);
  EXPECT_EQ(store->facts({.after = 0, .stream = {}, .key = "person", .kind = {}})->front().body, health);
  EXPECT_FALSE(fs::exists(copy + "-new"));
  EXPECT_FALSE(fs::exists(salon.path() + "-new"));
}

TEST(Backup, OneWithAnErasedPersonDoesNotBringThemBack) {
  const SalonFolder salon;
  fill(salon);
  const std::string before = salon.path("before.sqlite");
  ASSERT_EQ(code_of(Store::back_up(salon.options(), before)), "done");
  ASSERT_TRUE(salon.open()->erase("person"));
  const std::string after = salon.path("after.sqlite");
  ASSERT_EQ(code_of(Store::back_up(salon.options(), after)), "done");
  for (const std::string& copy : {before, after}) {
    for (const char* suffix : {"", "-head"}) fs::remove(salon.path() + suffix);
    ASSERT_EQ(code_of(Store::restore(salon.options(), copy)), "done");
    EXPECT_TRUE(salon.open()->facts({.after = 0, .stream = {}, .key = "person", .kind = {}})->front().closed) << copy;
  }
}

TEST(Backup, WhatIsWrongWithACopyIsSaidAndNothingIsMadeOfIt) {
  const SalonFolder salon, elsewhere, other;
  fill(salon);
  const std::string copy = salon.path("copy.sqlite");
  ASSERT_EQ(code_of(Store::back_up(salon.options(), copy)), "done");
  const auto restored = [&](const char* when) {
    const std::string code = code_of(Store::restore(elsewhere.options(), copy));
    EXPECT_FALSE(fs::exists(elsewhere.path())) << when;
    EXPECT_FALSE(fs::exists(elsewhere.path() + "-new")) << when;
    return code;
  };
  EXPECT_EQ(restored("no key"), "store_key_missing");
  other.make();
  elsewhere.write(other.bytes("-key"), "-key");
  EXPECT_EQ(restored("key of another salon"), "store_key_wrong");
  elsewhere.write(salon.bytes("-key"), "-key");
  const auto size = fs::file_size(copy);
  std::ifstream in(copy, std::ios::binary);
  const std::string whole(std::istreambuf_iterator<char>(in), {});
  fs::resize_file(copy, size / 2);
  EXPECT_EQ(restored("cut short"), "store_damaged");
  std::ofstream(copy, std::ios::binary) << "no salon file";
  EXPECT_EQ(restored("foreign"), "store_foreign");
  fs::remove(copy);
  EXPECT_EQ(restored("not there"), "store_missing");
  std::ofstream(copy, std::ios::binary) << whole;
  sqlite3* db = nullptr;
  ASSERT_EQ(sqlite3_open(copy.c_str(), &db), SQLITE_OK);
  sqlite3_exec(db, "PRAGMA user_version = 999", nullptr, nullptr, nullptr);
  sqlite3_close(db);
  EXPECT_EQ(restored("newer"), "store_newer");
}

TEST(Backup, AChangedFactIsFoundInACopy) {
  const SalonFolder salon, elsewhere;
  fill(salon);
  const std::string copy = salon.path("copy.sqlite");
  ASSERT_EQ(code_of(Store::back_up(salon.options(), copy)), "done");
  elsewhere.write(salon.bytes("-key"), "-key");
  sqlite3* db = nullptr;
  ASSERT_EQ(sqlite3_open(copy.c_str(), &db), SQLITE_OK);
  sqlite3_exec(db, "DROP TRIGGER facts_are_not_changed; UPDATE facts SET made_at = '2020' WHERE store_seq = 2", nullptr,
               nullptr, nullptr);
  sqlite3_close(db);
  EXPECT_EQ(Store::restore(elsewhere.options(), copy)->broken, std::optional<std::int64_t>(2));
  EXPECT_FALSE(fs::exists(elsewhere.path()));
}

TEST(Recovery, TheKeyComesBackFromItsWordsOnly) {
  const SalonFolder salon, other;
  fill(salon);
  other.make();
  const std::string words = *Store::recovery_words(salon.options());
  EXPECT_EQ(Store::recover_key(salon.options(), words).error().code, "store_key_there");
  const std::string key = salon.bytes("-key");
  salon.put(std::nullopt, "-key");
  EXPECT_EQ(Store::recovery_words(salon.options()).error().code, "store_key_missing");
  EXPECT_EQ(Store::recover_key(salon.options(), words.substr(6)).error().code, "store_key_words");
  EXPECT_EQ(Store::recover_key(salon.options(), *Store::recovery_words(other.options())).error().code,
            "store_key_wrong");
  EXPECT_FALSE(fs::exists(salon.path() + "-key"));
  ASSERT_TRUE(Store::recover_key(salon.options(), words));
  EXPECT_EQ(salon.bytes("-key"), key);
  EXPECT_EQ(salon.refusal(), "opened");
}

}  // namespace
}  // namespace strandline::store
