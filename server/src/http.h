// cpp-httplib on connections of our own (connection.h): a handler can ask whether its client is still there and can end
// the connection, and whole conversations can be held without a socket.
#pragma once

#include <httplib.h>

#include <functional>
#include <memory>
#include <string>
#include <string_view>

#include "connection.h"
#include "socket_line.h"

namespace strandline::server {

class HttpServer : public httplib::Server {
 public:
  // Fills the answer to a head that was refused.
  std::function<void(const Problems&, httplib::Response&)> refuse;

  // Hears why a connection was cut, in its thread.
  std::function<void(const char* why)> cut;

  // Where every connection is encrypted: what it is encrypted with now. Empty = none is.
  std::function<std::shared_ptr<SSL_CTX>()> secured;

  // Everything that comes back on one connection over which `bytes` come and then its end.
  std::string exchange(std::string_view bytes);

 private:
  bool process_and_close_socket(socket_t socket) override;
  void converse(Connection& connection);
  bool hold(SocketLine& line);
};

// Whether the client of this request has closed its connection. False where that cannot be known.
bool client_gone(const httplib::Request& request);
// Since the head of the request that this thread answers was read.
double seconds_since_head();
// Whether this request came over an encrypted connection, as all from other machines do.
bool encrypted(const httplib::Request& request);
// Whether no further request is read from this connection, as the answer must tell.
bool closing(const httplib::Request& request);

}  // namespace strandline::server
