// Any bytes on one connection, through every route: whole answers come back, none of them of an error of our own.
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "strandline/server/server.h"

namespace {

using strandline::server::Server;

// A salon in memory; a new one now and then, so that saved visits do not pile up.
Server& server() {
  constexpr int requests = 500;
  static std::unique_ptr<Server> now;
  static int left = 0;
  if (left-- > 0) return *now;
  left = requests;
  auto house = strandline::salon::open_house({});
  auto world = strandline::salon::real_world(":memory:");
  if (!house || !world) std::abort();
  now = std::make_unique<Server>(
      strandline::server::ServerOptions{.port = 0, .web = {}, .allowed_hosts = {}, .search_threads = 1},
      std::move(*world), std::move(*house));
  return *now;
}

void expect(bool holds, const char* what, const std::string& answer) {
  if (holds) return;
  std::fprintf(stderr, "%s:\n%s\n", what, answer.c_str());
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string answer = server().exchange({reinterpret_cast<const char*>(data), size});
  constexpr std::string_view start = "HTTP/1.1 ", length = "\r\nContent-Length: ";
  for (std::size_t at = 0; at < answer.size();) {
    expect(answer.compare(at, start.size(), start) == 0, "no answer where one must begin", answer);
    const int status = std::atoi(answer.c_str() + at + start.size());
    expect(status >= 100 && status < 500, "an error of our own", answer);
    const std::size_t body = answer.find("\r\n\r\n", at);
    expect(body != std::string::npos, "a head without an end", answer);
    const std::size_t said = answer.find(length, at);
    at = body + 4;
    if (said > body || answer.compare(at, start.size(), start) == 0) continue;  // no body, or that of a HEAD
    const std::size_t bytes = std::strtoull(answer.c_str() + said + length.size(), nullptr, 10);
    if (at == answer.size()) break;  // a HEAD again
    expect(at + bytes <= answer.size(), "a body cut short", answer);
    at += bytes;
  }
  return 0;
}
