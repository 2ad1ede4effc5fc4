#include "connection.h"

#include <algorithm>
#include <array>

namespace strandline::server {

namespace {

int milliseconds_since(std::chrono::steady_clock::time_point start) {
  return static_cast<int>(
      std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - start).count());
}

}  // namespace

int Connection::left() const { return std::max(0, -milliseconds_since(deadline_)); }

bool Connection::fill(int milliseconds) {
  std::array<char, 16384> bytes;
  const ssize_t got = line_.receive(bytes.data(), bytes.size(), milliseconds);
  if (got <= 0) return false;
  buffer_.append(bytes.data(), static_cast<size_t>(got));
  return true;
}

bool Connection::begins() {
  constexpr int step_ms = 100;
  if (!buffer_.empty()) return true;
  for (int waited = 0; waited < keep_alive_seconds * 1000 && !stopping_(); waited += step_ms) {
    if (fill(step_ms)) return true;
    if (line_.gone()) return false;
  }
  return false;
}

std::optional<Result<RequestHead>> Connection::next() {
  if (!begins()) return std::nullopt;
  deadline_ = Clock::now() + std::chrono::seconds(request_seconds);
  waited_ms_ = 0;
  // RFC 9112 section 2.2: an empty line before a request is passed over.
  if (buffer_ == "\r" && !fill(left())) return std::nullopt;
  if (buffer_.starts_with("\r\n")) buffer_.erase(0, 2);
  size_t end;
  while ((end = head_end(buffer_)) == std::string::npos) {
    if (Problems problems = head_so_far(buffer_); !problems.empty()) {
      close_ = true;
      return tl::unexpected(std::move(problems));
    }
    if (!fill(left())) return std::nullopt;
  }
  auto head = read_head(std::string_view(buffer_).substr(0, end));
  close_ = !head || head->close;
  if (!head) return head;
  buffer_.erase(0, end);
  head_ = head->text;
  head_read_ = 0;
  body_left_ = head->body_bytes;
  return head;
}

ssize_t Connection::read(char* out, size_t size) {
  if (head_read_ < head_.size()) {
    const size_t taken = head_.copy(out, size, head_read_);
    head_read_ += taken;
    return static_cast<ssize_t>(taken);
  }
  if (body_left_ == 0) return 0;
  if (buffer_.empty() && !fill(left())) return -1;
  const size_t taken = buffer_.copy(out, std::min(size, body_left_));
  buffer_.erase(0, taken);
  body_left_ -= taken;
  return static_cast<ssize_t>(taken);
}

ssize_t Connection::write(const char* bytes, size_t size) {
  const auto start = Clock::now();
  const ssize_t sent = line_.send(bytes, size, std::min(write_seconds, answer_seconds - waited_ms_ / 1000) * 1000);
  waited_ms_ += milliseconds_since(start);
  return sent;
}

void Connection::linger() {
  constexpr int milliseconds = 500;
  constexpr size_t bytes_max = 2 * body_bytes_max;
  deadline_ = Clock::now() + std::chrono::milliseconds(milliseconds);
  for (size_t taken = 0; taken < bytes_max && fill(left()); buffer_.clear()) taken += buffer_.size();
}

}  // namespace strandline::server
