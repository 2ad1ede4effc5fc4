#include "context.h"
#include "reply.h"

namespace strandline::server {

void add_health(httplib::Server& http) {
  http.Get("/api/v1/health", [](const httplib::Request&, httplib::Response& response) {
    reply(response, wire::Json{{"schema", "strandline.health/1"}, {"up", true}});
  });
}

}  // namespace strandline::server
