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
  EXPECT_EQ(list_visits(w)->size(), 1u);
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

TEST(Visits, BadDocumentsAreNotWritten) {
  World w = world();
  EXPECT_FALSE(save_new(w, document(14), sources));
  EXPECT_EQ(save_change(w, "nobody", 0, document(5), sources).error()[0].code, "visit_not_found");
  EXPECT_TRUE(list_visits(w)->empty());
}

TEST(DemoSalon, IsTheSameEveryTimeAndMadeOnce) {
  World a = world(), b = world();
  const auto made = open_demo_salon(a, knowledge / "demo" / "visits", sources);
  ASSERT_TRUE(made) << wire::print(wire::problems_json(made.error()));
  EXPECT_GE(*made, 6);
  EXPECT_EQ(*open_demo_salon(a, knowledge / "demo" / "visits", sources), 0);
  ASSERT_TRUE(open_demo_salon(b, knowledge / "demo" / "visits", sources));
  EXPECT_EQ(a.store->changes(0)->back().hash, b.store->changes(0)->back().hash);
  const auto listed = list_visits(a);
  for (const VisitSummary& v : *listed) EXPECT_NE(v.client.find("invented"), std::string::npos) << v.id;
}

}  // namespace
}  // namespace strandline::salon
