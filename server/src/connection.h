// One connection: requests one after the other, each with a deadline, its head read by `read_head` and its body
// never longer than was said. What cpp-httplib reads from it is one clean request and nothing behind it.
#pragma once

#include <httplib.h>

#include <chrono>
#include <functional>
#include <optional>
#include <string>

#include "request_head.h"

namespace strandline::server {

// Where bytes come from and go to: a socket, or memory in tests.
class Line {
 public:
  virtual ~Line() = default;
  // Bytes read into `out`; 0 when the other end has finished, -1 when nothing came in time or it is broken.
  virtual ssize_t receive(char* out, size_t size, int milliseconds) = 0;
  // Bytes taken; -1 when none were in time or it is broken.
  virtual ssize_t send(const char* bytes, size_t size, int milliseconds) = 0;
  // Whether the other end has closed.
  virtual bool gone() const = 0;
  // The address at the other end; "" = this machine.
  virtual std::string peer() const { return ""; }
  // What encrypts it; nothing = it is in the clear.
  virtual const SSL* tls() const { return nullptr; }
};

class Connection : public httplib::Stream {
 public:
  static constexpr int keep_alive_seconds = 2;
  static constexpr int request_seconds = 20;  // from its first byte to the last byte of its body
  static constexpr int write_seconds = 10;    // without any progress
  static constexpr int answer_seconds = 60;   // spent waiting for a client to take one answer

  // `stopping`: asked often; true = no further request is read.
  Connection(Line& line, std::function<bool()> stopping) : line_(line), stopping_(std::move(stopping)) {}

  // Waits for the next head. Nothing when none comes, or not in time; problems when it is refused: then nothing
  // more may be read, only an answer written.
  std::optional<Result<RequestHead>> next();
  // Whether no further request can follow the one that is being answered.
  bool at_end() const { return close_ || body_left_ > 0 || stopping_(); }
  void close_after() { close_ = true; }
  bool gone() const { return line_.gone(); }
  const SSL* tls() const { return line_.tls(); }
  // Lets the other end read what was written before the connection is cut: takes what is still on its way.
  void linger();

  bool is_readable() const override { return true; }
  bool is_writable() const override { return !line_.gone(); }
  ssize_t read(char* out, size_t size) override;
  ssize_t write(const char* bytes, size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int&) const override { ip = line_.peer(); }
  void get_local_ip_and_port(std::string&, int&) const override {}
  // cpp-httplib refuses numbers over 1023; it needs none.
  socket_t socket() const override { return INVALID_SOCKET; }

 private:
  using Clock = std::chrono::steady_clock;
  bool begins();
  bool fill(int milliseconds);
  int left() const;

  Line& line_;
  std::function<bool()> stopping_;
  Clock::time_point deadline_{};
  std::string buffer_;  // received, not yet used
  std::string head_;    // what the library still has to read of the head
  size_t head_read_ = 0, body_left_ = 0;
  int waited_ms_ = 0;
  bool close_ = false;
};

}  // namespace strandline::server
