// The salon's own shelf over HTTP.
#include "running.h"

namespace strandline::server {
namespace {

const std::string small =
    R"-({"title": "ours", "ranges": [{"id": "tint", "maker": "m", "name": "tint", "cls": "permanent"}],
  "products": []})-";

Json body_of(const httplib::Result& got) { return *wire::parse(got->body); }

TEST_F(Running, AShelfIsTypedSavedChosenAndListed) {
  const auto read =
      post("/api/v1/shelf/read",
           wire::print({{"document", *wire::parse(small)}, {"range", "tint"}, {"text", "K7\t7 copper\nK8\tmoon"}}));
  ASSERT_EQ(read->status, 200);
  const Json preview = body_of(read);
  EXPECT_EQ(preview["lines"][0]["is"], "added");
  EXPECT_EQ(preview["lines"][1]["problems"][0]["code"], "no_tone");
  EXPECT_EQ(body_of(client_->Get("/api/v1/shelves"))["shelves"].size(), 1u);  // nothing is kept by a preview

  const auto saved = post("/api/v1/shelves?entry=entry-of-one-device", wire::print(preview["document"]));
  ASSERT_EQ(saved->status, 201);
  EXPECT_EQ(saved->get_header_value("ETag"), "\"1\"");
  const std::string id = body_of(saved)["id"], one = "/api/v1/shelves/" + id;
  const auto list = post("/api/v1/shelf/choose", wire::print({{"shelf", id}}));
  ASSERT_EQ(list->status, 200);
  EXPECT_TRUE(body_of(list)["shelves"][0]["chosen"]);
  const Json now = body_of(client_->Get("/api/v1/shelf"));
  EXPECT_EQ(now["id"], body_of(saved)["name"]);
  EXPECT_EQ(now["products"][0]["code"], "K7");
  EXPECT_EQ(now["products"][0]["name"], "7 copper");
  EXPECT_FALSE(now["products"][0].contains("stock_g"));

  const auto empty = post(one + "/tubes", R"({"product": "tint-7-copper", "empty": true})");
  EXPECT_EQ(body_of(empty)["empty"][0], "tint-7-copper");
  EXPECT_EQ(body_of(client_->Get("/api/v1/shelf"))["products"][0]["stock_g"], 0);
  EXPECT_NE(body_of(client_->Get(one + "/table?range=tint"))["csv"].get<std::string>().find("K7,7 copper"),
            std::string::npos);
  EXPECT_EQ(body_of(client_->Get(one + "/history"))["versions"][0]["added"][0], "K7 · 7 copper");
  EXPECT_GT(body_of(client_->Get("/api/v1/shelf/classes"))["document"]["ranges"].size(), 5u);
}

TEST_F(Running, AShelfChangedElsewhereIsToldWithBothKept) {
  const auto saved = post("/api/v1/shelves", small);
  const std::string one = "/api/v1/shelves/" + body_of(saved)["id"].get<std::string>();
  const auto put = [&](const std::string& seq) {
    return client_->Put(one, {{"If-Match", seq}}, small, "application/json");
  };
  EXPECT_EQ(put("\"1\"")->status, 200);
  EXPECT_EQ(put("\"1\"")->status, 409);
  EXPECT_EQ(client_->Put(one, small, "application/json")->status, 428);
  EXPECT_EQ(client_->Get("/api/v1/shelves/none")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/shelf?name=none")->status, 404);
  EXPECT_EQ(client_->Put("/api/v1/shelves/demo", {{"If-Match", "0"}}, small, "application/json")->status, 409);
  EXPECT_EQ(client_->Delete(one)->status, 405);
  EXPECT_EQ(post(one + "/tubes", R"({"product": 1})")->status, 400);
}

TEST_F(Running, AWrongShelfIsRefusedWithItsPlaces) {
  const auto refused =
      post("/api/v1/shelves", R"({"ranges": [{"id": "a", "cls": "tint"}], "products": [{"id": "p"}]})");
  EXPECT_EQ(refused->status, 422);
  EXPECT_EQ(body_of(refused)["problems"][0]["path"], "/ranges/0/cls");
  EXPECT_EQ(body_of(refused)["problems"][1]["path"], "/products/0");
  EXPECT_EQ(post("/api/v1/shelf/read", "[]")->status, 422);
}

}  // namespace
}  // namespace strandline::server
