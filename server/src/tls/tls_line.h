// One connection over TLS.
#pragma once

#include <mutex>

#include "../socket_line.h"
#include "authority.h"

namespace strandline::server {

class TlsLine : public SocketLine {
 public:
  // Keeps `context` as long as it lives.
  TlsLine(socket_t socket, std::shared_ptr<SSL_CTX> context);

  // Agrees on keys. False when the other end did not within its seconds, or speaks something else.
  bool shake_hands();

  ssize_t receive(char* out, size_t size, int milliseconds) override;
  ssize_t send(const char* bytes, size_t size, int milliseconds) override;
  bool gone() const override;
  const SSL* tls() const override { return tls_.get(); }
  void finish() override;

 private:
  // What `step` came to within the time: > 0, 0 = the other end has finished, -1.
  template <class Step>
  ssize_t until_done(int milliseconds, const Step& step);

  std::shared_ptr<SSL_CTX> context_;
  mutable std::mutex mutex_;  // whether the client is gone is asked from threads that search
  Owned<SSL> tls_;
};

}  // namespace strandline::server
