// The certificate that is served now: made anew before it ends, and when the addresses of this machine change.
#pragma once

#include <functional>
#include <mutex>
#include <thread>

#include "authority.h"

namespace strandline::server {

class Leaf {
 public:
  using Names = std::function<std::vector<std::string>()>;
  using Now = std::function<std::int64_t()>;  // s since 1970

  Leaf(Authority authority, Names names, Now now);

  // Makes a new one when the last has less than a third of its days left or the names are others. Whether it did.
  bool renew();
  // Calls renew() every minute from a thread of its own.
  void keep_renewed();

  std::shared_ptr<SSL_CTX> context() const;
  std::vector<std::string> names() const;
  const Authority& authority() const { return authority_; }

 private:
  Authority authority_;
  Names names_of_;
  Now now_;
  mutable std::mutex mutex_;
  std::shared_ptr<SSL_CTX> context_;
  std::vector<std::string> names_;
  std::int64_t made_ = 0;
  std::jthread thread_;
};

}  // namespace strandline::server
