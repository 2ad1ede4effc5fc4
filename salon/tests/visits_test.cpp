#include "strandline/salon/visits.h"

#include <gtest/gtest.h>

#include "strandline/salon/knowledge.h"

namespace strandline::salon {
namespace {

const std::filesystem::path knowledge = std::filesystem::path(STRANDLINE_SOURCE_DIR) / "knowledge";

const wire::Sources sources{[](const std::string&) { return std::optional(Shelf{}); },
                            [](const std::string&) { return std::optional(Policy{}); }};

World world(std::function<bool()> fails = {}) {
  auto counter = std::make_shared<int>(0);
  return {[] { return std::string("2026-03-10T10:00:00Z"); }, [counter] { return "id" + std::to_string(++*counter); },
          std::move(*store::Store::open({":memory:", std::move(fails)}))};
}

wire::Json document(int level) {
  return *wire::parse(R"({"schema": "strandline.visit/1", "client": "C", "options": {"scenarios": 8},
    "head": {"areas": [{"id": "top", "spans": [{"id": "all", "to_cm": 5, "level": )" +
                      std::to_string(level) + "}]}]}}");
}

TEST(Visits, KeepWhatThisHeadsDaysAreLikeAndNoOptionOfOneQuestion) {
  World w = world();
  wire::Json told = document(5);
  told["options"]["habit"]["washes_per_week"] = 4;
  const auto saved = save_new(w, told, sources);
  ASSERT_TRUE(saved);
  EXPECT_EQ(open_saved(w, saved->summary.id)->document["options"],
            *wire::parse(R"({"habit": {"washes_per_week": 4}})"));
}

TEST(Visits, AreSavedOpenedAndChanged) {
  World w = world();
  const auto saved = save_new(w, document(5), sources);
  ASSERT_TRUE(saved);
  EXPECT_EQ(saved->summary.seq, 1);
  EXPECT_FALSE(saved->document.contains("options"));
  const auto changed = save_change(w, saved->summary.id, 1, document(6), sources);
  ASSERT_TRUE(changed);
  EXPECT_EQ(changed->summary.seq, 2);
  EXPECT_EQ(open_saved(w, saved->summary.id)->document["head"]["areas"][0]["spans"][0]["level"], 6);
  EXPECT_EQ(changes(w, 0)->size(), 2u);
  EXPECT_EQ(list_visits(w)->visits.size(), 1u);
}

TEST(Visits, AChangeOnSomethingOldIsRefused) {
  World w = world();
  const auto saved = save_new(w, document(5), sources);
  ASSERT_TRUE(save_change(w, saved->summary.id, 1, document(6), sources));
  const auto late = save_change(w, saved->summary.id, 1, document(7), sources);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error()[0].code, "visit_changed_elsewhere");
  EXPECT_EQ(late.error()[0].params.at("seq"), "2");
}

TEST(Visits, ASaveHandedInAgainIsAnsweredAsTheFirstTime) {
  World w = world();
  const std::string first = "entry-of-device-1", second = "entry-of-device-2";
  const auto saved = save_new(w, document(5), sources, first);
  ASSERT_TRUE(saved);
  EXPECT_EQ(saved->entry, first);
  EXPECT_EQ(save_new(w, document(5), sources, first)->summary.id, saved->summary.id);
  const std::string id = saved->summary.id;
  ASSERT_TRUE(save_change(w, id, 1, document(6), sources, second));
  ASSERT_TRUE(save_change(w, id, 2, document(7), sources));
  // Another device has saved since: the answer is still the entry of the one who asks.
  const auto again = save_change(w, id, 1, document(6), sources, second);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->summary.seq, 2);
  EXPECT_EQ(again->document["head"]["areas"][0]["spans"][0]["level"], 6);
  EXPECT_EQ(save_new(w, document(5), sources, first)->summary.seq, 1);
  EXPECT_EQ(changes(w, 0)->size(), 3u);
  EXPECT_EQ(save_change(w, id, 3, document(8), sources, second).error()[0].code, "entry_id_taken");
  EXPECT_EQ(save_new(w, document(5), sources, "short").error()[0].code, "not_an_id");
  EXPECT_EQ(save_new(w, document(5), sources, "a space in the middle").error()[0].code, "not_an_id");
}

TEST(Visits, AreListedPageByPage) {
  World w = world();
  for (int i = 0; i < 5; ++i) ASSERT_TRUE(save_new(w, document(5), sources));
  const auto first = list_visits(w, {.cursor = "", .find = "", .client = "c", .limit = 3});
  ASSERT_TRUE(first);
  EXPECT_EQ(first->visits.size(), 3u);
  const auto rest = list_visits(w, {.cursor = first->next, .find = "", .client = "", .limit = 3});
  ASSERT_TRUE(rest);
  EXPECT_EQ(rest->visits.size(), 2u);
  EXPECT_EQ(rest->next, "");
  EXPECT_TRUE(list_visits(w, {.cursor = "", .find = "", .client = "d"})->visits.empty());
  for (const char* none : {"x", "-5", "0", "1e3", "99999999999999999999"})
    EXPECT_FALSE(list_visits(w, {.cursor = none, .find = "", .client = ""})) << none;
  EXPECT_FALSE(list_visits(w, {.cursor = "", .find = "", .client = "", .limit = 0}));
}

TEST(Visits, BadDocumentsAreNotWritten) {
  World w = world();
  EXPECT_FALSE(save_new(w, document(14), sources));
  EXPECT_EQ(save_change(w, "nobody", 0, document(5), sources).error()[0].code, "visit_not_found");
  EXPECT_TRUE(list_visits(w)->visits.empty());
}

TEST(DemoSalon, IsTheSameEveryTime) {
  World a = world(), b = world();
  const auto made = open_demo_salon(a, knowledge / "demo" / "visits", sources);
  ASSERT_TRUE(made) << wire::print(wire::problems_json(made.error()));
  EXPECT_GE(*made, 6);
  ASSERT_TRUE(open_demo_salon(b, knowledge / "demo" / "visits", sources));
  const auto rows = *a.store->visits();
  for (const store::VisitRow& row : rows) {
    EXPECT_EQ((*a.store->visit(row.visit_id))->body, (*b.store->visit(row.visit_id))->body) << row.visit_id;
  }
  const auto listed = list_visits(a);
  for (const VisitSummary& v : listed->visits) EXPECT_NE(v.client.find("invented"), std::string::npos) << v.id;
}

}  // namespace
}  // namespace strandline::salon
