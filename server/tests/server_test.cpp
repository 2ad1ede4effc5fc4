// The HTTP door over a real socket on loopback: what the routes answer.
#include "running.h"

namespace strandline::server {
namespace {

TEST_F(Running, TellsItsHealthWithSecurityHeaders) {
  const auto got = client_->Get("/api/v1/health");
  ASSERT_TRUE(got);
  EXPECT_EQ(got->status, 200);
  const std::string policy = got->get_header_value("Content-Security-Policy");
  EXPECT_NE(policy.find("default-src 'none'; script-src 'self';"), std::string::npos);
  EXPECT_NE(policy.find("frame-ancestors 'none'"), std::string::npos);
  EXPECT_EQ(policy.find("unsafe"), std::string::npos);
  EXPECT_EQ(got->get_header_value("X-Content-Type-Options"), "nosniff");
  EXPECT_EQ(got->get_header_value("Referrer-Policy"), "no-referrer");
  EXPECT_EQ(got->get_header_value("Cache-Control"), "no-store");
}

// A salon file that can be made to fail.
class Ailing : public Running {
 protected:
  void SetUp() override {
    auto store = store::Store::open({.path = ":memory:", .fails = [this] { return ill_.load(); }});
    ASSERT_TRUE(store);
    start({[] { return "2026-03-09T09:00:00Z"; }, [] { return "1"; }, std::move(*store)});
  }
  std::atomic<bool> ill_ = false;
};

TEST_F(Ailing, HealthAsksTheStore) {
  EXPECT_EQ(client_->Get("/api/v1/health")->status, 200);
  ill_ = true;
  const auto got = client_->Get("/api/v1/health");
  EXPECT_EQ(got->status, 503);
  EXPECT_EQ(code_of(got), "store_unavailable");
  const auto plain = client_->Get("/healthz");
  EXPECT_EQ(plain->status, 503);
  EXPECT_TRUE(plain->body.starts_with("down: store_unavailable")) << plain->body;
  EXPECT_EQ(client_->Get("/metrics")->status, 200) << "counts do not need the file";
  ill_ = false;
  EXPECT_EQ(client_->Get("/api/v1/health")->status, 200);
}

// A salon file in which somebody has changed an entry.
class Changed : public Running {
 protected:
  struct Journal : store::Store {
    store::Expected<std::vector<store::Fact>> hand_in(const std::vector<store::NewFact>&, const std::string&,
                                                      std::int64_t) override {
      return {};
    }
    store::Expected<std::vector<store::Fact>> facts(const store::FactsAsked&) override { return {}; }
    store::Expected<store::Save> save(const store::NewDraft&) override { return store::Save{}; }
    store::Expected<void> erase(const std::string&) override { return {}; }
    store::Expected<std::optional<store::VisitRow>> visit(const std::string&) override { return std::nullopt; }
    store::Expected<std::vector<store::VisitRow>> visits(const store::VisitsAsked&) override { return {}; }
    store::Expected<std::vector<store::Save>> changes(std::int64_t, int) override { return {}; }
    store::Expected<std::optional<std::int64_t>> verify(const std::stop_token&) override { return 3; }
  };
  void SetUp() override {
    start({[] { return "2026-03-09T09:00:00Z"; }, [] { return "1"; }, std::make_shared<Journal>()});
  }
};

TEST_F(Changed, HealthTellsWhatReadingTheWholeFileFound) {
  auto got = client_->Get("/api/v1/health");
  for (int wait = 0; wait < 2000 && got->status == 200; ++wait) {
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
    got = client_->Get("/api/v1/health");
  }
  EXPECT_EQ(got->status, 503);
  EXPECT_EQ(code_of(got), "entry_broken");
}

class Short : public Running {
 protected:
  void SetUp() override {
    auto store = store::Store::open(
        {.path = ":memory:", .fails = [this] { return short_.load() ? throw std::bad_alloc() : false; }});
    ASSERT_TRUE(store);
    start({[] { return "2026-03-09T09:00:00Z"; }, [] { return "1"; }, std::move(*store)});
  }
  std::atomic<bool> short_ = false;
};

TEST_F(Short, WantOfMemoryIsAProblemAndNoEnd) {
  short_ = true;
  const auto got = client_->Get("/api/v1/visits");
  EXPECT_EQ(got->status, 503);
  EXPECT_EQ(code_of(got), "memory_short");
  short_ = false;
  EXPECT_EQ(client_->Get("/api/v1/visits")->status, 200);
}

TEST_F(Running, AnswersAssessAndPredict) {
  const auto today = post("/api/v1/assess", visit("salt_and_pepper_two_tones"));
  ASSERT_TRUE(today);
  ASSERT_EQ(today->status, 200) << today->body;
  EXPECT_EQ(Json::parse(today->body)["zones"].size(), 10u);
  const auto bowls = post("/api/v1/predict", visit("my_own_bowls"));
  ASSERT_EQ(bowls->status, 200) << bowls->body;
  const Json zone = Json::parse(bowls->body)["zones"][0];
  EXPECT_TRUE(zone["likelihood"].is_number());
  EXPECT_TRUE(zone["planned"]["srgb"]["led"]["hex"].is_string());
}

TEST_F(Running, AnswersFadeAndGrow) {
  Json document = *wire::parse(visit("my_own_bowls"));
  const auto usual = post("/api/v1/fade", wire::print(document));
  ASSERT_EQ(usual->status, 200) << usual->body;
  EXPECT_EQ(Json::parse(usual->body)["schema"], "strandline.fade/1");
  EXPECT_EQ(Json::parse(usual->body)["zones"][0]["moments"].size(), 9u);
  document["options"]["habit"] = {{"washes_per_week", 7}, {"weeks", 4}};
  const auto daily = post("/api/v1/fade", wire::print(document));
  ASSERT_EQ(daily->status, 200) << daily->body;
  EXPECT_EQ(Json::parse(daily->body)["zones"][0]["moments"].size(), 5u);
  const auto off = [](const httplib::Result& r, int week) -> double {
    return Json::parse(r->body)["zones"][0]["moments"][week]["delta_e_2000"];
  };
  EXPECT_GT(off(daily, 4), off(usual, 4)) << "more washes, more fade";

  const auto line = post("/api/v1/grow", wire::print(document));
  ASSERT_EQ(line->status, 200) << line->body;
  EXPECT_EQ(Json::parse(line->body)["schema"], "strandline.grow/1");
  EXPECT_EQ(Json::parse(line->body)["lines"].size(), 2u);
  EXPECT_EQ(Json::parse(line->body)["lengths"].size(), 5u);
}

TEST_F(Running, RefusesBadFadeAndGrowWithTheirPlace) {
  Json document = *wire::parse(visit("my_own_bowls"));
  const auto place = [](const httplib::Result& r) { return Json::parse(r->body)["problems"][0]["path"]; };
  document["options"]["habit"]["washes_per_week"] = 50;
  const auto often = post("/api/v1/fade", wire::print(document));
  EXPECT_EQ(often->status, 422);
  EXPECT_EQ(place(often), "/options/habit/washes_per_week");
  document["options"]["habit"] = {{"weeks", 2.5}};
  EXPECT_EQ(post("/api/v1/fade", wire::print(document))->status, 422);
  document.erase("options");
  document["bowls"][0]["parts"][0]["product"] = "nothing";
  for (const char* verb : {"/api/v1/fade", "/api/v1/grow"}) {
    const auto unknown = post(verb, wire::print(document));
    EXPECT_EQ(unknown->status, 422) << verb;
    EXPECT_EQ(place(unknown), "/bowls/0/parts/0/product") << verb;
    EXPECT_EQ(post(verb, "{")->status, 400) << verb;
    EXPECT_EQ(client_->Get(verb)->status, 405) << verb;
  }
}

TEST_F(Running, SaysWhatIsInDoubtZoneByZone) {
  const auto got = post("/api/v1/predict", visit("my_own_bowls"));
  ASSERT_EQ(got->status, 200) << got->body;
  const Json answer = Json::parse(got->body);
  ASSERT_FALSE(answer.at("zones").empty());
  for (const Json& zone : answer.at("zones")) {
    ASSERT_FALSE(zone["doubt"].empty()) << zone["zone"];
    EXPECT_EQ(zone["doubt"][0]["code"].get<std::string>().rfind("doubt_from_", 0), 0u);
    EXPECT_GT(std::stoi(zone["doubt"][0]["params"]["percent"].get<std::string>()), 14);
  }
}

TEST_F(Running, WhatIfFollowsAChangedGram) {
  Json document = *wire::parse(visit("my_own_bowls"));
  const auto before = post("/api/v1/what-if", wire::print(document));
  ASSERT_EQ(before->status, 200) << before->body;
  document["bowls"][0]["parts"][0]["grams"] = 60;
  const auto after = post("/api/v1/what-if", wire::print(document));
  ASSERT_EQ(after->status, 200) << after->body;
  EXPECT_NE(Json::parse(before->body)["zones"][0]["planned"]["lab"],
            Json::parse(after->body)["zones"][0]["planned"]["lab"]);
}

TEST_F(Running, TellsShelfLevelsAndTones) {
  EXPECT_GT(Json::parse(client_->Get("/api/v1/shelf")->body)["products"].size(), 60u);
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/levels")->body)["swatches"].size(), 80u);
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/tones")->body)["tones"].size(), 8u);
}

TEST_F(Running, KeepsVisitsAndRefusesStaleChanges) {
  const auto made = post("/api/v1/visits", visit("all_over_brown"));
  ASSERT_EQ(made->status, 201) << made->body;
  const std::string place = made->get_header_value("Location");
  EXPECT_EQ(made->get_header_value("ETag"), "\"1\"");
  const auto put = [&](const char* seen) {
    return client_->Put(place, httplib::Headers{{"If-Match", seen}}, visit("two_levels_lighter"), "application/json");
  };
  EXPECT_EQ(put("\"1\"")->status, 200);
  const auto stale = put("\"1\"");
  EXPECT_EQ(stale->status, 409);
  EXPECT_EQ(code_of(stale), "visit_changed_elsewhere");
  EXPECT_EQ(client_->Put(place, visit("all_over_brown"), "application/json")->status, 428);
  const Json now = Json::parse(client_->Get(place)->body);
  EXPECT_EQ(now["seq"], 2);
  EXPECT_EQ(now["document"]["aims"][0]["level"], 7);
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/visits")->body)["visits"].size(), 1u);
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/changes?after=1")->body)["changes"].size(), 1u);
  EXPECT_EQ(client_->Get("/api/v1/visits/none")->status, 404);
  EXPECT_EQ(client_->Get("/api/v1/changes?after=x")->status, 400);
}

TEST_F(Running, TakesASaveHandedInAgainOnce) {
  const std::string body = visit("all_over_brown");
  const auto first = post("/api/v1/visits?entry=device-gave-this-1", body);
  const auto again = post("/api/v1/visits?entry=device-gave-this-1", body);
  ASSERT_EQ(first->status, 201) << first->body;
  EXPECT_EQ(again->body, first->body);
  const std::string place = first->get_header_value("Location");
  const auto put = [&](const char* seen, const char* entry, const char* name) {
    return client_->Put(place + "?entry=" + entry, httplib::Headers{{"If-Match", seen}}, visit(name),
                        "application/json");
  };
  const auto mine = put("\"1\"", "device-gave-this-2", "two_levels_lighter");
  ASSERT_EQ(mine->status, 200) << mine->body;
  EXPECT_EQ(put("\"2\"", "other-gave-this-3", "all_over_brown")->status, 200);
  EXPECT_EQ(put("\"1\"", "device-gave-this-2", "two_levels_lighter")->body, mine->body);
  EXPECT_EQ(code_of(put("\"3\"", "device-gave-this-2", "all_over_brown")), "entry_id_taken");
  EXPECT_EQ(Json::parse(client_->Get(place)->body)["entry"], "other-gave-this-3");
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/changes")->body)["changes"].size(), 3u);
  EXPECT_EQ(code_of(post("/api/v1/visits?entry=x", body)), "not_an_id");
}

TEST_F(Running, ListsByPageAndName) {
  for (const char* name : {"all_over_brown", "two_levels_lighter", "all_over_brown"})
    post("/api/v1/visits", visit(name));
  const Json first = Json::parse(client_->Get("/api/v1/visits?limit=2")->body);
  ASSERT_EQ(first["visits"].size(), 2u);
  const std::string next = first["next"];
  const Json last = Json::parse(client_->Get("/api/v1/visits?limit=2&cursor=" + next)->body);
  EXPECT_EQ(last["visits"].size(), 1u);
  EXPECT_FALSE(last.contains("next"));
  const std::string whole = Json::parse(visit("all_over_brown"))["client"];
  const auto count = [&](const std::string& query) {
    return Json::parse(client_->Get("/api/v1/visits?" + query)->body)["visits"].size();
  };
  EXPECT_EQ(count("client=" + httplib::detail::encode_query_param(whole)), 2u);
  EXPECT_EQ(count("client=nobody"), 0u);
  EXPECT_EQ(count("find=INVENTED"), 3u);
  for (const char* query : {"person=x", "limit=0", "limit=x", "limit=99999999999", "cursor=x", "client=a&client=b"}) {
    const auto got = client_->Get("/api/v1/visits?" + std::string(query));
    EXPECT_EQ(got->status, 400) << query;
    EXPECT_EQ(code_of(got), "bad_request") << query;
  }
}

TEST_F(Running, RefusesBadDocumentsWithTheirPlace) {
  Json document = *wire::parse(visit("half_white_three_to_seven"));
  document["head"]["areas"][0]["spans"][0]["level"] = 14;
  const auto got = post("/api/v1/assess", wire::print(document));
  EXPECT_EQ(got->status, 422);
  EXPECT_EQ(Json::parse(got->body)["problems"][0]["path"], "/head/areas/0/spans/0/level");
  EXPECT_EQ(post("/api/v1/assess", "{")->status, 400);
  EXPECT_EQ(post("/api/v1/visits", wire::print(document))->status, 422);
  EXPECT_TRUE(Json::parse(client_->Get("/api/v1/visits")->body)["visits"].empty());
}

TEST_F(Running, RefusesOtherHostsOriginsAndContent) {
  const auto evil_host = client_->Get("/api/v1/health", httplib::Headers{{"Host", "evil.example"}});
  EXPECT_EQ(evil_host->status, 403);
  EXPECT_EQ(code_of(evil_host), "host_not_allowed");
  const auto evil_origin = post("/api/v1/visits", visit("all_over_brown"), {{"Origin", "http://evil.example"}});
  EXPECT_EQ(code_of(evil_origin), "origin_not_allowed");
  EXPECT_EQ(post("/api/v1/visits", visit("all_over_brown"), {{"Origin", "http://" + host()}})->status, 201);
  const auto read = client_->Get("/api/v1/tones", httplib::Headers{{"Origin", "http://evil.example"}});
  EXPECT_EQ(read->status, 403);
  EXPECT_FALSE(read->has_header("Access-Control-Allow-Origin")) << "the browser keeps it from that page";
  EXPECT_EQ(client_->Post("/api/v1/assess", "a=b", "application/x-www-form-urlencoded")->status, 415);
}

TEST_F(Running, AnswersWrongPathsAndMethodsAsProblems) {
  EXPECT_EQ(client_->Get("/api/v1/nothing")->status, 404);
  EXPECT_EQ(code_of(client_->Get("/api/v1/nothing")), "not_found");
  EXPECT_EQ(client_->Get("/api/v1/assess")->status, 405);
  EXPECT_EQ(post("/api/v1/health", "{}")->status, 405);
  EXPECT_EQ(client_->Delete("/api/v1/visits")->status, 405);
}

TEST_F(Running, RefusesBodiesThatAreTooLargeAndClosesThatConnection) {
  const auto got = post("/api/v1/assess", std::string((4u << 20) + 1, ' '));
  // The server may close before the whole body is sent; an answer, when it arrives, is 413.
  if (got) {
    EXPECT_EQ(got->status, 413);
  }
  EXPECT_EQ(client_->Get("/api/v1/health")->status, 200);
}

TEST_F(Running, DoesNotTakeARefusedBodyForTheNextRequest) {
  const std::string hidden = "GET /api/v1/tones HTTP/1.1\r\nHost: " + host() + "\r\n\r\n";
  const std::string answer =
      raw("POST /api/v1/assess HTTP/1.1\r\nHost: " + host() +
          "\r\nContent-Type: text/plain\r\nContent-Length: " + std::to_string(hidden.size()) + "\r\n\r\n" + hidden);
  EXPECT_NE(answer.find(" 415 "), std::string::npos) << answer;
  EXPECT_EQ(answer.find("strandline.tones"), std::string::npos) << answer;
  EXPECT_NE(raw("POST /api/v1/assess HTTP/1.1\r\nHost: " + host() +
                "\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n")
                .find(" 400 "),
            std::string::npos);
  raw("\x16\x03\x01 nonsense\r\n\r\n");
  EXPECT_EQ(client_->Get("/api/v1/health")->status, 200);
}

TEST_F(Running, ServesTheWebAppWithTags) {
  const auto page = client_->Get("/");
  EXPECT_EQ(page->status, 200);
  EXPECT_EQ(page->get_header_value("Cache-Control"), "no-cache");
  EXPECT_EQ(client_->Get("/", httplib::Headers{{"If-None-Match", page->get_header_value("ETag")}})->status, 304);
  EXPECT_EQ(client_->Get("/visits/some")->body, page->body);
  const auto asset = client_->Get("/assets/app-1234.js");
  EXPECT_NE(asset->get_header_value("Cache-Control").find("immutable"), std::string::npos);
  EXPECT_EQ(client_->Get("/assets/none.js")->status, 404);
  EXPECT_EQ(client_->Get("/../server_test.cpp")->status, 404);
}

TEST_F(Running, PacksAnswersWithGzipAndNothingSlower) {
  const auto get = [&](const char* accepted) {
    return client_->Get("/api/v1/levels", {{"Accept-Encoding", accepted}});
  };
  const auto plain = get("identity");
  ASSERT_TRUE(plain);
  EXPECT_FALSE(plain->has_header("Content-Encoding"));
  ASSERT_FALSE(plain->body.empty());
  const auto packed = get("br, gzip, deflate, zstd");
  ASSERT_TRUE(packed);
  EXPECT_EQ(packed->get_header_value("Content-Encoding"), "gzip");
  EXPECT_EQ(packed->body, plain->body);
  EXPECT_FALSE(get("br")->has_header("Content-Encoding"));
}

TEST_F(Running, StopsASearchWhoseClientHasGone) {
  httplib::Client impatient("127.0.0.1", port_);
  impatient.set_read_timeout(0, 50000);
  EXPECT_FALSE(impatient.Post("/api/v1/plan", visit("salt_and_pepper_two_tones"), "application/json"));
  impatient.stop();
  const auto start = std::chrono::steady_clock::now();
  EXPECT_EQ(client_->Get("/api/v1/health")->status, 200);
  server_->stop();
  thread_.join();
  // Stopping waits for the search: it must have been given up, not finished. Sanitizers make both many times slower.
#ifdef STRANDLINE_SANITIZED
  constexpr std::chrono::seconds kGivenUp(25);
#else
  constexpr std::chrono::seconds kGivenUp(5);
#endif
  EXPECT_LT(std::chrono::steady_clock::now() - start, kGivenUp);
  thread_ = std::thread([] {});
}

}  // namespace
}  // namespace strandline::server
