#include "leaf.h"

#include <condition_variable>
#include <iostream>

namespace strandline::server {

Leaf::Leaf(Authority authority, Names names, Now now)
    : authority_(std::move(authority)), names_of_(std::move(names)), now_(std::move(now)) {
  renew();
}

bool Leaf::renew() {
  constexpr std::int64_t day_s = 86400, used_days = leaf_days * 2 / 3;
  const std::int64_t now = now_();
  std::vector<std::string> names = names_of_();
  const std::lock_guard lock(mutex_);
  const bool young = now >= made_ && now - made_ < used_days * day_s;
  if (context_ && (names.empty() || (young && names == names_))) return false;  // without a network the last one stays
  if (names.empty()) names = {"127.0.0.1"};
  context_ = leaf_context(authority_, names, now);
  names_ = std::move(names), made_ = now;
  return true;
}

void Leaf::keep_renewed() {
  thread_ = std::jthread([this](const std::stop_token& stop) {
    std::mutex mutex;
    std::condition_variable_any bell;
    std::unique_lock lock(mutex);
    while (!bell.wait_for(lock, stop, std::chrono::minutes(1), [] { return false; }) && !stop.stop_requested()) {
      try {
        renew();
      } catch (const std::exception& error) {  // the last one stays, and a minute later it is tried again
        std::cerr << "strandline: no new certificate was made: " << error.what() << '\n';
      }
    }
  });
}

std::shared_ptr<SSL_CTX> Leaf::context() const {
  const std::lock_guard lock(mutex_);
  return context_;
}

std::vector<std::string> Leaf::names() const {
  const std::lock_guard lock(mutex_);
  return names_;
}

}  // namespace strandline::server
