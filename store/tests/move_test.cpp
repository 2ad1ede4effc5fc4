// Files of earlier versions, as they were written then, are brought up to date with nothing lost and no name left
// behind.
#include <iomanip>
#include <sstream>

#include "chain.h"
#include "salon_folder.h"

namespace strandline::store {
namespace {

namespace fs = std::filesystem;

std::string text_of(const std::string& path) {
  std::ifstream in(path);
  return {std::istreambuf_iterator<char>(in), {}};
}

struct Old {
  std::string id, visit;
  int seq;
  std::string body;
};
const std::vector<Old> written{{"e1", "v", 1, R"({"client":"Ottoline","fill":"a"})"},
                               {"e2", "w", 1, R"({"client":"Zenobia"})"},
                               {"e3", "v", 2, R"({"client":"Ottoline","date":"2026-03-09","fill":"b"})"}};

// What a program of that version left, with its own chain; closed, or as it was while it was open.
void make_old(const SalonFolder& salon, int version, bool empty = false) {
  std::string sql = "PRAGMA journal_mode = WAL;";
  const std::vector<std::string> files{"0001_journal.sql", "0002_visits.sql", "0003_mark.sql"};
  for (int i = 0; i < version; ++i) sql += text_of(STRANDLINE_SOURCE_DIR "/store/migrations/" + files[std::size_t(i)]);
  sql += "; PRAGMA user_version = " + std::to_string(version) + ";";
  std::string before;
  int store_seq = 0;
  for (const Old& e : empty ? std::vector<Old>{} : written) {
    ++store_seq;
    const std::string at = "2026-03-0" + std::to_string(store_seq) + "T09:00:00Z";
    before = hash_of({before, std::to_string(store_seq), e.id, e.visit, std::to_string(e.seq), at, "visit", e.body});
    sql += "INSERT INTO entries VALUES (" + std::to_string(store_seq) + ",'" + e.id + "','" + e.visit + "'," +
           std::to_string(e.seq) + ",'" + at + "','visit','" + e.body + "',x'" + hexadecimal(before) + "');";
  }
  salon.sql(sql);
  if (version < 3 || empty) return;
  salon.sql("PRAGMA journal_mode = DELETE");
  std::ostringstream head;
  head << "strandline-head 1 " << std::setw(20) << store_seq << ' ' << hexadecimal(before) << '\n';
  salon.write(head.str(), "-head");
}

void expect_moved(const SalonFolder& salon, int version) {
  const auto store = salon.open();
  ASSERT_TRUE(store) << version;
  const auto v = *store->visit("v");
  ASSERT_TRUE(v) << version;
  EXPECT_EQ(v->body, written[2].body);
  EXPECT_EQ(v->seq, 2);
  EXPECT_EQ(v->entry_id, "e3");
  EXPECT_EQ(v->opened_at, "2026-03-01T09:00:00Z");
  EXPECT_EQ(v->changed_at, "2026-03-03T09:00:00Z");
  EXPECT_EQ(v->date, "2026-03-09");
  EXPECT_EQ(store->visits({.find = "zeno", .client = {}})->size(), 1u);
  EXPECT_EQ(store->changes(0)->size(), 3u);
  const auto facts = *store->facts();
  ASSERT_EQ(facts.size(), 1u);
  EXPECT_EQ(facts[0].kind, "moved");
  EXPECT_NE(facts[0].about.find("\"entries\":3"), std::string::npos);
  EXPECT_EQ(*store->verify(), std::nullopt);
  // A save whose answer was lost before is still known.
  EXPECT_EQ(store->save(draft("e3", "v", 1, written[2].body))->seq, 2);
  EXPECT_TRUE(store->save(draft("late", "v", 2)));
}

void expect_no_name(const SalonFolder& salon) {
  for (const char* suffix : {"", "-wal", "-head"}) {
    EXPECT_EQ(salon.bytes(suffix).find("Ottoline"), std::string::npos) << suffix;
    EXPECT_EQ(salon.bytes(suffix).find("Zenobia"), std::string::npos) << suffix;
  }
}

TEST(Move, FilesOfEveryEarlierVersionAreBroughtUpToDate) {
  for (int version : {1, 2, 3}) {
    const SalonFolder salon;
    make_old(salon, version);
    EXPECT_NE(salon.bytes().find("Ottoline"), std::string::npos);
    EXPECT_FALSE(Store::verify_file(salon.path())->broken) << "verify reads it as it is";
    expect_moved(salon, version);
    expect_no_name(salon);
    EXPECT_EQ(salon.open()->facts()->size(), 1u) << "once";
    expect_no_name(salon);
  }
}

TEST(Move, AnEmptyOldFileMayBeOneThatWasCopiedInUse) {
  for (int version : {1, 2}) {
    const SalonFolder salon;
    make_old(salon, version, true);
    EXPECT_EQ(salon.refusal(), "store_without_wal") << version;
  }
}

TEST(Move, AChangedEntryIsNotMovedUnlessAskedTo) {
  const SalonFolder salon;
  make_old(salon, 3);
  salon.sql("DROP TRIGGER entries_are_not_changed; UPDATE entries SET body = '{\"client\":\"Z\"}' WHERE store_seq = 2");
  EXPECT_EQ(salon.refusal(), "store_damaged");
  EXPECT_EQ(Store::verify_file(salon.path())->broken, std::optional<std::int64_t>(2)) << "left as it was";
  auto options = salon.options();
  options.as_found = true;
  EXPECT_EQ((*(*Store::open(options))->visit("w"))->client, "Z");
}

// Whatever call fails while it is moved, the next opening moves all of it.
TEST(Move, IsWholeOrNotDoneWhicheverCallFails) {
  int failures = 0;
  for (int n = 1; n < 400; n += 3) {
    const SalonFolder salon;
    make_old(salon, 3);
    int calls = 0;
    auto options = salon.options();
    options.fails = [&] { return ++calls == n; };
    const bool opened = Store::open(options).has_value();
    failures += !opened;
    expect_moved(salon, 3);
    expect_no_name(salon);
    if (calls < n) break;
  }
  EXPECT_GT(failures, 20);
}

}  // namespace
}  // namespace strandline::store
