// Every route × every role × no session × a revoked one × another site's page, from the table of routes itself.
#include "access.h"

#include "running.h"
#include "strandline/salon/roles.h"
#include "strandline/wire/openapi.h"

namespace strandline::server {
namespace {

const std::string good = "brown tape on blue jars";

class Staffed : public Running {
 protected:
  // One person for each role, named after it.
  void SetUp() override {
    Running::SetUp();
    const auto in =
        post("/api/v1/door/found",
             wire::print({{"name", "owner"}, {"passphrase", good}, {"zone", "Europe/Vienna"}, {"shelf", "invented"}}));
    ASSERT_EQ(in->status, 201) << in->body;
    owner_ = {{"Cookie", session_of(in)}};
    for (const auto& [word, role] : salon::role_words) {
      if (word == "owner") continue;
      const auto added =
          post("/api/v1/people", wire::print({{"name", word}, {"roles", word}, {"passphrase", good}}), owner_);
      ASSERT_EQ(added->status, 201) << added->body;
    }
  }

  static std::string session_of(const httplib::Result& got) {
    const std::string cookie = got->get_header_value("Set-Cookie");
    return cookie.substr(0, cookie.find(';'));
  }
  httplib::Headers session(const std::string& name) {
    const auto in = post("/api/v1/door/sign-in", wire::print({{"name", name}, {"passphrase", good}}));
    EXPECT_EQ(in->status, 200) << in->body;
    return {{"Cookie", session_of(in)}};
  }

  // A request that no route can act on: its body says nothing that any of them knows.
  httplib::Result ask(const Access& row, const httplib::Headers& headers) {
    std::string path(row.path);
    if (const auto at = path.find("{id}"); at != std::string::npos) path.replace(at, 4, "nobody-1");
    const std::string body = R"({"nothing": "known"})";
    if (row.method == "GET") return client_->Get(path, headers);
    if (row.method == "PUT") return client_->Put(path, headers, body, "application/json");
    EXPECT_EQ(row.method, "POST");
    return client_->Post(path, headers, body, "application/json");
  }
  // Why a request was kept from its route; "" when it was not.
  static std::string kept_out(const httplib::Result& got) {
    if (!got) return "no answer";
    const Json json = Json::parse(got->body, nullptr, false);
    if (!json.is_object() || !json.contains("problems")) return "";
    const std::string code = json["problems"][0]["code"];
    for (const char* door : {"not_signed_in", "not_your_role", "origin_not_allowed", "not_found", "method_not_allowed"})
      if (code == door) return code;
    return "";
  }

  httplib::Headers owner_;
};

TEST_F(Staffed, EveryRouteIsOpenToItsRolesOnly) {
  for (const auto& [word, role] : salon::role_words) {
    const httplib::Headers mine = session(std::string(word));
    for (const Access& row : access_table()) {
      const bool may = row.outside || (row.roles & role);
      EXPECT_EQ(kept_out(ask(row, mine)), may ? "" : "not_your_role") << word << ' ' << row.method << ' ' << row.path;
    }
  }
}

TEST_F(Staffed, NoRouteIsOpenWithoutASession) {
  const httplib::Headers ended = session("owner");
  ASSERT_EQ(post("/api/v1/door/sign-out", "{}", ended)->status, 200);
  for (const Access& row : access_table()) {
    const std::string wanted = row.outside ? "" : "not_signed_in";
    for (const httplib::Headers& none :
         {httplib::Headers{}, ended, {{"Cookie", "strandline-session=madeup"}}, {{"Cookie", "strandline-session="}}}) {
      const auto got = ask(row, none);
      EXPECT_EQ(kept_out(got), wanted) << row.method << ' ' << row.path;
      if (!row.outside) EXPECT_EQ(got->status, 401);
    }
  }
  EXPECT_EQ(client_->Get("/")->status, 200) << "the page that asks to sign in";
  EXPECT_EQ(client_->Get("/assets/app-1234.js")->status, 200);
}

TEST_F(Staffed, ARevokedSessionOpensNothing) {
  const httplib::Headers theirs = session("colourist");
  const Json team = Json::parse(client_->Get("/api/v1/people", owner_)->body);
  std::string id;
  for (const Json& p : team["people"])
    if (p["name"] == "colourist") id = p["id"];
  ASSERT_EQ(post("/api/v1/people/" + id + "/revoke", "{}", owner_)->status, 200);
  for (const Access& row : access_table())
    EXPECT_EQ(kept_out(ask(row, theirs)), row.outside ? "" : "not_signed_in") << row.method << ' ' << row.path;
}

TEST_F(Staffed, NoRouteIsOpenToAnotherSitesPage) {
  for (const Access& row : access_table()) {
    httplib::Headers foreign = owner_;
    foreign.emplace("Origin", "http://evil.example");
    EXPECT_EQ(kept_out(ask(row, foreign)), "origin_not_allowed") << row.method << ' ' << row.path;
  }
}

TEST_F(Running, EveryRouteIsOpenWhileThereAreNoPeople) {
  for (const Access& row : access_table()) {
    std::string path(row.path);
    if (const auto at = path.find("{id}"); at != std::string::npos) path.replace(at, 4, "nobody-1");
    const auto got = row.method == "GET" ? client_->Get(path) : post(path, "{}");
    EXPECT_NE(got->status, 401) << path;
  }
}

TEST_F(Staffed, WhatIsNotInTheTableIsRefused) {
  for (const char* path : {"/api/v1/new-route", "/api/v1/visits/x/y", "/api/v2/visits", "/api/", "/api/v1/people/x"}) {
    EXPECT_EQ(kept_out(client_->Get(path, owner_)), "not_found") << path;
    EXPECT_EQ(kept_out(post(path, "{}", owner_)), "not_found") << path;
  }
  EXPECT_EQ(kept_out(post("/api/v1/shelf", "{}", owner_)), "method_not_allowed");
}

// So that a route without a row is found, and a row without a route.
TEST(Access, HasARowForEachRouteThatIsDescribed) {
  const Json described = wire::openapi("0");
  std::set<std::string> routes, rows;
  for (const auto& [path, methods] : described["paths"].items()) {
    for (const auto& [method, operation] : methods.items()) {
      if (method == "parameters") continue;
      std::string upper = method;
      for (char& c : upper) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
      routes.insert(upper + ' ' + path);
    }
  }
  for (const Access& row : access_table()) {
    rows.insert(std::string(row.method) + ' ' + std::string(row.path));
    EXPECT_NE(row.roles, 0u) << row.path << " is open to nobody";
  }
  EXPECT_EQ(routes, rows);
}

}  // namespace
}  // namespace strandline::server
