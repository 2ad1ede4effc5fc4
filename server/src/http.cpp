#include "http.h"

#include <arpa/inet.h>
#include <netdb.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>

namespace strandline::server {

namespace {

using Clock = std::chrono::steady_clock;

// What `Request::progress` is asked: cpp-httplib leaves that member unused on the server's side.
constexpr uint64_t ask_gone = 0, tell_close = 1;

bool ready(socket_t socket, short events, int milliseconds) {
  pollfd wait{socket, events, 0};
  int got = 0;
  do {
    got = poll(&wait, 1, milliseconds);
  } while (got < 0 && errno == EINTR);
  return got > 0 && (wait.revents & (events | POLLHUP)) != 0;
}

bool gone(socket_t socket) {
  char byte = 0;
  const ssize_t got = recv(socket, &byte, 1, MSG_PEEK | MSG_DONTWAIT);
  return got == 0 || (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK && errno != EINTR);
}

void address(socket_t socket, bool remote, std::string& ip, int& port) {
  sockaddr_storage storage{};
  socklen_t length = sizeof storage;
  auto* raw = reinterpret_cast<sockaddr*>(&storage);
  if ((remote ? getpeername(socket, raw, &length) : getsockname(socket, raw, &length)) != 0) return;
  std::array<char, NI_MAXHOST> host{};
  std::array<char, NI_MAXSERV> service{};
  if (getnameinfo(raw, length, host.data(), host.size(), service.data(), service.size(),
                  NI_NUMERICHOST | NI_NUMERICSERV) != 0) {
    return;
  }
  ip = host.data();
  port = std::atoi(service.data());
}

class Connection : public httplib::Stream {
 public:
  explicit Connection(socket_t socket) : socket_(socket) {}

  // Waits for the next request; false when none comes.
  bool next_request() {
    const bool buffered = from_ < until_;
    if (!buffered && !ready(socket_, POLLIN, HttpServer::keep_alive_seconds * 1000)) return false;
    deadline_ = Clock::now() + std::chrono::seconds(HttpServer::request_seconds);
    return true;
  }

  bool is_readable() const override { return from_ < until_ || ready(socket_, POLLIN, left()); }
  bool is_writable() const override {
    return ready(socket_, POLLOUT, HttpServer::write_seconds * 1000) && !gone(socket_);
  }

  ssize_t read(char* out, size_t size) override {
    if (from_ == until_) {
      if (!ready(socket_, POLLIN, left())) return -1;
      const ssize_t got = recv(socket_, buffer_.data(), buffer_.size(), 0);
      if (got <= 0) return got;
      from_ = 0;
      until_ = static_cast<size_t>(got);
    }
    const size_t taken = std::min(size, until_ - from_);
    std::copy_n(buffer_.data() + from_, taken, out);
    from_ += taken;
    return static_cast<ssize_t>(taken);
  }

  ssize_t write(const char* bytes, size_t size) override {
    if (!ready(socket_, POLLOUT, HttpServer::write_seconds * 1000)) return -1;
    return send(socket_, bytes, size, MSG_NOSIGNAL);
  }

  void get_remote_ip_and_port(std::string& ip, int& port) const override { address(socket_, true, ip, port); }
  void get_local_ip_and_port(std::string& ip, int& port) const override { address(socket_, false, ip, port); }
  socket_t socket() const override { return socket_; }

 private:
  int left() const {
    const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(deadline_ - Clock::now()).count();
    return static_cast<int>(std::max<long long>(0, ms));
  }

  socket_t socket_;
  Clock::time_point deadline_ = Clock::now();
  std::array<char, 16384> buffer_{};
  size_t from_ = 0, until_ = 0;
};

// Brotli at the quality that the library sets takes 55 ms for an answer of 67 KB that gzip packs in 2.
void offer_gzip_at_most(httplib::Headers& headers) {
  const auto [first, last] = headers.equal_range("Accept-Encoding");
  const bool gzip = std::any_of(first, last, [](const auto& h) { return h.second.find("gzip") != std::string::npos; });
  headers.erase(first, last);
  if (gzip) headers.emplace("Accept-Encoding", "gzip");
}

}  // namespace

bool HttpServer::process_and_close_socket(socket_t socket) {
  Connection connection(socket);
  bool served = true, close = false;
  while (served && !close && svr_sock_ != INVALID_SOCKET && connection.next_request()) {
    bool closed_by_client = false, understood = false;
    served = process_request(connection, false, closed_by_client, [&](httplib::Request& request) {
      understood = true;
      offer_gzip_at_most(request.headers);
      request.progress = [&close, socket](uint64_t asked, uint64_t) {
        if (asked == tell_close) close = true;
        return asked != ask_gone || gone(socket);
      };
    });
    close = close || closed_by_client || !understood;
  }
  shutdown(socket, SHUT_RDWR);
  ::close(socket);
  return served;
}

bool client_gone(const httplib::Request& request) { return request.progress && request.progress(ask_gone, 0); }

void close_after(const httplib::Request& request) {
  if (request.progress) request.progress(tell_close, 0);
}

}  // namespace strandline::server
