// What the server says of itself: health for services that look after it, counts, one line for each answer.
#include "metrics.h"

#include <regex>
#include <set>
#include <sstream>

#include "running.h"

namespace strandline::server {
namespace {

// The value of one line; -1 when it is not there.
double value(const std::string& text, const std::string& name) {
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    if (line.starts_with(name + ' ')) return std::stod(line.substr(name.size() + 1));
  return -1;
}

TEST(Metrics, AreWrittenAsTheTextFormatSays) {
  Metrics metrics;
  for (const double seconds : {0.0005, 0.001, 0.3, 99.0}) metrics.count("GET", "/api/v1/visits", 200, seconds);
  metrics.count("GET", "/api/v1/visits", 503, 0.01);
  const std::string text = metrics.text({.running = 1, .waiting = 3, .done = 7, .refused = 2, .left = 4}, 5, {});
  const std::regex help(R"(# HELP [a-z_]+ .+)"), type(R"(# TYPE [a-z_]+ (counter|gauge|histogram))"),
      sample(R"re([a-z_]+(\{[a-z]+="[^"\\\n]*"(,[a-z]+="[^"\\\n]*")*\})? [0-9.e+-]+)re");
  std::istringstream in(text);
  std::set<std::string> typed;
  for (std::string line; std::getline(in, line);) {
    EXPECT_TRUE(std::regex_match(line, help) || std::regex_match(line, type) || std::regex_match(line, sample)) << line;
    if (line.starts_with("# TYPE ")) EXPECT_TRUE(typed.insert(line).second) << "told twice: " << line;
  }
  EXPECT_EQ(text.back(), '\n');
  const std::string route = "{route=\"/api/v1/visits\"";
  EXPECT_EQ(value(text, "strandline_http_answers_total" + route + ",method=\"GET\",status=\"200\"}"), 4);
  EXPECT_EQ(value(text, "strandline_http_answers_total" + route + ",method=\"GET\",status=\"503\"}"), 1);
  // A class holds what is at most its end, and all before it.
  EXPECT_EQ(value(text, "strandline_http_seconds_bucket" + route + ",le=\"0.001\"}"), 2);
  EXPECT_EQ(value(text, "strandline_http_seconds_bucket" + route + ",le=\"0.02\"}"), 3);
  EXPECT_EQ(value(text, "strandline_http_seconds_bucket" + route + ",le=\"30\"}"), 4);
  EXPECT_EQ(value(text, "strandline_http_seconds_bucket" + route + ",le=\"+Inf\"}"), 5);
  EXPECT_EQ(value(text, "strandline_http_seconds_count" + route + "}"), 5);
  EXPECT_NEAR(value(text, "strandline_http_seconds_sum" + route + "}"), 99.3115, 1e-9);
  EXPECT_EQ(value(text, "strandline_heavy_running"), 1);
  EXPECT_EQ(value(text, "strandline_heavy_waiting"), 3);
  EXPECT_EQ(value(text, "strandline_heavy_total{end=\"refused\"}"), 2);
  EXPECT_EQ(value(text, "strandline_heavy_total{end=\"known\"}"), 5);
  EXPECT_GT(value(text, "process_resident_memory_bytes"), 1e6);
  EXPECT_EQ(text.find("strandline_store_bytes"), std::string::npos);
}

TEST(Metrics, TellTheSizeOfTheSalonFile) {
  const auto file = std::filesystem::temp_directory_path() / ("strandline-size-" + std::to_string(getpid()));
  std::ofstream(file) << "12345";
  const std::string text = Metrics().text({}, 0, file);
  std::filesystem::remove(file);
  EXPECT_EQ(value(text, "strandline_store_bytes{file=\"salon\"}"), 5);
  EXPECT_EQ(value(text, "strandline_store_bytes{file=\"salon-wal\"}"), 0);
  EXPECT_GT(value(text, "strandline_store_free_bytes"), 0);
}

TEST_F(Running, CountsWhatItAnsweredAndSaysItLineByLine) {
  EXPECT_EQ(client_->Get("/api/v1/visits/nobody-1?strange=x")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/visits")->status, 200);
  EXPECT_EQ(client_->Get("/")->status, 200);
  EXPECT_EQ(post("/api/v1/predict", visit("my_own_bowls"))->status, 200);
  EXPECT_EQ(post("/api/v1/shelf", "{}")->status, 405);
  raw("BREW / HTTP/1.1\r\n\r\n");
  const auto got = client_->Get("/metrics");
  ASSERT_EQ(got->status, 200);
  EXPECT_EQ(got->get_header_value("Content-Type"), "text/plain; version=0.0.4; charset=utf-8");
  const auto answers = [&](const std::string& labels) {
    return value(got->body, "strandline_http_answers_total{" + labels + '}');
  };
  EXPECT_EQ(answers(R"(route="/api/v1/visits/{id}",method="GET",status="404")"), 1);
  EXPECT_EQ(answers(R"(route="/api/v1/visits",method="GET",status="200")"), 1);
  EXPECT_EQ(answers(R"(route="/api/v1/predict",method="POST",status="200")"), 1);
  EXPECT_EQ(answers(R"(route="file",method="GET",status="200")"), 1);
  EXPECT_EQ(answers(R"(route="other",method="other",status="405")"), 1);
  EXPECT_EQ(answers(R"(route="unread",method="other",status="405")"), 1) << got->body.substr(0, 2000);
  EXPECT_EQ(value(got->body, "strandline_heavy_total{end=\"done\"}"), 1);
  EXPECT_GT(value(got->body, "strandline_http_seconds_sum{route=\"/api/v1/predict\"}"), 0);
  std::set<std::string> routes;
  for (const Json& event : heard()) {
    EXPECT_EQ(event["event"], "answered");
    EXPECT_EQ(event.size(), 6u) << event;
    EXPECT_GE(event["ms"].get<double>(), 0);
    routes.insert(event["route"]);
  }
  EXPECT_TRUE(routes.count("/api/v1/visits/{id}") && routes.count("unread") && routes.count("file"));
}

TEST_F(Running, IsUpForWhatLooksAfterServices) {
  const auto got = client_->Get("/healthz");
  EXPECT_EQ(got->status, 200);
  EXPECT_EQ(got->body, "up\n");
  EXPECT_EQ(client_->Head("/healthz")->status, 200);
  EXPECT_EQ(post("/healthz", "{}")->status, 405);
  EXPECT_EQ(post("/metrics", "{}")->status, 405);
  EXPECT_EQ(client_->Get("/healthz", httplib::Headers{{"Host", "evil.example"}})->status, 403);
}

}  // namespace
}  // namespace strandline::server
