#include <gtest/gtest.h>

#include <set>

#include "cluster.h"
#include "salon_folder.h"

namespace strandline::store {
namespace {

// What a store promises, of both drivers.
class OfStore : public testing::TestWithParam<const char*> {
 protected:
  static std::unique_ptr<Store> memory(std::function<bool()> fails = {}) {
    const bool file = GetParam() == std::string_view("sqlite");
    auto opened =
        file
            ? Store::open({":memory:", std::move(fails)})
            : Store::open(
                  {.path = Cluster::shared().fresh_salon(), .fails = std::move(fails), .key = Cluster::shared().key()});
    EXPECT_TRUE(opened) << opened.error().code << opened.error().detail;
    return opened ? std::move(*opened) : nullptr;
  }
};
const auto both = testing::Values("sqlite", "postgresql");
const auto named = [](const auto& told) { return std::string(told.param); };
INSTANTIATE_TEST_SUITE_P(Of, OfStore, both, named);

TEST_P(OfStore, DraftsAreSavedAndShowTheNewest) {
  const auto store = memory();
  EXPECT_EQ(store->save(draft("a", "v", 0))->seq, 1);
  EXPECT_EQ(store->save(draft("b", "v", 1, R"({"client":"B","date":"2026-03-09"})"))->seq, 2);
  EXPECT_EQ(store->save(draft("c", "w", 0))->store_seq, 3);
  const auto visit = *store->visit("v");
  ASSERT_TRUE(visit);
  EXPECT_EQ(visit->seq, 2);
  EXPECT_EQ(visit->client, "B");
  EXPECT_EQ(visit->date, "2026-03-09");
  ASSERT_EQ(store->visits()->size(), 2u);
  EXPECT_EQ(store->visits()->front().visit_id, "w");
  EXPECT_EQ(store->changes(1)->size(), 2u);
  EXPECT_FALSE(*store->visit("none"));
}

TEST_P(OfStore, JournalRefusesAnEntryThatHasNotSeenTheNewest) {
  const auto store = memory();
  store->append(fact("a", "v", 0));
  const auto late = store->append(fact("b", "v", 0));
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error().code, "store_conflict");
  EXPECT_EQ(late.error().seq, 1);
  EXPECT_EQ(store->facts()->size(), 1u);
}

TEST_P(OfStore, DraftsRefusesAnEntryThatHasNotSeenTheNewest) {
  const auto store = memory();
  store->save(draft("a", "v", 0));
  const auto late = store->save(draft("b", "v", 0));
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error().code, "store_conflict");
  EXPECT_EQ(late.error().seq, 1);
  EXPECT_EQ(store->changes(0)->size(), 1u);
}

TEST_P(OfStore, JournalHandingInTwiceChangesNothing) {
  const auto store = memory();
  const auto first = store->append(fact("a", "v", 0));
  const auto again = store->append(fact("a", "v", 0));
  ASSERT_TRUE(again);
  EXPECT_EQ(again->hash, first->hash);
  EXPECT_EQ(store->facts()->size(), 1u);
  EXPECT_FALSE(store->append(fact("a", "v", 1, R"({"grams":31})")));
}

TEST_P(OfStore, DraftsHandingInTwiceChangesNothing) {
  const auto store = memory();
  const auto first = store->save(draft("a", "v", 0));
  const auto again = store->save(draft("a", "v", 0));
  ASSERT_TRUE(again);
  EXPECT_EQ(again->store_seq, first->store_seq);
  EXPECT_EQ(store->changes(0)->size(), 1u);
  EXPECT_FALSE(store->save(draft("a", "v", 1, R"({"client":"other"})")));
}

TEST_P(OfStore, JournalGivesAnIdThatIsTakenAwayToNobodyElse) {
  const auto store = memory();
  ASSERT_TRUE(store->append(fact("a", "v", 0)));
  ASSERT_TRUE(store->append(fact("b", "v", 1)));
  EXPECT_EQ(store->append(fact("a", "w", 0)).error().code, "store_id_taken");
  // Handed in again after something else came: still what it was.
  EXPECT_EQ(store->append(fact("a", "v", 0))->seq, 1);
}

TEST_P(OfStore, DraftsGivesAnIdThatIsTakenAwayToNobodyElse) {
  const auto store = memory();
  ASSERT_TRUE(store->save(draft("a", "v", 0)));
  ASSERT_TRUE(store->save(draft("b", "v", 1)));
  EXPECT_EQ(store->save(draft("a", "w", 0)).error().code, "store_id_taken");
  // Handed in again after something else came: still what it was.
  EXPECT_EQ(store->save(draft("a", "v", 0))->seq, 1);
}

TEST_P(OfStore, ListsReachEveryVisitByPage) {
  const auto store = memory();
  for (int i = 0; i < 1203; ++i) ASSERT_TRUE(store->save(draft("e" + std::to_string(i), "v" + std::to_string(i), 0)));
  ASSERT_TRUE(store->save(draft("again", "v7", 1)));
  std::set<std::string> seen;
  VisitsAsked asked;
  for (;;) {
    const auto page = *store->visits(asked);
    if (page.empty()) break;
    if (seen.empty()) EXPECT_EQ(page.front().visit_id, "v7");
    for (const VisitRow& row : page) EXPECT_TRUE(seen.insert(row.visit_id).second);
    asked.before = page.back().store_seq;
  }
  EXPECT_EQ(seen.size(), 1203u);
}

TEST_P(OfStore, ListsFindNamesWithoutCapitalsAndAccents) {
  const auto store = memory();
  for (const char* name : {"Édith M.", "EDITH m.", "Judith", "Ægir", "Straße", "100%", "日本"}) {
    ASSERT_TRUE(store->save(draft(name, name, 0, R"({"client":")" + std::string(name) + "\"}")));
  }
  const auto found = [&](const std::string& text) { return store->visits({.find = text, .client = ""})->size(); };
  EXPECT_EQ(found(" edith"), 2u);
  EXPECT_EQ(found("dith"), 3u);
  EXPECT_EQ(found("ÉDITH"), 2u);
  EXPECT_EQ(found("strasse"), 1u);
  EXPECT_EQ(found("%"), 1u);
  EXPECT_EQ(found("本"), 1u);
  EXPECT_EQ(found("\xff"), 0u);
  EXPECT_EQ(found(""), 7u);
  EXPECT_EQ(store->visits({.find = "", .client = "edith M."})->size(), 2u);
  EXPECT_EQ(store->visits({.find = "", .client = "edith"})->size(), 0u);
}

TEST_P(OfStore, JournalRefusesABodyThatIsNotJson) {
  const auto store = memory();
  EXPECT_EQ(store->append(fact("a", "v", 0, "no json")).error().code, "store_not_json");
  EXPECT_EQ(store->save(draft("a", "v", 0, "no json")).error().code, "store_not_json");
}

// What another device saved meanwhile is not forgotten with the draft that this one has seen.
TEST_P(OfStore, JournalHandsInOnlyTheDraftThatWasSeen) {
  const auto store = memory();
  ASSERT_TRUE(store->save(draft("a", "v", 0)));
  ASSERT_TRUE(store->save(draft("b", "v", 1)));
  const auto late = store->hand_in({fact("f", "v", 0)}, "v", 1);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error().code, "store_conflict");
  EXPECT_EQ(late.error().seq, 2);
  EXPECT_TRUE(store->facts()->empty());
  EXPECT_TRUE(*store->visit("v"));
  EXPECT_TRUE(store->hand_in({fact("f", "v", 0)}, "v", 2));
  EXPECT_FALSE(*store->visit("v"));
}

// Whatever call of the database fails, the journal afterwards holds whole entries only, and the chain still
// closes.
TEST_P(OfStore, JournalNothingIsHalfWrittenWhicheverCallFails) {
  int completed_without_failure = 0;
  for (int n = 1; n < 120; ++n) {
    int calls = 0;
    bool armed = false;
    const auto store = memory([&] { return armed && ++calls == n; });
    ASSERT_TRUE(store->append(fact("a", "v", 0)));
    ASSERT_TRUE(store->save(draft("da", "v", 0)));
    armed = true;
    // A visit handed in: two facts, and its draft is gone; or nothing of it.
    const auto second = store->hand_in({fact("b", "v", 1, "{}", "p"), fact("c", "v", 2)}, "v", 1);
    armed = false;
    const auto entries = *store->facts();
    EXPECT_EQ(entries.size(), second ? 3u : 1u) << "call " << n;
    EXPECT_EQ(store->visit("v")->has_value(), !second) << "call " << n;
    EXPECT_FALSE(*store->verify()) << "call " << n;
    EXPECT_TRUE(store->append(fact("e", "v", static_cast<std::int64_t>(entries.size())))) << "call " << n;
    completed_without_failure += calls < n;
  }
  EXPECT_GT(completed_without_failure, 0) << "the loop must reach past the last call";
  EXPECT_LT(completed_without_failure, 119) << "the hook must have made calls fail";
}

// Memory that runs out in the middle of a save does not keep the next one waiting behind it.
TEST_P(OfStore, JournalAnExceptionInATransactionEndsIt) {
  bool armed = false;
  for (int n = 1; n < 12; ++n) {
    int calls = 0;
    const auto store = memory([&] { return armed && ++calls == n ? throw std::bad_alloc() : false; });
    armed = true;
    bool thrown = false;
    try {
      static_cast<void>(store->append(fact("a", "v", 0)));
    } catch (const std::bad_alloc&) {
      thrown = true;
    }
    armed = false;
    if (n < 5) EXPECT_TRUE(thrown) << "call " << n;
    EXPECT_TRUE(store->append(fact("a", "v", 0))) << "call " << n;
    EXPECT_EQ(store->facts()->size(), 1u) << "call " << n;
  }
}

}  // namespace
}  // namespace strandline::store
