#include "strandline/server/server.h"

#include <arpa/inet.h>

#include <mutex>
#include <set>
#include <thread>

#include "access.h"
#include "context.h"
#include "guard.h"
#include "lan.h"
#include "learned_routes.h"
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

// That somebody asked for what their role does not do is a fact, once for each session and route.
class Refusals {
 public:
  void tell(salon::World& world, const salon::Who& who, const Access& row) {
    const std::string what = std::string(row.method) + ' ' + std::string(row.path);
    {
      const std::lock_guard lock(mutex_);
      if (!told_.insert(who.session + ' ' + what).second) return;
    }
    const auto kept = world.store->append({.id = world.new_id(),
                                           .stream = "refused-" + who.person.id,
                                           .after_seq = store::NewFact::at_the_end,
                                           .made_at = world.now(),
                                           .kind = "refused",
                                           .body = wire::print({{"what", what}, {"session", who.session}})});
    if (kept) return;
    // It stays refused either way, and is told again the next time.
    const std::lock_guard lock(mutex_);
    told_.erase(who.session + ' ' + what);
  }

 private:
  std::mutex mutex_;
  std::set<std::string> told_;
};

// Whether this request of the API may reach its route; answers it otherwise.
bool let_in(Context& context, Refusals& refusals, const Request& request, Response& response) {
  const Found found = find_access(request.method, request.path);
  Problems problems;
  if (!found.row) {
    problems = {{found.known ? "method_not_allowed" : "not_found", "", {{"method", request.method}}}};
  } else {
    std::string device;
    if (encrypted(request)) {
      const auto from = device_asking(context, request);
      if (!from) problems = from.error();
      if (from) device = *from;
      if (from && device.empty() && !found.row->unpaired) problems = {{"not_paired", "", {}}};
    }
    if (problems.empty() && !found.row->outside) {
      const auto who = asking(context, request);
      if (!who) problems = who.error();
      // From another machine a session is worth something on its own device only.
      if (who && encrypted(request) && who->device != device) problems = {{"not_signed_in", "", {}}};
      if (who && problems.empty() && !(who->person.roles & found.row->roles)) {
        problems = {{"not_your_role", "", {}}};
        refusals.tell(context.world, *who, *found.row);
      }
    }
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
  salon::Learning learning{context.world, context.shelves};
  HttpServer http, lan;
  Refusals refusals;
  Guard guard;

  // To whom a request may be addressed, and from which pages it may come.
  Problems refused(const Request& request) const {
    if (!encrypted(request)) return guard.check(request);
    Guard of_lan{options.allowed_hosts};
    for (const std::string& name : context.leaf->names()) of_lan.hosts.push_back(host_of(name));
    return of_lan.check(request);
  }
  void dress(HttpServer& one);
};

Server::Server(ServerOptions options, salon::World world, salon::House house) {
  keep_memory_small();  // before there is a thread: each takes its memory from what was set by then
  parts_ = std::make_unique<Parts>(std::move(options), std::move(world), std::move(house));
  Parts& p = *parts_;
  p.guard.hosts = p.options.allowed_hosts;
  for (const char* own : {"127.0.0.1", "localhost", "[::1]"}) p.guard.hosts.emplace_back(own);
  p.dress(p.http);
  if (!p.options.leaf) return;
  p.dress(p.lan);
  p.lan.secured = [leaf = p.options.leaf] { return leaf->context(); };
}

void Server::Parts::dress(HttpServer& one) {
  one.set_tcp_nodelay(true);
  // The library's own choice would let two servers share a port and be asked in turn.
  one.set_socket_options([](socket_t socket) {
    const int yes = 1;
    setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  });
  one.set_payload_max_length(body_bytes_max);
  one.new_task_queue = [] { return new httplib::ThreadPool(connections_max); };
  one.set_pre_routing_handler([this](const Request& request, Response& response) {
    const Problems problems = refused(request);
    if (!problems.empty()) {
      reply(response, problems);
      return httplib::Server::HandlerResponse::Handled;
    }
    const bool reads = request.method == "GET" || request.method == "HEAD";
    if (reads && !request.path.starts_with("/api/") && context.files.serve(request, response)) {
      return httplib::Server::HandlerResponse::Handled;
    }
    if (request.path.starts_with("/api/") && !let_in(context, refusals, request, response))
      return httplib::Server::HandlerResponse::Handled;
    return httplib::Server::HandlerResponse::Unhandled;
  });
  one.set_post_routing_handler(set_headers);
  one.refuse = [](const Problems& problems, Response& response) {
    reply(response, problems);
    Request unread;
    unread.path = "/api/";  // nothing of it is kept by anybody
    set_headers(unread, response);
  };
  one.set_error_handler([](const Request& request, Response& response) { answer_error(request, response); });
  one.set_exception_handler([](const Request&, Response& response, std::exception_ptr thrown) {
    const char* code = "internal";
    try {
      std::rethrow_exception(std::move(thrown));
    } catch (const std::bad_alloc&) {
      code = "memory_short";
    } catch (...) {  // told as it is
    }
    reply(response, Problems{{code, "", {}}});
  });
  add_facts(one, context);
  add_diary(one, context);
  add_door(one, context);
  add_people(one, context);
  add_devices(one, context);
  add_health(one, context);
  add_hand_notes(one, context);
  add_scale(one, context);
  add_shelf(one, context);
  add_stock(one, context);
  add_verbs(one, context, learning);
  add_learned(one, context, learning);
  add_visits(one, context);
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

std::optional<int> Server::bind_lan() {
  const ServerOptions& o = parts_->options;
  if (!o.leaf || !may_listen(o.lan_host)) return std::nullopt;
  int port = o.lan_port;
  if (port == 0)
    port = parts_->lan.bind_to_any_port(o.lan_host);
  else if (!parts_->lan.bind_to_port(o.lan_host, port))
    port = -1;
  parts_->context.lan_port = port;
  return port > 0 ? std::optional(port) : std::nullopt;
}

int Server::lan_port() const { return parts_->context.lan_port; }

void Server::run() {
  std::atomic<bool> listening = parts_->context.lan_port > 0;
  std::jthread lan;
  if (listening) {
    lan = std::jthread([&] {
      parts_->lan.listen_after_bind();
      listening = false;
    });
  }
  parts_->http.listen_after_bind();
  constexpr auto a_moment = std::chrono::milliseconds(10);
  for (; listening; std::this_thread::sleep_for(a_moment)) parts_->lan.stop();  // also one that only begins
}

void Server::stop() {
  parts_->context.stopping = true;
  parts_->lan.stop();
  parts_->http.stop();
}

std::string Server::exchange(std::string_view bytes) { return parts_->http.exchange(bytes); }
bool Server::running() const {
  return parts_->http.is_running() && (parts_->context.lan_port <= 0 || parts_->lan.is_running());
}

}  // namespace strandline::server
