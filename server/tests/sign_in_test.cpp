// Signing in over HTTP, and what is opened for whom.
#include <map>

#include "running.h"

namespace strandline::server {
namespace {

const std::string good = "brown tape on blue jars", other = "seven wet towels at nine";

class Entering : public Running {
 protected:
  void SetUp() override {
    auto world = salon::real_world(":memory:");
    ASSERT_TRUE(world);
    store_ = world->store;
    start(std::move(*world));
  }
  std::shared_ptr<store::Store> store_;

  httplib::Result found() {
    return post("/api/v1/door/found", wire::print({{"name", "Ada Invented"},
                                                   {"passphrase", good},
                                                   {"zone", "Europe/Vienna"},
                                                   {"shelf", "invented"},
                                                   {"colours_hair", "yes"}}));
  }
  static httplib::Headers cookie_of(const httplib::Result& got) {
    const std::string cookie = got->get_header_value("Set-Cookie");
    return {{"Cookie", cookie.substr(0, cookie.find(';'))}};
  }
  httplib::Result sign_in(const std::string& name, const std::string& passphrase) {
    return post("/api/v1/door/sign-in", wire::print({{"name", name}, {"passphrase", passphrase}}));
  }
  httplib::Headers add(const httplib::Headers& by, const std::string& role) {
    const auto added =
        post("/api/v1/people", wire::print({{"name", role}, {"roles", role}, {"passphrase", other}}), by);
    EXPECT_EQ(added->status, 201) << added->body;
    return cookie_of(sign_in(role, other));
  }
  Json door(const httplib::Headers& headers = {}) { return Json::parse(client_->Get("/api/v1/door", headers)->body); }
};

TEST_F(Entering, TheFirstStartMakesAnOwnerOnce) {
  EXPECT_EQ(door()["people"], false);
  EXPECT_EQ(door()["fresh"], true);
  const auto in = found();
  ASSERT_EQ(in->status, 201) << in->body;
  EXPECT_EQ(Json::parse(in->body)["person"]["roles"], Json({"colourist", "owner"}));
  const auto again = found();
  EXPECT_EQ(again->status, 409);
  EXPECT_EQ(code_of(again), "already_founded");
  EXPECT_EQ(door()["people"], true);
  EXPECT_FALSE(door().contains("person")) << "nobody is signed in here";
  EXPECT_FALSE(door().contains("may_come_in")) << "nor told who works here";
  EXPECT_EQ(door(cookie_of(in))["person"]["name"], "Ada Invented");
}

TEST_F(Entering, TheFirstStartCanBeginWithAnEmptyShelf) {
  Json founding{{"name", "Ada Invented"}, {"passphrase", "short"}, {"zone", "UTC"}, {"shelf", "empty"}};
  founding["shelf_title"] = "Our shelf";
  EXPECT_EQ(code_of(post("/api/v1/door/found", wire::print(founding))), "passphrase_short");
  EXPECT_EQ(Json::parse(client_->Get("/api/v1/shelf")->body)["invented"], true) << "not chosen yet";
  founding["passphrase"] = good;
  const auto in = post("/api/v1/door/found", wire::print(founding));
  ASSERT_EQ(in->status, 201) << in->body;
  const Json shelf = Json::parse(client_->Get("/api/v1/shelf", cookie_of(in))->body);
  EXPECT_EQ(shelf["title"], "Our shelf");
  EXPECT_TRUE(shelf["products"].empty()) << shelf;
}

TEST_F(Entering, TheCookieIsForThisSiteAndNoScript) {
  const std::string cookie = found()->get_header_value("Set-Cookie");
  EXPECT_TRUE(
      std::regex_match(cookie, std::regex("strandline-session=[A-Za-z0-9_-]{43}; Path=/; HttpOnly; SameSite=Strict")))
      << cookie;
  const auto in = sign_in("ada invented", good);
  EXPECT_NE(in->get_header_value("Set-Cookie"), cookie);
  EXPECT_EQ(in->body.find(cookie.substr(19, 43)), std::string::npos) << "told in the cookie only";
  const auto out = post("/api/v1/door/sign-out", "{}", cookie_of(in));
  EXPECT_NE(out->get_header_value("Set-Cookie").find("Max-Age=0"), std::string::npos);
  EXPECT_EQ(client_->Get("/api/v1/visits", cookie_of(in))->status, 401);
}

TEST_F(Entering, WhatARoleDoesNotDoIsAFactOnceForEachSession) {
  const auto owner = cookie_of(found()), theirs = add(owner, "assistant");
  for (int i = 0; i < 3; ++i) EXPECT_EQ(client_->Get("/api/v1/people", theirs)->status, 403);
  EXPECT_EQ(post("/api/v1/clients/nobody/erase", "{}", theirs)->status, 403);
  const auto kept = *store_->facts({.stream = {}, .key = {}, .kind = "refused"});
  ASSERT_EQ(kept.size(), 2u);
  EXPECT_NE(kept[0].body.find("GET /api/v1/people"), std::string::npos) << kept[0].body;
}

TEST_F(Entering, OtherCookiesOfThisMachineDoNoHarm) {
  const auto in = cookie_of(found());
  for (const std::string& others : {std::string("n\xc3\xa9=1; a=b; "), std::string("x; ;; =; strandline-session2=a; "),
                                    std::string("strandline-device=%41; q=\"a b\"; ")}) {
    const auto got = client_->Get("/api/v1/visits", {{"Cookie", others + in.find("Cookie")->second}});
    EXPECT_EQ(got->status, 200) << others;
  }
}

TEST_F(Entering, AWrongNameOrPassphraseIsTheSameAnswer) {
  found();
  const auto wrong = sign_in("Ada Invented", other), nobody = sign_in("Eve", other);
  EXPECT_EQ(wrong->status, 401);
  EXPECT_EQ(wrong->body, nobody->body);
  EXPECT_FALSE(wrong->has_header("Set-Cookie"));
  for (int i = 0; i < 5; ++i) sign_in("Ada Invented", other);
  const auto later = sign_in("Ada Invented", good);
  EXPECT_EQ(later->status, 429);
  EXPECT_EQ(code_of(later), "try_later");
}

TEST_F(Entering, BodiesThatSayMoreOrLessAreRefused) {
  found();
  for (const char* body :
       {"{", "[]", "{}", R"({"name":"Ada Invented"})", R"({"name":"Ada Invented","passphrase":7})",
        R"({"name":"Ada Invented","passphrase":"x","pin":"1"})", R"({"name":"a","passphrase":"b","more":"c"})"}) {
    const auto got = post("/api/v1/door/sign-in", body);
    EXPECT_TRUE(got->status == 400 || got->status == 422) << body << got->status;
  }
  EXPECT_EQ(sign_in("Ada Invented", good)->status, 200) << "none of these was a try";
}

TEST_F(Entering, HealthIsOpenedForWhoWorksOnHairOnly) {
  const httplib::Headers ada = cookie_of(found());
  Json told = *wire::parse(visit("all_over_brown"));
  told["skin_test"] = "2026-03-07";
  told["answers"]["pregnancy_week"] = 12;
  told["head"]["areas"][0]["scalp"] = "sensitive";
  const auto made = post("/api/v1/visits", wire::print(told), ada);
  ASSERT_EQ(made->status, 201) << made->body;
  const std::string path = "/api/v1/visits/" + Json::parse(made->body)["id"].get<std::string>();
  for (const char* role : {"colourist", "assistant", "apprentice", "manager"}) {
    const auto got = client_->Get(path, add(ada, role));
    ASSERT_EQ(got->status, 200) << got->body;
    const Json document = Json::parse(got->body)["document"];
    const bool opened = std::string(role) != "manager";
    EXPECT_EQ(document.contains("answers"), opened) << role;
    EXPECT_EQ(document.contains("skin_test"), opened) << role;
    EXPECT_EQ(document["head"]["areas"][0].contains("scalp"), opened) << role;
    EXPECT_EQ(got->body.find("pregnancy_week") != std::string::npos, opened) << role;
  }
}

TEST_F(Entering, APinOpensOnThePairedDeviceOnly) {
  const httplib::Headers ada = cookie_of(found());
  ASSERT_EQ(post("/api/v1/door/pin", wire::print({{"now", good}, {"pin", "493027"}}), ada)->status, 200);
  const auto paired = post("/api/v1/door/pair", R"({"name": "Tablet"})", ada);
  ASSERT_EQ(paired->status, 200) << paired->body;
  EXPECT_NE(paired->get_header_value("Set-Cookie").find("HttpOnly; SameSite=Strict; Max-Age=15552000"),
            std::string::npos);
  const httplib::Headers tablet = cookie_of(paired);
  const Json seen = door(tablet);
  ASSERT_EQ(seen["may_come_in"].size(), 1u);
  const std::string body = wire::print({{"person", seen["may_come_in"][0]["id"]}, {"pin", "493027"}});
  EXPECT_EQ(code_of(post("/api/v1/door/sign-in", body)), "not_paired");
  const auto in = post("/api/v1/door/sign-in", body, tablet);
  EXPECT_EQ(in->status, 200) << in->body;
  EXPECT_EQ(client_->Get("/api/v1/visits", cookie_of(in))->status, 200);
}

TEST_F(Entering, TheWordsOfTheKeyAskForThePassphraseAgain) {
  const httplib::Headers ada = cookie_of(found());
  EXPECT_EQ(post("/api/v1/door/recovery-words", wire::print({{"passphrase", other}}), ada)->status, 401);
  const auto words = post("/api/v1/door/recovery-words", wire::print({{"passphrase", good}}), ada);
  EXPECT_EQ(code_of(words), "store_key_missing") << "this salon has no file";
}

}  // namespace
}  // namespace strandline::server
