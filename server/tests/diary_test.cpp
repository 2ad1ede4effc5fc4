// The routes of the diary, and of clients who are brought along.
#include "running.h"

namespace strandline::server {
namespace {

std::string asked(const std::string& id, const std::string& at, const std::string& more = "") {
  return R"({"id": ")" + id + R"(", "entry": "entry-of-)" + id + R"(", "seq": 0, "booking": {"starts_at": ")" + at +
         R"(", "minutes": 60, "kind": "other")" + more + "}}";
}

TEST_F(Running, KeepsADiary) {
  const auto saved = post("/api/v1/bookings", asked("booking-of-device-1", "2031-03-12T09:00:00Z"));
  ASSERT_EQ(saved->status, 200) << saved->body;
  EXPECT_EQ(post("/api/v1/bookings", asked("booking-of-device-1", "2031-03-12T09:00:00Z"))->body, saved->body);
  const auto taken = post("/api/v1/bookings", asked("booking-of-device-2", "2031-03-12T09:30:00Z"));
  EXPECT_EQ(taken->status, 409);
  EXPECT_EQ(code_of(taken), "hour_taken");
  const Json day =
      Json::parse(client_->Get("/api/v1/diary?from=2031-03-12T00:00:00Z&until=2031-03-13T00:00:00Z")->body);
  ASSERT_EQ(day["bookings"].size(), 1u);
  EXPECT_EQ(day["bookings"][0]["booking"]["minutes"], 60);
  EXPECT_GT(day["rules"]["test_lead_h"], 0);
  EXPECT_EQ(client_->Get("/api/v1/bookings/booking-of-device-1")->status, 200);
  EXPECT_EQ(client_->Get("/api/v1/bookings/nobody")->status, 404);
  const std::string window = "from=2031-03-12T09:00:00Z&until=2031-03-12T12:00:00Z";
  const Json free = Json::parse(client_->Get("/api/v1/diary/free?minutes=60&with=&" + window)->body);
  EXPECT_EQ(free["starts"][0]["starts_at"], "2031-03-12T10:00:00Z");
  EXPECT_EQ(client_->Get("/api/v1/diary/free?minutes=x&with=&" + window)->status, 400);
  EXPECT_EQ(client_->Get("/api/v1/diary?from=2031-03-12T00:00:00Z")->status, 400);
  EXPECT_EQ(client_->Get("/api/v1/diary?day=today")->status, 400);
  EXPECT_TRUE(Json::parse(client_->Get("/api/v1/diary/due?day=2031-03-12")->body)["people"].empty());
}

TEST_F(Running, TellsWhichTestIsMissing) {
  std::string line = asked("colour-of-device-1", "2031-03-12T09:00:00Z");
  line.replace(line.find(R"("kind": "other")"), 15, R"("kind": "colour")");
  ASSERT_EQ(post("/api/v1/bookings", line)->status, 200);
  const Json due = Json::parse(client_->Get("/api/v1/diary/tests")->body);
  ASSERT_EQ(due["tests"].size(), 1u);
  EXPECT_EQ(due["tests"][0]["due"], "to_make");
  EXPECT_EQ(due["tests"][0]["since"], "2031-03-10T09:00:00Z");
}

TEST_F(Running, TakesAListOfClients) {
  const std::string list = R"({"clients": [{"id": "card-1-of-the-list", "name": "Ana", "text": "6.3"}]})";
  ASSERT_EQ(post("/api/v1/clients", list)->status, 201);
  const Json record = Json::parse(client_->Get("/api/v1/clients/card-1-of-the-list")->body);
  EXPECT_EQ(record["cards"][0]["text"], "6.3");
  const auto strange = post("/api/v1/clients", R"({"clients": [{"id": "card-1-of-the-list", "nam": "Ana"}]})");
  EXPECT_EQ(strange->status, 422);
  EXPECT_EQ(Json::parse(strange->body)["problems"][0]["path"], "/clients/0/nam");
}

TEST_F(Running, KeepsNoPhotoThatSaysWhereItWasTaken) {
  const std::string place = post("/api/v1/visits", visit("all_over_brown"))->get_header_value("Location") + "/facts";
  const auto told = [&](const std::string& id, const std::string& jpeg) {
    return post(place, R"({"id": ")" + id +
                           R"(", "kind": "photo", "body": {"of": "after", "consent": "said yes", "jpeg": ")" + jpeg +
                           "\"}}");
  };
  // SOI, APP0, SOS, EOI; and the same with APP1 in place of APP0.
  EXPECT_EQ(told("photo-1-of-the-device", "/9j/4AAEAAD/2gAE//8AAP/Z")->status, 201);
  EXPECT_EQ(code_of(told("photo-2-of-the-device", "/9j/4QAEAAD/2gAE//8AAP/Z")), "photo_refused");
  EXPECT_EQ(code_of(told("photo-3-of-the-device", "iVBORw0KGgo=")), "photo_refused");
  EXPECT_EQ(code_of(told("photo-4-of-the-device", "/9j/4AAEAAD/2gAE//8AAA==")), "photo_refused") << "cut short";
}

}  // namespace
}  // namespace strandline::server
