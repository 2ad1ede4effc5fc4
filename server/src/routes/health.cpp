#include <limits>

#include "context.h"
#include "reply.h"

namespace strandline::server {

namespace {

// Why the salon cannot be served now; nothing when it can.
Problems ailing(Context& context) {
  if (Problems found = context.watch.found(); !found.empty()) return found;
  // Up is who can read the salon file: what came after its last entry is a look into it that costs nothing.
  const auto look = salon::changes(context.world, std::numeric_limits<std::int64_t>::max());
  return look ? Problems{} : look.error();
}

}  // namespace

void add_health(httplib::Server& http, Context& context) {
  http.Get("/api/v1/health", [&context](const httplib::Request&, httplib::Response& response) {
    if (const Problems found = ailing(context); !found.empty()) return reply(response, found);
    reply(response, wire::Json{{"schema", "strandline.health/1"}, {"up", true}});
  });
  // The same for what looks after services: a status, and one line for a log.
  http.Get("/healthz", [&context](const httplib::Request&, httplib::Response& response) {
    const Problems found = ailing(context);
    constexpr int up = 200, down = 503;
    std::string line = "up\n";
    if (!found.empty()) {
      line = "down: " + found.front().code;
      for (const auto& [key, value] : found.front().params) line += ' ' + key + '=' + value;
      line += '\n';
    }
    response.status = found.empty() ? up : down;
    response.set_content(line, "text/plain; charset=utf-8");
  });
  http.Get("/metrics", [&context](const httplib::Request&, httplib::Response& response) {
    response.set_content(context.metrics.text(context.desk.load(), context.known, context.salon_file),
                         "text/plain; version=0.0.4; charset=utf-8");
  });
}

}  // namespace strandline::server
