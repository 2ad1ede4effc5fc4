#include "http.h"

#include <chrono>
#include <exception>

#include "tls/tls_line.h"

namespace strandline::server {

namespace {

// What `Request::progress` is asked: cpp-httplib leaves that member unused on the server's side.
constexpr uint64_t ask_gone = 0, ask_closing = 1;

// A connection is one thread's from its beginning to its end.
thread_local std::chrono::steady_clock::time_point head_read{};

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
    head_read = std::chrono::steady_clock::now();
    if (!*head) {
      httplib::Response response;
      refuse(head->error(), response);
      return write_refusal(connection, response);
    }
    bool closed_by_client = false, understood = false;
    served = process_request(connection, false, closed_by_client, [&](httplib::Request& request) {
      understood = true;
      request.ssl = connection.tls();
      request.progress = [&connection](uint64_t asked, uint64_t) {
        return asked == ask_gone ? connection.gone() : connection.at_end();
      };
    });
    if (!understood) connection.close_after();
  }
}

bool HttpServer::process_and_close_socket(socket_t socket) {
  try {
    if (!secured) {
      SocketLine line(socket);
      return hold(line);
    }
    TlsLine line(socket, secured());
    return line.shake_hands() && hold(line);
  } catch (const std::exception& error) {
    // Outside a handler, most likely for want of memory: this connection ends, the server goes on.
    cut(error.what());
    return false;
  }
}

bool HttpServer::hold(SocketLine& line) {
  Connection connection(line, [this] { return svr_sock_ == INVALID_SOCKET; });
  converse(connection);
  line.finish();
  if (connection.at_end()) connection.linger();
  return true;
}

std::string HttpServer::exchange(std::string_view bytes) {
  MemoryLine line(bytes);
  Connection connection(line, [] { return false; });
  converse(connection);
  return std::move(line).taken();
}

bool client_gone(const httplib::Request& request) { return request.progress && request.progress(ask_gone, 0); }

double seconds_since_head() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - head_read).count();
}

bool encrypted(const httplib::Request& request) { return request.ssl != nullptr; }

bool closing(const httplib::Request& request) { return !request.progress || request.progress(ask_closing, 0); }

}  // namespace strandline::server
