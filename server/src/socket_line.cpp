#include "socket_line.h"

#include <arpa/inet.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cerrno>

#include "strandline/server/server.h"

namespace strandline::server {

SocketLine::~SocketLine() {
  shutdown(socket_, SHUT_RDWR);
  ::close(socket_);
}

ssize_t SocketLine::receive(char* out, size_t size, int milliseconds) {
  return ready(POLLIN, milliseconds) ? recv(socket_, out, size, 0) : -1;
}

ssize_t SocketLine::send(const char* bytes, size_t size, int milliseconds) {
  if (!ready(POLLOUT, milliseconds)) return -1;
  const ssize_t sent = ::send(socket_, bytes, size, MSG_NOSIGNAL | MSG_DONTWAIT);
  return sent < 0 && (errno == EAGAIN || errno == EINTR) ? 0 : sent;
}

bool SocketLine::gone() const {
  char byte = 0;
  const ssize_t got = recv(socket_, &byte, 1, MSG_PEEK | MSG_DONTWAIT);
  return got == 0 || (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK && errno != EINTR);
}

std::string SocketLine::peer() const {
  sockaddr_storage from{};
  socklen_t size = sizeof from;
  std::array<char, INET6_ADDRSTRLEN> text{};
  if (getpeername(socket_, reinterpret_cast<sockaddr*>(&from), &size) != 0) return "unknown";
  const void* address = from.ss_family == AF_INET6
                            ? static_cast<const void*>(&reinterpret_cast<const sockaddr_in6&>(from).sin6_addr)
                            : &reinterpret_cast<const sockaddr_in&>(from).sin_addr;
  if (inet_ntop(from.ss_family, address, text.data(), text.size()) == nullptr) return "unknown";
  return this_machine_only(text.data()) ? "" : text.data();
}

void SocketLine::finish() { shutdown(socket_, SHUT_WR); }

bool SocketLine::ready(short events, int milliseconds) const {
  pollfd wait{socket_, events, 0};
  int got = 0;
  do {
    got = poll(&wait, 1, milliseconds);
  } while (got < 0 && errno == EINTR);
  return got > 0 && (wait.revents & (events | POLLHUP)) != 0;
}

}  // namespace strandline::server
