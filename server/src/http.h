// cpp-httplib with a connection of our own: a whole request has a deadline, a handler can ask whether its
// client is still there, a connection whose body was not read to its end is closed, and answers are packed with gzip.
#pragma once

#include <httplib.h>

#include <functional>

namespace strandline::server {

class HttpServer : public httplib::Server {
 public:
  static constexpr int keep_alive_seconds = 2;
  static constexpr int request_seconds = 20;  // from its first byte to the last byte of its body
  static constexpr int write_seconds = 10;    // without any progress

 private:
  bool process_and_close_socket(socket_t socket) override;
};

// Whether the client of this request has closed its connection. False where that cannot be known.
bool client_gone(const httplib::Request& request);
// No further request is read from this connection.
void close_after(const httplib::Request& request);

}  // namespace strandline::server
