#include "context.h"
#include "reply.h"
#include "strandline/salon/verbs.h"

namespace strandline::server {

void add_verbs(httplib::Server& http, Context& context) {
  for (const std::string verb : {"assess", "aim", "predict", "formulate", "schedule", "plan", "what-if"}) {
    http.Post("/api/v1/" + verb, [verb, &context](const httplib::Request& request, httplib::Response& response) {
      // A client that has gone away stops its own search.
      const salon::Effort effort{context.workers.parallel_for(), [&request] { return client_gone(request); }};
      const auto answer = wire::parse(request.body).and_then([&](const wire::Json& document) {
        return salon::answer(verb, document, context.sources, effort);
      });
      reply_with(response, answer, [](const wire::Json& json) { return json; });
    });
  }
}

}  // namespace strandline::server
