#include "http.h"

#include <arpa/inet.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <exception>
#include <iostream>

#include "strandline/server/server.h"

namespace strandline::server {

namespace {

// What `Request::progress` is asked: cpp-httplib leaves that member unused on the server's side.
constexpr uint64_t ask_gone = 0, ask_closing = 1;

class SocketLine : public Line {
 public:
  explicit SocketLine(socket_t socket) : socket_(socket) {}
  ~SocketLine() override {
    shutdown(socket_, SHUT_RDWR);
    ::close(socket_);
  }
  SocketLine(const SocketLine&) = delete;
  SocketLine& operator=(const SocketLine&) = delete;

  ssize_t receive(char* out, size_t size, int milliseconds) override {
    return ready(POLLIN, milliseconds) ? recv(socket_, out, size, 0) : -1;
  }
  ssize_t send(const char* bytes, size_t size, int milliseconds) override {
    if (!ready(POLLOUT, milliseconds)) return -1;
    const ssize_t sent = ::send(socket_, bytes, size, MSG_NOSIGNAL | MSG_DONTWAIT);
    return sent < 0 && (errno == EAGAIN || errno == EINTR) ? 0 : sent;
  }
  bool gone() const override {
    char byte = 0;
    const ssize_t got = recv(socket_, &byte, 1, MSG_PEEK | MSG_DONTWAIT);
    return got == 0 || (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK && errno != EINTR);
  }
  std::string peer() const override {
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
  void finish() { shutdown(socket_, SHUT_WR); }

 private:
  bool ready(short events, int milliseconds) {
    pollfd wait{socket_, events, 0};
    int got = 0;
    do {
      got = poll(&wait, 1, milliseconds);
    } while (got < 0 && errno == EINTR);
    return got > 0 && (wait.revents & (events | POLLHUP)) != 0;
  }

  socket_t socket_;
};

class MemoryLine : public Line {
 public:
  explicit MemoryLine(std::string_view in) : in_(in) {}
  ssize_t receive(char* out, size_t size, int) override {
    const size_t taken = in_.copy(out, size);
    in_.remove_prefix(taken);
    return static_cast<ssize_t>(taken);
  }
  ssize_t send(const char* bytes, size_t size, int) override {
    out_.append(bytes, size);
    return static_cast<ssize_t>(size);
  }
  bool gone() const override { return false; }
  std::string taken() && { return std::move(out_); }

 private:
  std::string_view in_;
  std::string out_;
};

void write_refusal(Connection& connection, const httplib::Response& response) {
  std::string text = "HTTP/1.1 " + std::to_string(response.status) + " Refused\r\n";
  for (const auto& [name, value] : response.headers) text += name + ": " + value + "\r\n";
  text += "Content-Length: " + std::to_string(response.body.size()) + "\r\n\r\n" + response.body;
  for (size_t at = 0; at < text.size();) {
    const ssize_t sent = connection.write(text.data() + at, text.size() - at);
    if (sent < 0) return;  // nobody is there to be told
    at += static_cast<size_t>(sent);
  }
}

}  // namespace

void HttpServer::converse(Connection& connection) {
  bool served = true;
  while (served && !connection.at_end()) {
    const auto head = connection.next();
    if (!head) return;
    if (!*head) {
      httplib::Response response;
      refuse(head->error(), response);
      return write_refusal(connection, response);
    }
    bool closed_by_client = false, understood = false;
    served = process_request(connection, false, closed_by_client, [&](httplib::Request& request) {
      understood = true;
      request.progress = [&connection](uint64_t asked, uint64_t) {
        return asked == ask_gone ? connection.gone() : connection.at_end();
      };
    });
    if (!understood) connection.close_after();
  }
}

bool HttpServer::process_and_close_socket(socket_t socket) {
  SocketLine line(socket);
  try {
    Connection connection(line, [this] { return svr_sock_ == INVALID_SOCKET; });
    converse(connection);
    line.finish();
    if (connection.at_end()) connection.linger();
    return true;
  } catch (const std::exception& error) {
    // Outside a handler, most likely for want of memory: this connection ends, the server goes on.
    std::cerr << "strandline: a connection was cut: " << error.what() << '\n';
    return false;
  }
}

std::string HttpServer::exchange(std::string_view bytes) {
  MemoryLine line(bytes);
  Connection connection(line, [] { return false; });
  converse(connection);
  return std::move(line).taken();
}

bool client_gone(const httplib::Request& request) { return request.progress && request.progress(ask_gone, 0); }

bool closing(const httplib::Request& request) { return !request.progress || request.progress(ask_closing, 0); }

}  // namespace strandline::server
