// Heavy questions at the door: in turn, no longer than their client waits, ended with the server.
#include <vector>

#include "running.h"

namespace strandline::server {
namespace {

using Clock = std::chrono::steady_clock;

#ifdef STRANDLINE_SANITIZED
constexpr double kSlower = 10;
#else
constexpr double kSlower = 1;
#endif

double seconds_since(Clock::time_point begin) { return std::chrono::duration<double>(Clock::now() - begin).count(); }

// Clients that ask for one verb again and again until they hang up.
class Crowd {
 public:
  Crowd(int port, int count, const std::string& verb, const std::string& body) {
    for (int i = 0; i < count; ++i) {
      httplib::Client& own = *clients_.emplace_back(std::make_unique<httplib::Client>("127.0.0.1", port));
      own.set_read_timeout(60);
      threads_.emplace_back([this, &own, verb, body] {
        while (!stop_)
          if (const auto got = own.Post("/api/v1/" + verb, body, "application/json"); !got || got->status != 200) break;
      });
    }
  }
  ~Crowd() {
    stop_ = true;
    for (const auto& client : clients_) client->stop();
    for (std::thread& thread : threads_) thread.join();
  }
  Crowd(const Crowd&) = delete;
  Crowd& operator=(const Crowd&) = delete;

 private:
  std::atomic<bool> stop_ = false;
  std::vector<std::unique_ptr<httplib::Client>> clients_;
  std::vector<std::thread> threads_;
};

TEST_F(Running, StopsAtOnceUnderEveryHeavyVerb) {
  std::vector<std::unique_ptr<Crowd>> crowds;
  for (const char* verb : {"plan", "formulate", "predict", "what-if", "reach", "fade", "grow", "review"})
    crowds.push_back(std::make_unique<Crowd>(port_, 2, verb, visit("my_own_bowls")));
  std::this_thread::sleep_for(std::chrono::milliseconds(700));
  const auto begin = Clock::now();
  server_->stop();
  thread_.join();
  EXPECT_LT(seconds_since(begin), 2 * kSlower);
  thread_ = std::thread([] {});
}

TEST_F(Running, APlanIsNotStarvedByACrowdThatWantsReach) {
  // Alone it takes its time; behind a crowd it gets every second place at least, not the thirty-third.
  Json small = *wire::parse(visit("all_over_brown"));
  small["options"]["scenarios"] = 4;
  const auto timed = [&] {
    const auto begin = Clock::now();
    EXPECT_EQ(post("/api/v1/plan", wire::print(small))->status, 200);
    return seconds_since(begin);
  };
  const double alone = timed();
  const auto one = Clock::now();
  EXPECT_EQ(post("/api/v1/reach", visit("salt_and_pepper_two_tones"))->status, 200);
  const double reach = seconds_since(one);
  const Crowd crowd(port_, 32, "reach", visit("salt_and_pepper_two_tones"));
  std::this_thread::sleep_for(std::chrono::milliseconds(300));
  EXPECT_LT(timed(), 6 * (alone + reach) + 1) << alone << ' ' << reach;
}

TEST_F(Running, SaysWhatIsTooFineToWork) {
  Json document = *wire::parse(visit("my_own_bowls"));
  Json& span = document["head"]["areas"][0]["spans"][0];
  span.erase("level"), span.erase("white_percent");
  span["populations"] = Json::array();
  for (int i = 0; i < 8; ++i)
    span["populations"].push_back({{"name", "k" + std::to_string(i)}, {"share", 0.125}, {"level", 5}});
  const Json area = document["head"]["areas"][0];
  for (int a = 0; a < 20; ++a) {
    Json next = area;
    next["id"] = "more" + std::to_string(a);
    next["spans"] = Json::array();
    for (int s = 0; s < 4; ++s) {
      Json part = span;
      part["id"] = "s" + std::to_string(s), part["from_cm"] = s, part["to_cm"] = s + 1;
      next["spans"].push_back(part);
    }
    document["head"]["areas"].push_back(next);
  }
  for (const char* verb : {"assess", "predict", "plan", "reach", "fade", "grow", "what-if"}) {
    const auto got = post(std::string("/api/v1/") + verb, wire::print(document));
    EXPECT_EQ(got->status, 422);
    EXPECT_NE(got->body.find("head_too_fine"), std::string::npos) << got->body.substr(0, 500);
  }
}

}  // namespace
}  // namespace strandline::server
