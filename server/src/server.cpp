#include "strandline/server/server.h"

#include <arpa/inet.h>

#include "access.h"
#include "context.h"
#include "guard.h"
#include "memory.h"
#include "reply.h"

namespace strandline::server {

namespace {

constexpr std::size_t connections_max = 256;  // one thread each while it is open

using httplib::Request, httplib::Response;

void answer_error(const Request& request, Response& response) {
  if (!response.body.empty()) return;
  constexpr int not_found = 404, too_large = 413;
  if (response.status == not_found) {
    return reply(response, Problems{{"not_found", "", {{"method", request.method}}}});
  }
  if (response.status == too_large) {
    return reply(response, Problems{{"document_too_large", "", {{"max", std::to_string(body_bytes_max)}}}});
  }
  const int status = response.status;
  reply(response, wire::problems_json({{status >= 500 ? "internal" : "bad_request", "", {}}}), status);
}

// Whether this request of the API may reach its route; answers it otherwise.
bool let_in(Context& context, const Request& request, Response& response) {
  const Found found = find_access(request.method, request.path);
  Problems problems;
  if (!found.row) {
    problems = {{found.known ? "method_not_allowed" : "not_found", "", {{"method", request.method}}}};
  } else if (!found.row->outside) {
    const auto who = asking(context, request);
    if (!who) problems = who.error();
    if (who && !(who->person.roles & found.row->roles)) problems = {{"not_your_role", "", {}}};
  }
  if (problems.empty()) return true;
  reply(response, problems);
  return false;
}

}  // namespace

bool this_machine_only(const std::string& host) {
  in_addr four{};
  in6_addr six{};
  constexpr std::uint32_t first_byte = 24, loopback = 127;
  if (inet_pton(AF_INET, host.c_str(), &four) == 1) return ntohl(four.s_addr) >> first_byte == loopback;
  if (inet_pton(AF_INET6, host.c_str(), &six) == 1) return IN6_IS_ADDR_LOOPBACK(&six);
  return host == "localhost";
}

struct Server::Parts {
  Parts(ServerOptions o, salon::World world, salon::House house)
      : options(std::move(o)), context(std::move(world), std::move(house), options) {}

  ServerOptions options;
  Context context;
  HttpServer http;
  Guard guard;
};

Server::Server(ServerOptions options, salon::World world, salon::House house) {
  keep_memory_small();  // before there is a thread: each takes its memory from what was set by then
  parts_ = std::make_unique<Parts>(std::move(options), std::move(world), std::move(house));
  Parts& p = *parts_;
  p.guard.hosts = p.options.allowed_hosts;
  for (const char* own : {"127.0.0.1", "localhost", "[::1]"}) p.guard.hosts.emplace_back(own);
  HttpServer& http = p.http;
  http.set_tcp_nodelay(true);
  // The library's own choice would let two servers share a port and be asked in turn.
  http.set_socket_options([](socket_t socket) {
    const int yes = 1;
    setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  });
  http.set_payload_max_length(body_bytes_max);
  http.new_task_queue = [] { return new httplib::ThreadPool(connections_max); };
  http.set_pre_routing_handler([&p](const Request& request, Response& response) {
    const Problems problems = p.guard.check(request);
    if (!problems.empty()) {
      reply(response, problems);
      return httplib::Server::HandlerResponse::Handled;
    }
    const bool reads = request.method == "GET" || request.method == "HEAD";
    if (reads && !request.path.starts_with("/api/") && p.context.files.serve(request, response)) {
      return httplib::Server::HandlerResponse::Handled;
    }
    if (request.path.starts_with("/api/") && !let_in(p.context, request, response))
      return httplib::Server::HandlerResponse::Handled;
    return httplib::Server::HandlerResponse::Unhandled;
  });
  http.set_post_routing_handler(set_headers);
  http.refuse = [](const Problems& problems, Response& response) {
    reply(response, problems);
    Request unread;
    unread.path = "/api/";  // nothing of it is kept by anybody
    set_headers(unread, response);
  };
  http.set_error_handler([](const Request& request, Response& response) { answer_error(request, response); });
  http.set_exception_handler([](const Request&, Response& response, std::exception_ptr thrown) {
    const char* code = "internal";
    try {
      std::rethrow_exception(std::move(thrown));
    } catch (const std::bad_alloc&) {
      code = "memory_short";
    } catch (...) {  // told as it is
    }
    reply(response, Problems{{code, "", {}}});
  });
  add_facts(http, p.context);
  add_door(http, p.context);
  add_people(http, p.context);
  add_health(http, p.context);
  add_scale(http, p.context);
  add_shelf(http, p.context);
  add_verbs(http, p.context);
  add_visits(http, p.context);
}

Server::~Server() { stop(); }

std::optional<int> Server::bind() {
  const ServerOptions& o = parts_->options;
  if (!this_machine_only(o.host)) return std::nullopt;
  if (o.port == 0) {
    const int port = parts_->http.bind_to_any_port(o.host);
    return port > 0 ? std::optional(port) : std::nullopt;
  }
  return parts_->http.bind_to_port(o.host, o.port) ? std::optional(o.port) : std::nullopt;
}

void Server::run() { parts_->http.listen_after_bind(); }

void Server::stop() {
  parts_->context.stopping = true;
  parts_->http.stop();
}

std::string Server::exchange(std::string_view bytes) { return parts_->http.exchange(bytes); }
bool Server::running() const { return parts_->http.is_running(); }

}  // namespace strandline::server
