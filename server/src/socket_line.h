// A socket as a line, in the clear; closed with it.
#pragma once

#include <poll.h>

#include "connection.h"

namespace strandline::server {

class SocketLine : public Line {
 public:
  explicit SocketLine(socket_t socket) : socket_(socket) {}
  ~SocketLine() override;
  SocketLine(const SocketLine&) = delete;
  SocketLine& operator=(const SocketLine&) = delete;

  ssize_t receive(char* out, size_t size, int milliseconds) override;
  ssize_t send(const char* bytes, size_t size, int milliseconds) override;
  bool gone() const override;
  std::string peer() const override;
  // Tells the other end that nothing more comes.
  virtual void finish();

 protected:
  bool ready(short events, int milliseconds) const;

 private:
  socket_t socket_;
};

}  // namespace strandline::server
