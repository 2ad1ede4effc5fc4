// The salon's own shelves: typed, saved, edited, planned on.
#include "strandline/salon/shelves.h"

#include <gtest/gtest.h>

#include "strandline/salon/verbs.h"
#include "strandline/salon/visits.h"
#include "strandline/wire/shelf_table.h"

namespace strandline::salon {
namespace {

const std::filesystem::path knowledge = std::filesystem::path(STRANDLINE_SOURCE_DIR) / "knowledge";

const House& house() {
  static const House h = *open_house({.shelf = {}, .policy = {}, .knowledge = knowledge});
  return h;
}

struct Salon {
  std::shared_ptr<bool> ill = std::make_shared<bool>(false);
  World world;
  Shelves shelves;

  Salon() : world(made(ill)), shelves(world, house()) {}
  static World made(const std::shared_ptr<bool>& ill) {
    auto counter = std::make_shared<int>(0);
    return {[counter] { return "2026-03-10T10:00:" + std::to_string(10 + *counter % 50) + "Z"; },
            [counter] { return "made-id-of-test-" + std::to_string(++*counter); },
            std::move(*store::Store::open({":memory:", [ill] { return *ill; }}))};
  }
};

// Two makers' ranges of names alone, from the classes and a pasted list, and the bottles.
wire::Json typed_shelf() {
  wire::Json shelf{{"title", "our shelf"}, {"ranges", wire::Json::array()}, {"products", wire::Json::array()}};
  for (wire::Json range : house().classes["ranges"]) {
    if (range["id"] != "permanent" && range["id"] != "demi") continue;
    range["maker"] = range["id"] == "permanent" ? "maker one (invented)" : "maker two (invented)";
    shelf["ranges"].push_back(range);
  }
  std::string list = "code;level;tone\n";
  for (int level = 3; level <= 10; ++level)
    for (const char* tone : {"natural", "ash", "gold", "copper"})
      list += "T" + std::to_string(level) + tone[0] + ';' + std::to_string(level) + ';' + tone + '\n';
  for (const char* range : {"permanent", "demi"}) shelf = wire::read_table({list, range, {}, {}}, shelf)->document;
  return wire::read_table({"developer 1,5 %\ndeveloper 3 %\ndeveloper 6 %\ndeveloper 9 %", "", {}, {}}, shelf)
      ->document;
}

TEST(Shelves, BeginWithTheDemoShelfWhichNobodyEdits) {
  Salon s;
  const auto list = s.shelves.list();
  ASSERT_EQ(list->size(), 1u);
  EXPECT_TRUE(list->front().chosen && list->front().invented);
  EXPECT_EQ(s.shelves.save_change("demo", 0, typed_shelf()).error()[0].code, "shelf_is_demo");
  EXPECT_EQ(s.shelves.set_empty("demo", "permanent-7-natural", true).error()[0].code, "shelf_is_demo");
  // Copied, it can be edited.
  wire::Json copy = s.shelves.open_shelf("demo")->document;
  copy["title"] = "ours";
  EXPECT_TRUE(s.shelves.save_new(copy));
  EXPECT_EQ(s.shelves.list()->size(), 2u);
}

TEST(Shelves, ASaveIsAnsweredTheSameHoweverOftenItIsHandedIn) {
  Salon s;
  const auto first = s.shelves.save_new(typed_shelf(), "entry-of-a-device-1");
  ASSERT_TRUE(first);
  wire::Json more = first->document;
  more["title"] = "renamed";
  const auto second = s.shelves.save_change(first->summary.id, 1, more, "entry-of-a-device-2");
  ASSERT_TRUE(second);
  const auto again = s.shelves.save_new(typed_shelf(), "entry-of-a-device-1");
  ASSERT_TRUE(again) << again.error()[0].code;
  EXPECT_EQ(again->summary.name, first->summary.name);
  EXPECT_EQ(s.shelves.history(first->summary.id)->size(), 2u);
  EXPECT_EQ(s.shelves.list()->front().title, "renamed");
}

TEST(Shelves, TwoDevicesAtOnceAreTold) {
  Salon s;
  const auto saved = s.shelves.save_new(typed_shelf());
  wire::Json mine = saved->document, theirs = saved->document;
  mine["title"] = "mine", theirs["title"] = "theirs";
  ASSERT_TRUE(s.shelves.save_change(saved->summary.id, 1, mine));
  const auto late = s.shelves.save_change(saved->summary.id, 1, theirs);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error()[0].code, "shelf_changed_elsewhere");
  EXPECT_EQ(late.error()[0].params.at("seq"), "2");
  EXPECT_EQ(s.shelves.open_shelf(saved->summary.id)->document["title"], "mine");
}

TEST(Shelves, AreCheckedWhollyAndKeptOnlyWhenRight) {
  Salon s;
  wire::Json bad = typed_shelf();
  bad["ranges"][0]["ratios"] = {1, 40};
  bad["products"][2]["level"] = 15;
  bad["products"][3]["colour"] = "red";
  EXPECT_EQ(s.shelves.save_new(bad).error().size(), 3u);
  wire::Json worse = typed_shelf();
  worse["products"][1]["id"] = worse["products"][0]["id"];
  const auto refused = s.shelves.save_new(worse);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].path, "/products/1/id");
  EXPECT_EQ(s.shelves.list()->size(), 1u);
  // Nothing on it yet, or no bottle: that may be kept, and is told.
  const auto begun = s.shelves.save_new(*wire::parse(R"({"title": "t", "ranges": [{"id": "a", "name": "tint",
      "cls": "permanent", "developer_percents": [6]}], "products": []})"));
  ASSERT_TRUE(begun);
  EXPECT_EQ(begun->gaps.size(), 2u);
}

TEST(Shelves, AVisitKeepsTheVersionItWasPlannedOn) {
  Salon s;
  const auto first = s.shelves.save_new(typed_shelf());
  ASSERT_TRUE(s.shelves.choose(first->summary.id));
  const wire::Sources sources = s.shelves.sources();
  wire::Json visit = *wire::parse(R"({"schema": "strandline.visit/1", "client": "C",
    "head": {
    "areas" : [ {"id" : "top", "spans" : [ {"id" : "all", "to_cm" : 5, "level" : 6} ]} ]}
})");
  // Without a name, and by the name of the newest: both are kept as the version of today.
  const auto kept = save_new(s.world, visit, sources);
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->document["shelf"], first->summary.name);
  visit["shelf"] = first->summary.id;
  EXPECT_EQ(save_new(s.world, visit, sources)->document["shelf"], first->summary.name);
  wire::Json less = first->document;
  less["products"].erase(0);
  const auto second = s.shelves.save_change(first->summary.id, 1, less);
  ASSERT_TRUE(second);
  EXPECT_EQ(sources.shelf(first->summary.name)->products.size(), first->document["products"].size());
  EXPECT_EQ(sources.shelf(first->summary.id)->products.size(), less["products"].size());
  EXPECT_FALSE(sources.shelf(first->summary.id + "@0123"));
  const auto told = s.shelves.history(first->summary.id);
  EXPECT_EQ(told->front().removed, std::vector<std::string>{"T3n · 3 natural"});
}

TEST(Shelves, AnEmptyTubeIsOutOfEverySearchUntilItIsBack) {
  Salon s;
  const auto saved = s.shelves.save_new(typed_shelf());
  const std::string& id = saved->summary.id;
  const auto stock = [&](const std::string& name) {
    return find_product(*s.shelves.sources().shelf(name), "permanent-7-copper")->stock_g;
  };
  EXPECT_EQ(stock(id), wire::kNotCounted);
  ASSERT_TRUE(s.shelves.set_empty(id, "permanent-7-copper", true, "entry-of-a-tube-1"));
  EXPECT_EQ(stock(id), 0);
  EXPECT_EQ(stock(saved->summary.name), 0);  // today, whatever was planned
  EXPECT_EQ(s.shelves.open_shelf(id)->empty, std::vector<std::string>{"permanent-7-copper"});
  ASSERT_TRUE(s.shelves.set_empty(id, "permanent-7-copper", false, "entry-of-a-tube-2"));
  ASSERT_TRUE(s.shelves.set_empty(id, "permanent-7-copper", true, "entry-of-a-tube-1"));  // handed in again
  EXPECT_EQ(stock(id), wire::kNotCounted);
  EXPECT_EQ(s.shelves.set_empty(id, "nothing", true).error()[0].code, "unknown_product");
}

TEST(Shelves, AreThereAgainWhenTheFileIsReadAnew) {
  Salon s;
  const auto saved = s.shelves.save_new(typed_shelf());
  ASSERT_TRUE(s.shelves.set_empty(saved->summary.id, "demi-8-ash", true));
  ASSERT_TRUE(s.shelves.choose(saved->summary.id));
  const Shelves anew(s.world, house());
  EXPECT_EQ(anew.open_shelf("")->document, saved->document);
  EXPECT_EQ(anew.open_shelf("")->empty, std::vector<std::string>{"demi-8-ash"});
  EXPECT_TRUE(anew.list()->front().chosen);
}

TEST(Shelves, AnAilingFileIsTold) {
  Salon s;
  *s.ill = true;
  EXPECT_EQ(s.shelves.list().error()[0].code, "store_unavailable");
  EXPECT_FALSE(s.shelves.sources().shelf(""));
  EXPECT_TRUE(s.shelves.sources().shelf("demo"));
  *s.ill = false;
  EXPECT_TRUE(s.shelves.list());
}

TEST(Shelves, TheFirstPlanOnATypedShelfNamesOnlyWhatStandsOnIt) {
  Salon s;
  const auto saved = s.shelves.save_new(typed_shelf());
  ASSERT_TRUE(saved);
  EXPECT_TRUE(saved->gaps.empty());
  ASSERT_TRUE(s.shelves.set_empty(saved->summary.id, "permanent-6-natural", true));
  const auto text = read_file(knowledge / "demo" / "visits" / "all_over_brown.json", 1u << 20);
  wire::Json visit = *wire::parse(*text);
  visit["shelf"] = saved->summary.name;
  visit["options"]["scenarios"] = 16;
  visit["test"]["maker"] = "maker one (invented)";
  visit.erase("bowls");
  const auto planned =
      open_visit(visit, s.shelves.sources()).and_then([](const wire::ReadVisit& v) { return plan(v, {}); });
  ASSERT_TRUE(planned) << planned.error()[0].code << ' ' << planned.error()[0].path;
  ASSERT_FALSE(planned->plan.bowls.empty());
  for (const wire::BowlView& bowl : planned->plan.bowls)
    for (const wire::PartView& part : bowl.parts) {
      const auto product = std::find_if(saved->document["products"].begin(), saved->document["products"].end(),
                                        [&](const wire::Json& p) { return p["id"] == part.product; });
      ASSERT_NE(product, saved->document["products"].end()) << part.product;
      EXPECT_NE(part.product, "permanent-6-natural");
      EXPECT_TRUE(!part.known_by || *part.known_by == KnownBy::name);
    }
}

}  // namespace
}  // namespace strandline::salon
