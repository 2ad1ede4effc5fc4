#include <limits>

#include "context.h"
#include "reply.h"

namespace strandline::server {

void add_health(httplib::Server& http, Context& context) {
  http.Get("/api/v1/health", [&context](const httplib::Request&, httplib::Response& response) {
    if (const Problems found = context.watch.found(); !found.empty()) return reply(response, found);
    // Up is who can read the salon file: what came after its last entry is a look into it that costs nothing.
    reply_with(response, salon::changes(context.world, std::numeric_limits<std::int64_t>::max()),
               [](const auto&) { return wire::Json{{"schema", "strandline.health/1"}, {"up", true}}; });
  });
}

}  // namespace strandline::server
