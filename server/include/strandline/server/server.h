// The HTTP door: the same use cases as the command line, on loopback by default.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/salon/counter.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/world.h"

namespace strandline::server {

// Whether an address ("127.0.0.2", "::1") or "localhost" is one that no other machine can reach.
bool this_machine_only(const std::string& host);

// Asks the server at this address whether it is up (/healthz), in at most `seconds`. Problems: not_up {address, said}.
Result<void> ask_whether_up(const std::string& host, int port, int seconds);

class Leaf;

// Whether the door for other machines may listen there: an address of a private network, or all of this machine's.
bool may_listen(const std::string& host);
// What encrypts it: this machine's certificate, made anew by itself, from the salon's own authority, which is kept at
// `authority` and made there when nothing is. Problems {detail}: authority_unreadable, authority_expired,
// authority_unwritable.
Result<std::shared_ptr<Leaf>> open_leaf(const std::filesystem::path& authority, const std::string& host);

struct ServerOptions {
  std::string host = "127.0.0.1";  // this machine only: there it is in the clear
  int port = 7407;                 // 0 = any free one
  std::filesystem::path web;       // the built web app; empty = only the API
  std::vector<std::string>
      allowed_hosts;  // names a request may be addressed to, beside loopback; "host" or "host:port"
  int search_threads = 2;
  std::function<void(const Problems&)> tell = {};  // hears what reading the whole salon file, every day, finds wrong
  std::optional<salon::ScaleDevice> scale = {};    // the one at the mixing counter of this machine
  std::shared_ptr<Leaf> leaf = {};  // set: paired devices on other machines are answered too, encrypted, at:
  std::string lan_host = {};
  int lan_port = 7443;                    // 0 = any free one
  std::filesystem::path salon_file = {};  // whose size is told by /metrics
  int at_once = 2;                        // heavy questions worked on at once
  int waiting_most = 128;      // and how many may wait: fewer than there are connections, so that the rest stay quick
  int connections_most = 256;  // one thread each while it is open
  // Hears what happens, an object each, from any thread: {at, event: "answered", method, route, status, ms} – the route
  // as it stands in the description of the interface, never what was asked – and {at, event: "cut", why}.
  std::function<void(const wire::Json&)> log = {};
};

class Server {
 public:
  // `house` is kept; `world` is shared with nobody else.
  Server(ServerOptions options, salon::World world, salon::House house);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  // Takes the port. Returns it, or nothing when it cannot be had or the host is not this machine only.
  std::optional<int> bind();
  // Likewise the port for paired devices, where there is a leaf. Requires bind().
  std::optional<int> bind_lan();
  int lan_port() const;  // 0 = nowhere
  // Serves until stop() is called, from any thread. Requires bind().
  void run();
  void stop();
  bool running() const;
  // Everything that comes back on one connection over which `bytes` come and then its end; without a socket.
  std::string exchange(std::string_view bytes);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strandline::server
