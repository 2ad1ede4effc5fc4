// Stock over HTTP, and what a visit's bowls take from it.
#include "running.h"

namespace strandline::server {
namespace {

Json body_of(const httplib::Result& got) { return *wire::parse(got->body); }

const char* const moves = "/api/v1/stock/moves";

Json item(const Json& stock, const std::string& product) {
  for (const Json& each : stock["items"])
    if (each["product"] == product) return each;
  return {};
}

TEST_F(Running, StockIsReceivedCountedAndListed) {
  const auto came = post(std::string(moves) + "?entry=entry-of-one-device",
                         R"({"moves": [{"what": "receive", "product": "permanent-7-natural", "grams": 60,
                             "batch": "L1", "expires": "2031-01-31", "paid": 9}]})");
  ASSERT_EQ(came->status, 201) << came->body;
  const std::string id = body_of(came)["moves"][0]["id"];
  Json seven = item(body_of(client_->Get("/api/v1/stock")), "permanent-7-natural");
  EXPECT_EQ(seven["grams"], 60);
  EXPECT_EQ(seven["batches"][0]["batch"], "L1");
  EXPECT_EQ(seven["seen"], 1);
  const auto count = [&](int seen, int grams) {
    return post(
        moves,
        wire::print(
            {{"moves", {{{"what", "count"}, {"product", "permanent-7-natural"}, {"grams", grams}, {"seen", seen}}}}}));
  };
  EXPECT_EQ(count(1, 55)->status, 201);
  const auto late = count(1, 54);
  EXPECT_EQ(late->status, 409);
  EXPECT_EQ(body_of(late)["problems"][0]["params"]["grams"], "55.0");
  EXPECT_EQ(post(moves, wire::print({{"moves", {{{"what", "undo"}, {"undoes", id}}}}}))->status, 409);
  EXPECT_EQ(body_of(client_->Get(std::string(moves) + "?product=permanent-7-natural"))["moves"].size(), 2u);
  EXPECT_EQ(client_->Get("/api/v1/stock?shelf=none")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/stock?colour=red")->status, 400);
  EXPECT_EQ(post(moves, "{}")->status, 400);
  EXPECT_EQ(client_->Get(std::string(moves) + "?limit=0")->status, 400);
}

TEST_F(Running, WhatIsWeighedAtABowlLeavesTheStock) {
  ASSERT_EQ(post(moves, R"({"moves": [{"what": "count", "product": "permanent-7-natural", "grams": 100, "seen": 0}]})")
                ->status,
            201);
  Json document = *wire::parse(R"({"schema": "strandline.visit/1", "client": "Q. R.", "date": "2026-03-10",
      "head": {"areas": [{"id": "top", "spans": [{"id": "all", "to_cm": 5, "level": 6}]}]},
      "running": {"since": "2026-03-10T10:00:00Z", "bowls": [{"label": "A", "range": "permanent", "minutes": 35,
        "zones": ["top/all"], "parts": [{"product": "permanent-7-natural", "grams": 30}]}],
        "plan": {"tasks": [], "developments": [], "order": [], "steps": [], "basin_min": 50, "finish_min": 60,
          "developed_to": "target", "finish_mean": 60, "finish_sd": 5, "on_time_probability": 1,
          "clocks_probability": 1, "proven": true, "nodes": 1},
        "additions": [{"bowl": "A", "mix": 1, "product": "permanent-7-natural", "grams": 30, "at_min": 3}]}})");
  const auto saved = post("/api/v1/visits?entry=visit-of-a-device-1", wire::print(document));
  ASSERT_EQ(saved->status, 201) << saved->body;
  EXPECT_EQ(item(body_of(client_->Get("/api/v1/stock")), "permanent-7-natural")["grams"], 70);
  document["running"]["leftovers"] = {{{"bowl", "A"}, {"mix", 1}, {"grams", 6}}};
  const std::string id = body_of(saved)["id"];
  const auto changed =
      client_->Put("/api/v1/visits/" + id, {{"If-Match", "\"1\""}}, wire::print(document), "application/json");
  ASSERT_EQ(changed->status, 200) << changed->body;
  const Json told = body_of(client_->Get(std::string(moves) + "?visit=" + id));
  double waste = 0, use = 0;
  for (const Json& m : told["moves"])
    (m["what"] == "waste" ? waste : use) += m["what"] == "count" ? 0 : m["grams"].get<double>();
  EXPECT_EQ(waste, 6);
  EXPECT_EQ(use, 24);
}

TEST_F(Running, AListIsReadBeforeItIsKeptAndComesBackAsCsv) {
  const auto read =
      post("/api/v1/stock/table",
           wire::print({{"what", "receive"}, {"text", "product;grams;paid\npermanent-7-natural;120;18\nnothing;5;1"}}));
  ASSERT_EQ(read->status, 200) << read->body;
  const Json lines = body_of(read)["lines"];
  EXPECT_EQ(lines[1]["problems"][0]["code"], "unknown_product");
  EXPECT_EQ(post(moves, wire::print({{"moves", {lines[0]["move"]}}}))->status, 201);
  const std::string csv = body_of(client_->Get("/api/v1/stock/table"))["csv"];
  EXPECT_NE(csv.find("120,0.15"), std::string::npos);
  EXPECT_NE(body_of(client_->Get("/api/v1/stock/table?moves=all"))["csv"].get<std::string>().find("receive"),
            std::string::npos);
  EXPECT_EQ(post("/api/v1/stock/table", R"({"what": "receive", "text": "x;y"})")->status, 422);
}

TEST_F(Running, TheReportAndTheHousePrices) {
  ASSERT_EQ(post(moves, R"({"moves": [{"what": "receive", "product": "permanent-7-natural", "grams": 100, "paid": 12},
      {"what": "waste", "product": "permanent-7-natural", "grams": 10}]})")
                ->status,
            201);
  const Json report = body_of(client_->Get("/api/v1/stock/report"));
  EXPECT_EQ(report["waste_g"], 10);
  EXPECT_EQ(report["paid"], 12);
  EXPECT_EQ(report["prices"][0]["per_g"], 0.12);
  EXPECT_EQ(client_->Get("/api/v1/stock/report?from=never")->status, 422);
  const auto price = [&] { return body_of(post("/api/v1/price", R"({"minutes": 90, "cost": 5})")); };
  EXPECT_EQ(price()["why"], "no_rules");
  const auto put = [&](const char* rules) { return client_->Put("/api/v1/prices", rules, "application/json"); };
  EXPECT_EQ(put(R"({"by": "time"})")->status, 422);
  EXPECT_EQ(put(R"({"by": "time", "per_hour": -1})")->status, 422);
  ASSERT_EQ(put(R"({"by": "time", "per_hour": 60, "products_times": 2})")->status, 200);
  ASSERT_EQ(put(R"({"by": "time", "per_hour": 80, "products_times": 2})")->status, 200);
  EXPECT_EQ(price()["from"], 130);
  EXPECT_EQ(body_of(client_->Get("/api/v1/prices"))["rules"]["per_hour"], 80);
}

}  // namespace
}  // namespace strandline::server
