#include "http.h"
#include "strandline/server/server.h"

namespace strandline::server {

Result<void> ask_whether_up(const std::string& host, int port, int seconds) {
  httplib::Client client(host, port);
  client.set_connection_timeout(seconds);
  client.set_read_timeout(seconds);
  const auto got = client.Get("/healthz");
  constexpr int up = 200;
  if (got && got->status == up) return {};
  std::string said = got ? got->body : "nobody answers there";
  while (said.ends_with('\n')) said.pop_back();
  return tl::unexpected(Problems{{"not_up", "", {{"address", host + ':' + std::to_string(port)}, {"said", said}}}});
}

}  // namespace strandline::server
