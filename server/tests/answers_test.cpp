// A question asked twice is worked out once, as long as nothing has changed.
#include "answers.h"

#include "running.h"

namespace strandline::server {
namespace {

TEST(Answers, KeepWhatWasAskedLastAndNoMoreThanThereIsRoomFor) {
  Answers answers(80);
  for (const char* q : {"a", "b", "c", "d", "e", "f", "g", "h"}) answers.keep(q, "123456789", 0);  // ten bytes each
  ASSERT_TRUE(answers.find("a"));
  answers.keep("i", "123456789", 0);
  EXPECT_TRUE(answers.find("a")) << "asked since";
  EXPECT_FALSE(answers.find("b")) << "the least recently asked";
  EXPECT_EQ(answers.find("i"), "123456789");
  answers.keep("large", std::string(20, 'x'), 0);
  EXPECT_FALSE(answers.find("large"));
  answers.keep("i", "another", 0);
  EXPECT_EQ(answers.find("i"), "123456789");
}

TEST(Answers, OfBeforeAChangeAreNotKeptAfterIt) {
  Answers answers(1000);
  const auto before = answers.changes();
  answers.keep("p", "old", before);
  answers.forget();
  EXPECT_FALSE(answers.find("p"));
  answers.keep("q", "old", before);
  EXPECT_FALSE(answers.find("q")) << "worked out while something changed";
  answers.keep("q", "new", answers.changes());
  EXPECT_EQ(answers.find("q"), "new");
}

// How many heavy questions were worked out, and how many were answered without.
std::pair<int, int> worked(httplib::Client& client) {
  const std::string text = client.Get("/metrics")->body;
  const auto value = [&](const std::string& end) {
    const std::string key = "strandline_heavy_total{end=\"" + end + "\"} ";
    return std::stoi(text.substr(text.find(key) + key.size()));
  };
  return {value("done"), value("known")};
}

TEST_F(Running, AQuestionAskedTwiceIsWorkedOutOnce) {
  const std::string asked = visit("my_own_bowls");
  const auto first = post("/api/v1/predict", asked);
  ASSERT_EQ(first->status, 200);
  const auto second = post("/api/v1/predict", asked);
  EXPECT_EQ(second->body, first->body);
  EXPECT_EQ(second->get_header_value("Content-Type"), "application/json");
  EXPECT_EQ(worked(*client_), std::make_pair(1, 1));
  // Spaces and line ends are no other question; another verb, another word is.
  EXPECT_EQ(post("/api/v1/predict", wire::print(Json::parse(asked)))->body, first->body);
  EXPECT_EQ(worked(*client_), std::make_pair(1, 2));
  EXPECT_NE(post("/api/v1/fade", asked)->body, first->body);
  Json other = Json::parse(asked);
  other["options"]["scenarios"] = 16;
  EXPECT_EQ(post("/api/v1/predict", wire::print(other))->status, 200);
  EXPECT_EQ(worked(*client_), std::make_pair(3, 2));
  // A draft that is saved changes nothing of it; whatever else is told does.
  ASSERT_EQ(post("/api/v1/visits", asked)->status, 201);
  EXPECT_EQ(post("/api/v1/predict", asked)->body, first->body);
  EXPECT_EQ(worked(*client_), std::make_pair(3, 3));
  ASSERT_EQ(
      client_->Put("/api/v1/hand-notes/tone-lengths", R"({"text": "x", "own": false})", "application/json")->status,
      200);
  EXPECT_EQ(post("/api/v1/predict", asked)->status, 200);
  EXPECT_EQ(worked(*client_), std::make_pair(4, 3));
  // What is refused is not kept.
  EXPECT_EQ(post("/api/v1/predict", R"({"schema": "x"})")->status,
            post("/api/v1/predict", R"({"schema": "x"})")->status);
  EXPECT_EQ(worked(*client_).second, 3);
}

TEST_F(Running, AnEmptiedTubeIsSeenByTheNextQuestion) {
  Json shelf = Json::parse(text_of(root / "knowledge/demo/shelf.json")), document = Json::parse(visit("my_own_bowls"));
  shelf.erase("id");
  const auto made = post("/api/v1/shelves", wire::print(shelf));
  ASSERT_EQ(made->status, 201) << made->body;
  const Json saved = Json::parse(made->body);
  document["shelf"] = saved["name"];
  document["options"]["scenarios"] = 16;
  const auto ask = [&] { return post("/api/v1/predict", wire::print(document))->status; };
  EXPECT_EQ(ask(), 200);
  EXPECT_EQ(ask(), 200);
  EXPECT_EQ(worked(*client_), std::make_pair(1, 1));
  ASSERT_EQ(post("/api/v1/shelves/" + saved["id"].get<std::string>() + "/tubes",
                 wire::print({{"product", shelf["products"][0]["id"]}, {"empty", true}}))
                ->status,
            200);
  EXPECT_EQ(ask(), 200);
  EXPECT_EQ(worked(*client_), std::make_pair(2, 1)) << "worked out with what is there now";
}

}  // namespace
}  // namespace strandline::server
