// The routes of a visit's facts, of handing it in, and of clients.
#include "running.h"

namespace strandline::server {
namespace {

TEST_F(Running, TakesAVisitFromDraftToAClientsHistory) {
  const auto made = post("/api/v1/visits", visit("all_over_brown"));
  ASSERT_EQ(made->status, 201) << made->body;
  const std::string place = made->get_header_value("Location");
  const std::string fact =
      R"({"id": "stopped-on-the-device", "kind": "stopped", "body": {"kind": "sting", "at_min": 12}})";
  const auto told = post(place + "/facts", fact);
  ASSERT_EQ(told->status, 201) << told->body;
  EXPECT_EQ(post(place + "/facts", fact)->body, told->body) << "handed in again";
  const auto refused =
      post(place + "/facts", R"({"id": "stopped-on-the-device", "kind": "stopped", "body": {"kind": "no such"}})");
  EXPECT_EQ(refused->status, 422);
  EXPECT_EQ(Json::parse(refused->body)["problems"][0]["path"], "/body/kind");

  const auto end = [&](const char* entry) {
    return post(place + "/hand-in", std::string(R"({"seq": 1, "entry": ")") + entry + "\"}");
  };
  const auto ended = end("handed-in-by-device-1");
  ASSERT_EQ(ended->status, 200) << ended->body;
  EXPECT_EQ(end("handed-in-by-device-1")->body, ended->body);
  EXPECT_EQ(end("handed-in-by-device-2")->status, 409);
  EXPECT_EQ(code_of(end("handed-in-by-device-2")), "visit_handed_in");
  const Json opened = Json::parse(client_->Get(place)->body);
  EXPECT_EQ(opened["document"], Json::parse(ended->body)["document"]);
  EXPECT_TRUE(Json::parse(client_->Get("/api/v1/visits")->body)["visits"].empty());

  const Json all = Json::parse(client_->Get("/api/v1/clients")->body)["clients"];
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0]["id"], opened["person"]);
  const std::string person = all[0]["id"];
  const Json record = Json::parse(client_->Get("/api/v1/clients/" + person)->body);
  EXPECT_EQ(record["history"][0]["visit_id"], opened["id"]);
  EXPECT_EQ(post("/api/v1/visits?person=" + person, visit("all_over_brown"))->status, 201);
  EXPECT_EQ(post("/api/v1/visits?person=nobody", visit("all_over_brown"))->status, 404);

  const Json first = Json::parse(client_->Get(place + "/facts?limit=1")->body);
  ASSERT_EQ(first["facts"].size(), 1u);
  const std::string next = first["next"];
  const Json rest = Json::parse(client_->Get(place + "/facts?cursor=" + next)->body);
  EXPECT_EQ(rest["facts"][0]["kind"], "visit.handed_in");
  EXPECT_FALSE(rest.contains("next"));
}

TEST_F(Running, TellsAllOfAPersonAndErasesThem) {
  const std::string place = post("/api/v1/visits", visit("all_over_brown"))->get_header_value("Location");
  ASSERT_EQ(post(place + "/hand-in", R"({"seq": 1, "entry": "handed-in-by-device-1"})")->status, 200);
  const Json client = Json::parse(client_->Get("/api/v1/clients")->body)["clients"][0];
  const std::string one = "/api/v1/clients/" + client["id"].get<std::string>();
  const auto all = client_->Get(one + "/everything");
  ASSERT_EQ(all->status, 200) << all->body;
  EXPECT_EQ(Json::parse(all->body)["client"]["name"], client["name"]);
  EXPECT_EQ(post(one + "/erase", "{}")->status, 422);
  EXPECT_EQ(code_of(post(one + "/erase", R"({"name": "Somebody Else"})")), "another_name");
  const auto gone = post(one + "/erase", wire::print({{"name", client["name"]}}));
  ASSERT_EQ(gone->status, 200) << gone->body;
  EXPECT_TRUE(Json::parse(client_->Get("/api/v1/clients")->body)["clients"].empty());
  EXPECT_EQ(client_->Get(one + "/everything")->status, 404);
  EXPECT_EQ(client_->Get(place)->status, 410);
}

TEST_F(Running, RefusesFactsThatMakeNoSense) {
  EXPECT_EQ(client_->Get("/api/v1/visits/nothing-there/facts")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/clients/nobody")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/clients?limit=0")->status, 400);
  EXPECT_EQ(client_->Get("/api/v1/clients?named=x")->status, 400);
  EXPECT_EQ(client_->Get("/api/v1/visits/x/hand-in")->status, 405);
  EXPECT_EQ(client_->Get("/api/v1/visits/x/facts?cursor=0")->status, 400);
  const std::string place = post("/api/v1/visits", visit("all_over_brown"))->get_header_value("Location");
  EXPECT_EQ(post(place + "/hand-in", "[]")->status, 422);
  EXPECT_EQ(post(place + "/hand-in", R"({"seq": 1})")->status, 400) << "no id of the device";
  EXPECT_EQ(post(place + "/hand-in", R"({"entry": "handed-in-by-device-1"})")->status, 422);
  EXPECT_EQ(post(place + "/hand-in", R"({"entry": "handed-in-by-device-1", "seq": 9})")->status, 409);
  EXPECT_EQ(client_->Get(place)->status, 200);
}

}  // namespace
}  // namespace strandline::server
