#include "strandline/server/server.h"

#include <arpa/inet.h>

#include <cmath>
#include <iostream>
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

// What a request asked for, in words of the table of routes only: what it says itself is told to nobody.
struct Asked {
  std::string_view method = "other", route = "other";
};
Asked asked_for(const Request& request) {
  if (const Access* row = find_access(request.method, request.path).row) return {row->method, row->path};
  const bool file = (request.method == "GET" || request.method == "HEAD") && !request.path.starts_with("/api/");
  return file ? Asked{"GET", "file"} : Asked{};
}

// Whether answers may be others than before: everything that was told, but for drafts, which no other answer rests on.
bool may_change_answers(const Asked& asked, int status) {
  constexpr int refused = 400;
  const bool draft = asked.route == "/api/v1/visits" || asked.route == "/api/v1/visits/{id}";
  return (asked.method == "POST" || asked.method == "PUT") && status < refused && !draft && !asks_only(asked.route);
}

// Routes that have a row in the table of routes, or are refused.
bool is_route(const std::string& path) { return path.starts_with("/api/") || find_access("GET", path).known; }

// Whether this request of the API may reach its route; answers it otherwise.
bool let_in(Context& context, Refusals& refusals, const Request& request, Response& response) {
  const Found found = find_access(request.method, request.path);
  Problems problems;
  if (!found.row) {
    problems = {{found.known ? "method_not_allowed" : "not_found", "", {{"method", request.method}}}};
  } else if (found.row->here_only && encrypted(request)) {
    problems = {{"not_found", "", {{"method", request.method}}}};
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
  void count(const Asked& asked, int status);
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

void Server::Parts::count(const Asked& asked, int status) {
  const double seconds = seconds_since_head();
  context.metrics.count(asked.method, asked.route, status, seconds);
  constexpr double ms = 1000;
  if (!options.log) return;
  options.log({{"at", context.world.now()},
               {"event", "answered"},
               {"method", asked.method},
               {"route", asked.route},
               {"status", status},
               {"ms", std::llround(seconds * ms)}});
}

void Server::Parts::dress(HttpServer& one) {
  one.set_tcp_nodelay(true);
  // The library's own choice would let two servers share a port and be asked in turn.
  one.set_socket_options([](socket_t socket) {
    const int yes = 1;
    setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  });
  one.set_payload_max_length(body_bytes_max);
  one.new_task_queue = [this] { return new httplib::ThreadPool(static_cast<std::size_t>(options.connections_most)); };
  one.set_pre_routing_handler([this](const Request& request, Response& response) {
    const Problems problems = refused(request);
    if (!problems.empty()) {
      reply(response, problems);
      return httplib::Server::HandlerResponse::Handled;
    }
    const bool reads = request.method == "GET" || request.method == "HEAD";
    if (reads && !is_route(request.path) && context.files.serve(request, response)) {
      return httplib::Server::HandlerResponse::Handled;
    }
    if (is_route(request.path) && !let_in(context, refusals, request, response))
      return httplib::Server::HandlerResponse::Handled;
    return httplib::Server::HandlerResponse::Unhandled;
  });
  // Of every answer, before it is written.
  one.set_post_routing_handler([this](const Request& request, Response& response) {
    set_headers(request, response);
    const Asked asked = asked_for(request);
    if (may_change_answers(asked, response.status)) context.answers.forget();
    count(asked, response.status);
  });
  one.refuse = [this](const Problems& problems, Response& response) {
    reply(response, problems);
    Request unread;
    unread.path = "/api/";  // nothing of it is kept by anybody
    set_headers(unread, response);
    count({"other", "unread"}, response.status);
  };
  one.cut = [this](const char* why) {
    if (options.log)
      options.log({{"at", context.world.now()}, {"event", "cut"}, {"why", why}});
    else
      std::cerr << "strandline: a connection was cut: " << why << '\n';
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
