#include "tls_line.h"

#include <fcntl.h>
#include <openssl/err.h>

#include <algorithm>
#include <chrono>
#include <climits>
#include <new>

namespace strandline::server {

namespace {

constexpr int handshake_ms = 10000;

int as_int(size_t size) { return static_cast<int>(std::min<size_t>(size, INT_MAX)); }

}  // namespace

TlsLine::TlsLine(socket_t socket, std::shared_ptr<SSL_CTX> context)
    : SocketLine(socket), context_(std::move(context)), tls_(SSL_new(context_.get())) {
  if (!tls_ || SSL_set_fd(tls_.get(), socket) != 1) throw std::bad_alloc();
  ::fcntl(socket, F_SETFL, ::fcntl(socket, F_GETFL) | O_NONBLOCK);
}

template <class Step>
ssize_t TlsLine::until_done(int milliseconds, const Step& step) {
  using Clock = std::chrono::steady_clock;
  const auto end = Clock::now() + std::chrono::milliseconds(milliseconds);
  for (;;) {
    int error = 0;
    {
      const std::lock_guard lock(mutex_);
      ERR_clear_error();
      const int got = step(tls_.get());
      if (got > 0) return got;
      error = SSL_get_error(tls_.get(), got);
    }
    if (error == SSL_ERROR_ZERO_RETURN) return 0;
    if (error != SSL_ERROR_WANT_READ && error != SSL_ERROR_WANT_WRITE) return -1;
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
    if (left <= 0 && milliseconds > 0) return -1;
    const short events = error == SSL_ERROR_WANT_READ ? POLLIN : POLLOUT;
    if (!ready(events, static_cast<int>(std::max<long>(0, left)))) return -1;
    milliseconds = std::max(milliseconds, 1);
  }
}

bool TlsLine::shake_hands() {
  return until_done(handshake_ms, [](SSL* tls) { return SSL_accept(tls); }) > 0;
}

ssize_t TlsLine::receive(char* out, size_t size, int milliseconds) {
  return until_done(milliseconds, [&](SSL* tls) { return SSL_read(tls, out, as_int(size)); });
}

ssize_t TlsLine::send(const char* bytes, size_t size, int milliseconds) {
  const ssize_t sent = until_done(milliseconds, [&](SSL* tls) { return SSL_write(tls, bytes, as_int(size)); });
  return sent == 0 ? -1 : sent;  // an end that takes nothing more is broken
}

bool TlsLine::gone() const {
  char byte = 0;
  const std::lock_guard lock(mutex_);
  ERR_clear_error();
  const int got = SSL_peek(tls_.get(), &byte, 1);
  if (got > 0) return false;
  const int error = SSL_get_error(tls_.get(), got);
  return error != SSL_ERROR_WANT_READ && error != SSL_ERROR_WANT_WRITE;
}

void TlsLine::finish() {
  {
    const std::lock_guard lock(mutex_);
    ERR_clear_error();
    if (SSL_is_init_finished(tls_.get()) == 1) SSL_shutdown(tls_.get());
  }
  SocketLine::finish();
}

}  // namespace strandline::server
