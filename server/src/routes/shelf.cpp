#include "context.h"
#include "reply.h"
#include "strandline/wire/answer.h"
#include "strandline/wire/words.h"

namespace strandline::server {

void add_shelf(httplib::Server& http, Context& context) {
  http.Get("/api/v1/shelf", [&context](const httplib::Request&, httplib::Response& response) {
    reply(response, wire::answer_json(wire::view(context.house.demo)));
  });
  http.Get("/api/v1/levels", [](const httplib::Request&, httplib::Response& response) {
    reply(response, wire::answer_json(wire::levels_answer()));
  });
  http.Get("/api/v1/tones", [](const httplib::Request&, httplib::Response& response) {
    wire::Json words = wire::Json::array();
    for (const auto& [tone, word] : wire::Words<Tone>::list) words.push_back(std::string(word));
    reply(response, wire::Json{{"schema", "strandline.tones/1"}, {"tones", std::move(words)}});
  });
}

}  // namespace strandline::server
