// What is sealed stands in no error, header, address or line of the terminal, whatever is asked wrongly.
#include "access.h"
#include "running.h"

namespace strandline::server {
namespace {

TEST_F(Running, TellsNothingSealedInErrorsHeadersOrOnTheTerminal) {
  const std::string name = "Zelda Sealedname", said = "sealed words about her scalp";
  Json document = Json::parse(visit("all_over_brown"));
  document["client"] = name;
  testing::internal::CaptureStderr();
  const auto made = post("/api/v1/visits", wire::print(document));
  ASSERT_EQ(made->status, 201) << made->body;
  const std::string place = made->get_header_value("Location"), id = place.substr(place.rfind('/') + 1);
  Json fact{{"id", "told-by-this-device-1"}, {"kind", "result"}};
  fact["body"] = Json::parse(R"({"zones": [{"zone": "top/all", "level": 6.5, "tone": "gold"}]})");
  fact["body"]["said"] = said;
  const auto told = post(place + "/facts", wire::print(fact));
  EXPECT_EQ(told->status, 201) << told->body;
  const auto seen = [&](const httplib::Result& got, const std::string& of) {
    std::string answer = got->status >= 400 ? got->body : "";
    for (const auto& [key, value] : got->headers) answer += key + ": " + value + '\n';
    for (const std::string& secret : {name, said})
      EXPECT_EQ(answer.find(secret), std::string::npos) << of << '\n' << answer;
  };
  int refused = 0;
  for (const Access& row : access_table()) {
    std::string path(row.path);
    if (const auto at = path.find("{id}"); at != std::string::npos) path.replace(at, 4, id);
    // Beside what makes no sense the words themselves, where they do not belong.
    for (const std::string& body : {std::string("{\"strange\": 1}"), std::string("["), wire::print(fact)}) {
      const auto got = row.method == "GET"   ? client_->Get(path + "?strange=1")
                       : row.method == "PUT" ? client_->Put(path, body, "application/json")
                                             : post(path, body);
      ASSERT_TRUE(got) << path;
      refused += got->status >= 400;
      if (body != wire::print(fact)) seen(got, std::string(row.method) + ' ' + path);
    }
  }
  EXPECT_GT(refused, 50);
  // Nor in what it says of itself.
  std::string said_of_itself = client_->Get("/metrics")->body;
  for (const Json& event : heard()) said_of_itself += wire::print(event) + '\n';
  EXPECT_NE(said_of_itself.find("/api/v1/visits/{id}/facts"), std::string::npos);
  for (const std::string& secret : {name, said, id, std::string("strange")})
    EXPECT_EQ(said_of_itself.find(secret), std::string::npos) << secret;
  const std::string terminal = testing::internal::GetCapturedStderr();
  for (const std::string& secret : {name, said}) EXPECT_EQ(terminal.find(secret), std::string::npos) << terminal;
}

}  // namespace
}  // namespace strandline::server
