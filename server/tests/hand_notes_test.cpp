#include "running.h"

namespace strandline::server {
namespace {

Json notes(const httplib::Result& got) { return Json::parse(got->body)["notes"]; }

TEST_F(Running, KeepsANoteForTheHandsAndTakesItAway) {
  const auto put = [&](const std::string& technique, const std::string& body) {
    return client_->Put("/api/v1/hand-notes/" + technique, body, "application/json");
  };
  EXPECT_TRUE(notes(client_->Get("/api/v1/hand-notes")).empty());
  const auto kept = put("lighten-packets", R"({"text": "thin slices, foil not folded tight", "own": false})");
  ASSERT_EQ(kept->status, 200) << kept->body;
  put("lighten-packets", R"({"text": "thin slices, leave the root free", "own": false})");
  const Json all = notes(client_->Get("/api/v1/hand-notes"));
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0]["text"], "thin slices, leave the root free");
  EXPECT_EQ(all[0]["own"], false);
  EXPECT_TRUE(notes(put("lighten-packets", R"({"text": "", "own": false})")).empty());

  EXPECT_EQ(put("Lighten", R"({"text": "x", "own": false})")->status, 400);
  EXPECT_EQ(put("tone-lengths", R"({"text": "x"})")->status, 400);
  EXPECT_EQ(put("tone-lengths", R"({"text": ")" + std::string(601, 'x') + R"(", "own": false})")->status, 422);
  EXPECT_TRUE(notes(client_->Get("/api/v1/hand-notes")).empty()) << "nothing of what was refused is kept";
}

TEST_F(Running, TakesAStopWithoutAKindWhatFollowedItAndHowItFelt) {
  const auto made = post("/api/v1/visits", visit("all_over_brown"));
  const std::string facts = made->get_header_value("Location") + "/facts";
  int told = 0;
  const auto tell = [&](const std::string& kind, const std::string& body) {
    return post(facts, R"({"id": "told-on-the-device-)" + std::to_string(++told) + R"(", "kind": ")" + kind +
                           R"(", "body": )" + body + "}");
  };
  EXPECT_EQ(tell("stopped", "{}")->status, 201);
  EXPECT_EQ(tell("stopped.over", R"({"fact": "stopped-on-the-device", "why": "pressed by mistake"})")->status, 201);
  EXPECT_EQ(tell("comfort", R"({"feels": "itches", "at_min": 12.5, "said": "at the nape"})")->status, 201);
  EXPECT_EQ(tell("comfort", R"({"feels": "lovely"})")->status, 422);
}

}  // namespace
}  // namespace strandline::server
