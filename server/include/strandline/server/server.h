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

struct ServerOptions {
  std::string host = "127.0.0.1";  // this machine only: there is no encryption
  int port = 7407;                 // 0 = any free one
  std::filesystem::path web;       // the built web app; empty = only the API
  std::vector<std::string>
      allowed_hosts;  // names a request may be addressed to, beside loopback; "host" or "host:port"
  int search_threads = 2;
  std::function<void(const Problems&)> tell = {};  // hears what reading the whole salon file, every day, finds wrong
  std::optional<salon::ScaleDevice> scale = {};    // the one at the mixing counter of this machine
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
