// What a person may ask of the salon, and copies that are tried.
#include "strandline/salon/rights.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <latch>

#include "strandline/salon/backups.h"
#include "strandline/salon/facts.h"
#include "strandline/salon/knowledge.h"

namespace strandline::salon {
namespace {

const wire::Sources sources{[](const std::string&) { return std::optional(Shelf{}); },
                            [](const std::string&) { return std::optional(Policy{}); }};

wire::Json document(const std::string& client) {
  return *wire::parse(R"({"schema": "strandline.visit/1", "date": "2026-03-10", "client": ")" + client +
                      R"(", "head": {"areas": [{"id": "top", "spans": [{"id": "all", "to_cm": 5, "level": 5}]}]}})");
}

class Rights : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("strandline-rights-" + std::to_string(getpid()));
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
    db_ = folder_ / "salon.sqlite";
    ASSERT_TRUE(make_salon(db_, [](World&) { return Result<void>(); }));
    open();
  }
  void TearDown() override {
    close();
    std::filesystem::remove_all(folder_);
  }
  void open() {
    auto world = real_world(db_);
    ASSERT_TRUE(world) << world.error().code;
    w_ = std::make_unique<World>(std::move(*world));
    clients_ = std::make_unique<Clients>(*w_);
  }
  void close() { clients_.reset(), w_.reset(); }

  // A visit with a fact told before anybody knew whose it is, then handed in.
  std::string visit(const std::string& name, const std::string& id) {
    EXPECT_TRUE(save_new(*w_, document(name), sources, id));
    wire::Json told{{"id", "told-of-" + id}, {"kind", "result"}};
    told["body"] = *wire::parse(R"({"zones": [{"zone": "top/all", "level": 6.5, "tone": "gold"}], "said": "lovely"})");
    EXPECT_TRUE(tell(*w_, id, told));
    wire::Json asked{{"entry", "hand-in-of-" + id}, {"seq", 1}};
    if (const auto known = clients_->named(name); known && !known->empty()) asked["person"] = known->front().id;
    EXPECT_TRUE(hand_in(*w_, *clients_, id, asked));
    return clients_->named(name)->front().id;
  }
  bool stands_in_files(const std::string& text) const {
    for (const auto& file : std::filesystem::recursive_directory_iterator(folder_)) {
      std::ifstream in(file.path());
      if (file.is_regular_file() && std::string(std::istreambuf_iterator<char>(in), {}).find(text) != std::string::npos)
        return true;
    }
    return false;
  }

  std::filesystem::path folder_;
  std::string db_;
  std::unique_ptr<World> w_;
  std::unique_ptr<Clients> clients_;
};

TEST_F(Rights, EverythingOfAPersonIsToldAndNothingOfAnother) {
  const std::string ana = visit("Ana Invented", "first-visit-of-ana-1");
  visit("Ana Invented", "other-visit-of-ana-1");
  visit("Bea Invented", "first-visit-of-bea-1");
  ASSERT_TRUE(save_new(*w_, document("Ana Invented"), sources, "draft-visit-of-ana-1"));
  const auto all = everything_of(*w_, *clients_, ana);
  ASSERT_TRUE(all);
  EXPECT_EQ((*all)["client"]["name"], "Ana Invented");
  EXPECT_EQ(visits_in(*all),
            (std::vector<std::string>{"draft-visit-of-ana-1", "first-visit-of-ana-1", "other-visit-of-ana-1"}));
  int results = 0, ends = 0;
  for (const wire::Json& fact : (*all)["facts"]) {
    EXPECT_TRUE(fact.contains("body")) << fact;
    results += fact["kind"] == "result", ends += fact["kind"] == "visit.handed_in";
  }
  EXPECT_EQ(results, 2);
  EXPECT_EQ(ends, 2);
  ASSERT_EQ((*all)["drafts"].size(), 1u);
  EXPECT_EQ((*all)["drafts"][0]["document"]["client"], "Ana Invented");
  EXPECT_EQ(wire::print(*all).find("Bea"), std::string::npos);
  EXPECT_EQ(everything_of(*w_, *clients_, "nobody").error().front().code, "client_not_found");
}

TEST_F(Rights, WhoIsErasedIsGoneFromMemoryFileAndCopies) {
  const std::string ana = visit("Ana Invented", "first-visit-of-ana-1"),
                    bea = visit("Bea Invented", "first-visit-of-bea-1");
  ASSERT_TRUE(save_new(*w_, document("Ana Invented"), sources, "draft-visit-of-ana-1"));
  const auto copy = folder_ / "before.backup";
  ASSERT_TRUE(back_up_salon(db_, copy));
  ASSERT_TRUE(erase_client(*w_, *clients_, ana, "person-1"));
  EXPECT_TRUE(clients_->named("Ana Invented")->empty());
  EXPECT_EQ(clients_->named("Bea Invented")->size(), 1u);
  EXPECT_TRUE(list_visits(*w_)->visits.empty()) << "the draft of that name too";
  EXPECT_EQ(open_saved(*w_, "first-visit-of-ana-1").error().front().code, "visit_erased");
  const auto told = facts_of(*w_, "first-visit-of-ana-1");
  ASSERT_TRUE(told);
  for (const ToldFact& fact : told->facts) EXPECT_TRUE(fact.erased) << fact.kind;
  EXPECT_TRUE(open_saved(*w_, "first-visit-of-bea-1"));
  EXPECT_EQ(erase_client(*w_, *clients_, ana, "").error().front().code, "client_not_found");
  EXPECT_TRUE(verify_salon(db_)) << "the chain holds";
  close();
  // A copy from before brings nobody back.
  std::filesystem::rename(db_, folder_ / "old");
  for (const char* suffix : {"-head", "-wal", "-shm"}) std::filesystem::remove(db_ + suffix);
  ASSERT_TRUE(restore_salon(db_, copy));
  open();
  EXPECT_TRUE(clients_->named("Ana Invented")->empty());
  EXPECT_EQ(clients_->named("Bea Invented")->front().id, bea);
  EXPECT_EQ(open_saved(*w_, "first-visit-of-ana-1").error().front().code, "visit_erased");
  close();
  EXPECT_FALSE(stands_in_files("Ana Invented"));
}

TEST_F(Rights, WhoWasNotSeenForYearsIsFound) {
  visit("Ana Invented", "first-visit-of-ana-1");
  EXPECT_EQ(last_seen_before(*w_, "2026-03-11")->size(), 1u);
  EXPECT_TRUE(last_seen_before(*w_, "2026-03-10")->empty());
  EXPECT_EQ(years_before("2026-03-09", 10), "2016-03-09");
  EXPECT_EQ(years_before("2028-02-29", 3), "2025-02-28");
}

TEST_F(Rights, WhoWasKeptForLongerThanTheHouseKeepsIsDue) {
  const std::string ana = visit("Ana Invented", "first-visit-of-ana-1");  // 2026-03-10
  w_->now = [] { return std::string("2024-05-01T09:00:00Z"); };
  Clients cards(*w_);
  ASSERT_TRUE(cards.add({{"card-of-bea-of-the-list", "Bea Invented", "2020-01-05", "6.3", ""}}));
  const Retention rules{.client_years = 10, .card_years = 3};
  const auto due = [&](const char* day) { return *due_for_erasure(*w_, rules, day); };
  EXPECT_TRUE(due("2027-05-01").empty()) << "the day is still within";
  EXPECT_EQ(due("2027-05-02"), std::vector<std::string>{"card-of-bea-of-the-list"});
  EXPECT_EQ(due("2036-03-11"), (std::vector<std::string>{ana, "card-of-bea-of-the-list"}));
  ASSERT_TRUE(erase_client(*w_, cards, "card-of-bea-of-the-list", ""));
  EXPECT_TRUE(due("2027-05-02").empty());
  ASSERT_TRUE(open_retention(default_knowledge()));
  EXPECT_EQ(open_retention(folder_).error().front().code, "cannot_read");
  const auto years = [](int value) {
    return *wire::parse(R"({"constants": [{"key": "client_years", "value": )" + std::to_string(value) +
                        R"(}, {"key": "card_years", "value": 1}]})");
  };
  EXPECT_TRUE(read_retention(years(1)));
  EXPECT_EQ(read_retention(years(0)).error().front().code, "out_of_range");
}

TEST_F(Rights, CopiesAreTriedAndTheOldestGo) {
  visit("Ana Invented", "first-visit-of-ana-1");
  BackupsAsked asked{.db = db_, .key = {}, .folder = folder_ / "copies", .keep = 2};
  std::filesystem::create_directories(asked.folder);
  std::ofstream(asked.folder / "notes.txt") << "ours";
  for (const char* day : {"2026-03-09T09:00:00Z", "2026-03-10T09:00:00Z", "2026-03-11T09:00:00Z"})
    ASSERT_TRUE(back_up_now(asked, day)) << day;
  std::vector<std::string> left;
  for (const auto& file : std::filesystem::directory_iterator(asked.folder)) left.push_back(file.path().filename());
  std::sort(left.begin(), left.end());
  EXPECT_EQ(left,
            (std::vector<std::string>{"notes.txt", "salon-20260310T090000Z.backup", "salon-20260311T090000Z.backup"}));
  EXPECT_EQ(back_up_now(asked, "2026-03-11T09:00:00Z").error().front().code, "store_exists");
}

TEST_F(Rights, ACopyThatCannotBeRestoredIsSaidSo) {
  visit("Ana Invented", "first-visit-of-ana-1");
  const std::string copy = folder_ / "a.backup", key = db_ + "-key";
  ASSERT_TRUE(back_up_salon(db_, copy));
  EXPECT_TRUE(check_backup(copy, key));
  const auto other = folder_ / "other.sqlite";
  ASSERT_TRUE(make_salon(other, [](World&) { return Result<void>(); }));
  EXPECT_EQ(check_backup(copy, other.string() + "-key").error().front().code, "store_key_wrong");
  EXPECT_EQ(check_backup(copy, folder_ / "none").error().front().code, "store_key_missing");
  std::filesystem::resize_file(copy, std::filesystem::file_size(copy) / 2);
  EXPECT_FALSE(check_backup(copy, key));
  for (const auto& file : std::filesystem::directory_iterator(folder_))
    EXPECT_EQ(file.path().string().find("scratch"), std::string::npos) << file.path();
}

TEST_F(Rights, CopiesAreMadeByThemselves) {
  std::latch told(1);
  {
    Backups running({.db = db_, .key = folder_ / "none", .folder = folder_ / "copies"}, w_->now,
                    [&](const Problems& found) {
                      EXPECT_EQ(found.front().code, "store_key_missing");
                      told.count_down();
                    });
    told.wait();
  }
  EXPECT_TRUE(back_up_now({.db = db_, .key = {}, .folder = folder_ / "copies"}, "2026-03-09T09:00:00Z"));
}

}  // namespace
}  // namespace strandline::salon
