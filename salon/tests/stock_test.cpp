// Stock as facts: kept, read again, booked by visits, told when two count at once.
#include "strandline/salon/stock.h"

#include <gtest/gtest.h>

#include <thread>

#include "strandline/salon/facts.h"

namespace strandline::salon {
namespace {

const House& house() {
  static const House h =
      *open_house({.shelf = {}, .policy = {}, .knowledge = std::filesystem::path(STRANDLINE_SOURCE_DIR) / "knowledge"});
  return h;
}

const std::string tint = "permanent-7-natural", bottle = "developer-6";

struct Salon {
  std::shared_ptr<bool> ill = std::make_shared<bool>(false);
  World world;
  Shelves shelves;
  Stock stock;

  Salon() : world(made(ill)), shelves(world, house()), stock(world, shelves, house().stock) {
    shelves.count_with(
        [this](const std::string& shelf, const std::string& product) { return stock.left(shelf, product); });
  }
  static World made(const std::shared_ptr<bool>& ill) {
    auto counter = std::make_shared<std::atomic<int>>(0);
    return {[] { return std::string("2026-03-10T10:00:00Z"); },
            [counter] { return "made-id-of-test-" + std::to_string(++*counter); },
            std::move(*store::Store::open({":memory:", [ill] { return *ill; }}))};
  }
  Result<std::vector<wire::StockMove>> moved(const char* json, const std::string& entry = {}) {
    return stock.move("demo", wire::Json{{"moves", *wire::parse(json)}}, entry, "ada");
  }
  wire::StockItem item(const std::string& product = tint) {
    const auto view = stock.view("demo");
    for (const wire::StockItem& item : view->items)
      if (item.product == product) return item;
    return {};
  }
};

TEST(Stock, IsReadAgainFromItsFacts) {
  Salon s;
  ASSERT_TRUE(s.moved(R"([{"what": "receive", "product": "permanent-7-natural", "grams": 120, "batch": "L1",
      "expires": "2026-04-01", "paid": 18}])"));
  ASSERT_TRUE(s.moved(R"([{"what": "waste", "product": "permanent-7-natural", "grams": 12.5}])"));
  const auto gone = s.moved(R"([{"what": "write_off", "product": "permanent-7-natural", "grams": 7.5,
      "reason": "dried out"}])",
                            "entry-of-a-device");
  ASSERT_TRUE(gone);
  EXPECT_NEAR(*gone->front().cost, 7.5 * 0.15, 1e-9);
  Stock again(s.world, s.shelves, house().stock);
  const auto page = again.moves("demo");
  ASSERT_EQ(page->moves.size(), 3u);
  EXPECT_EQ(page->moves[0].wish.reason, "dried out");
  EXPECT_EQ(page->moves[0].by, "ada");
  const wire::StockItem item = s.item();
  EXPECT_EQ(item.grams, 100);
  ASSERT_EQ(item.batches.size(), 1u);
  EXPECT_TRUE(item.batches[0].soon && !item.batches[0].expired);
  EXPECT_EQ(s.world.store->verify(), std::nullopt);
  // The same again is answered as it was; another under its name is told.
  EXPECT_EQ(s.moved(R"([{"what": "write_off", "product": "permanent-7-natural", "grams": 7.5,
      "reason": "dried out"}])",
                    "entry-of-a-device")
                ->front()
                .id,
            gone->front().id);
  EXPECT_EQ(s.item().grams, 100);
  EXPECT_EQ(s.moved(R"([{"what": "waste", "product": "permanent-7-natural", "grams": 1}])", "entry-of-a-device")
                .error()[0]
                .code,
            "entry_id_taken");
  // Pages, newest first.
  const auto first = s.stock.moves("demo", "", "", "", 2);
  const auto second = s.stock.moves("demo", "", "", first->next, 2);
  EXPECT_EQ(second->moves.size(), 1u);
  EXPECT_EQ(second->moves[0].wish.what, wire::Moved::receive);
  EXPECT_TRUE(second->next.empty());
}

TEST(Stock, IsKeptWhollyOrNotAtAll) {
  Salon s;
  const auto wrong = s.moved(R"([{"what": "receive", "product": "permanent-7-natural", "grams": 60},
      {"what": "waste", "product": "permanent-7-natural", "grams": 61}])");
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.error()[0].code, "more_than_there");
  EXPECT_EQ(wrong.error()[0].path, "/moves/1");
  EXPECT_EQ(s.item().is, wire::StockIs::not_counted);
  ASSERT_TRUE(s.moved(R"([{"what": "receive", "product": "permanent-7-natural", "grams": 60}])"));
  *s.ill = true;
  EXPECT_EQ(s.moved(R"([{"what": "waste", "product": "permanent-7-natural", "grams": 10}])").error()[0].code,
            "store_unavailable");
  *s.ill = false;
  EXPECT_EQ(s.item().grams, 60);
  for (const auto& [json, code] :
       {std::pair{R"([{"what": "use", "product": "permanent-7-natural", "grams": 1}])", "what_happens_at_a_bowl"},
        {R"([{"what": "write_off", "product": "permanent-7-natural", "grams": 1}])", "reason_missing"},
        {R"([{"what": "receive", "product": "nothing", "grams": 1}])", "unknown_product"},
        {R"([{"what": "receive", "product": "permanent-7-natural", "grams": -1}])", "grams_missing"},
        {R"([{"what": "lend"}])", "unknown_word"},
        {R"([{"what": "receive", "expires": "soon"}])", "bad_date"}})
    EXPECT_EQ(s.moved(json).error()[0].code, code) << json;
  EXPECT_EQ(s.stock.view("none").error()[0].code, "shelf_not_found");
}

wire::Json visit_with(const char* additions, const char* leftovers = "[]") {
  return {{"shelf", "demo"},
          {"running", {{"additions", *wire::parse(additions)}, {"leftovers", *wire::parse(leftovers)}}}};
}

TEST(Stock, WhatIsWeighedIsBookedOnceHoweverOftenItIsSaid) {
  Salon s;
  ASSERT_TRUE(s.moved(R"([{"what": "count", "product": "permanent-7-natural", "grams": 100, "seen": 0}])"));
  const char* two = R"([{"bowl": "A", "mix": 1, "product": "permanent-7-natural", "grams": 30},
      {"bowl": "A", "mix": 1, "product": "developer-6", "grams": 30}])";
  ASSERT_TRUE(s.stock.book("visit-1", visit_with(two), "bo"));
  ASSERT_TRUE(s.stock.book("visit-1", visit_with(two), "bo"));
  EXPECT_EQ(s.item().grams, 70);
  EXPECT_EQ(s.stock.moves("demo", "", "visit-1")->moves.size(), 2u);
  // Nobody counted the bottle: nothing is claimed of it.
  EXPECT_EQ(s.item(bottle).is, wire::StockIs::not_counted);
  // Left over: the same grams, some of them waste.
  ASSERT_TRUE(s.stock.book("visit-1", visit_with(two, R"([{"bowl": "A", "mix": 1, "grams": 12}])"), "bo"));
  EXPECT_EQ(s.item().grams, 70);
  double waste = 0;
  const auto page = s.stock.moves("demo", "", "visit-1");
  for (const wire::StockMove& m : page->moves)
    if (m.wish.what == wire::Moved::waste) waste += m.wish.grams;
  EXPECT_EQ(waste, 12);
  // An addition that was undone at the counter comes back.
  ASSERT_TRUE(s.stock.book("visit-1", visit_with("[]"), "bo"));
  EXPECT_EQ(s.item().grams, 100);
  // A shelf that is written out has no stock of its own.
  ASSERT_TRUE(
      s.stock.book("visit-2", {{"shelf", wire::Json::object()}, {"running", {{"additions", *wire::parse(two)}}}}));
  EXPECT_EQ(s.item().grams, 100);
}

TEST(Stock, AHandedInVisitTakesWhatWasMixedInTheSameMoment) {
  Salon s;
  Clients clients(s.world);
  ASSERT_TRUE(s.moved(R"([{"what": "count", "product": "permanent-7-natural", "grams": 100, "seen": 0}])"));
  const wire::Json document = *wire::parse(R"({"schema": "strandline.visit/1", "client": "Q. R.",
      "date": "2026-03-10", "shelf": "demo",
      "head": {"areas": [{"id": "top", "spans": [{"id": "all", "to_cm": 5, "level": 6}]}]}})");
  const auto saved = save_new(s.world, document, s.shelves.sources(), "visit-of-a-device-1");
  ASSERT_TRUE(saved);
  const wire::Json asked = *wire::parse(R"({"entry": "end-of-a-device-1", "seq": 1, "facts": [
      {"id": "mixed-of-a-device-1", "kind": "mixed", "body": {"label": "A", "range": "permanent", "minutes": 35,
       "zones": ["top/all"], "parts": [{"product": "permanent-7-natural", "grams": 40},
       {"product": "developer-6", "grams": 40}]}}]})");
  *s.ill = true;
  EXPECT_FALSE(hand_in(s.world, clients, saved->summary.id, asked, "bo", &s.stock));
  *s.ill = false;
  EXPECT_EQ(s.item().grams, 100);
  const auto ended = hand_in(s.world, clients, saved->summary.id, asked, "bo", &s.stock);
  ASSERT_TRUE(ended) << ended.error()[0].code;
  EXPECT_EQ(s.item().grams, 60);
  ASSERT_TRUE(hand_in(s.world, clients, saved->summary.id, asked, "bo", &s.stock));
  EXPECT_EQ(s.item().grams, 60);
  const Shelf today = *s.shelves.sources().shelf("demo");
  EXPECT_EQ(find_product(today, tint)->stock_g, 60);
}

TEST(Stock, DevicesThatCountAtOnceAreToldOneByOne) {
  Salon s;
  ASSERT_TRUE(s.moved(R"([{"what": "receive", "product": "permanent-7-natural", "grams": 100}])"));
  std::atomic<int> kept = 0, told = 0;
  std::vector<std::thread> devices;
  for (int i = 0; i < 8; ++i) {
    devices.emplace_back([&, i] {
      const std::string count = R"([{"what": "count", "product": "permanent-7-natural", "seen": 1, "grams": )" +
                                std::to_string(80 + i) + "}]";
      const auto answer = s.moved(count.c_str());
      if (answer) ++kept;
      if (!answer && answer.error()[0].code == "moved_meanwhile") ++told;
    });
  }
  for (std::thread& device : devices) device.join();
  EXPECT_EQ(kept, 1);
  EXPECT_EQ(told, 7);
  EXPECT_EQ(s.stock.moves("demo")->moves.size(), 2u);
}

TEST(Stock, TellsWhatIsLowAndWhatToOrderFromUse) {
  Salon s;
  ASSERT_TRUE(s.moved(R"([{"what": "count", "product": "permanent-7-natural", "grams": 100, "seen": 0}])"));
  ASSERT_TRUE(s.stock.book("visit-1", visit_with(R"([{"bowl": "A", "mix": 1, "product": "permanent-7-natural",
      "grams": 70}])")));
  const wire::StockItem item = s.item();
  // 70 g in a day, spread over the least number of days.
  EXPECT_NEAR(item.daily_g, 70.0 / house().stock.least_days, 1e-9);
  EXPECT_EQ(item.is, wire::StockIs::low);
  const double wanted = item.daily_g * house().stock.order_days - 30;
  EXPECT_GE(item.order_g, wanted);
  EXPECT_LT(item.order_g, wanted + item.package_g.value_or(1));
  EXPECT_EQ(s.item(bottle).order_g, 0);
}

TEST(Stock, AReceiptPutsAnEmptyTubeBack) {
  Salon s;
  wire::Json copy = s.shelves.open_shelf("demo")->document;
  const auto own = s.shelves.save_new(copy, {}, "ours");
  ASSERT_TRUE(own);
  ASSERT_TRUE(s.shelves.set_empty("ours", tint, true));
  ASSERT_TRUE(s.stock.move("ours", *wire::parse(R"({"moves": [{"what": "receive", "product": "permanent-7-natural",
      "grams": 60}]})")));
  EXPECT_TRUE(s.shelves.open_shelf("ours")->empty.empty());
  // Each shelf has its own ledger.
  EXPECT_EQ(s.item().is, wire::StockIs::not_counted);
}

}  // namespace
}  // namespace strandline::salon
