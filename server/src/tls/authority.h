// The salon's own authority: a key and a certificate made once, which paired devices trust, and short-lived
// certificates of this machine made from it. It can speak for addresses of private networks and names in .local only.
#pragma once

#include <openssl/evp.h>
#include <openssl/ssl.h>
#include <openssl/x509.h>

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "strandline/result.h"

namespace strandline::server {

struct Freed {
  void operator()(X509* p) const { X509_free(p); }
  void operator()(EVP_PKEY* p) const { EVP_PKEY_free(p); }
  void operator()(SSL_CTX* p) const { SSL_CTX_free(p); }
  void operator()(SSL* p) const { SSL_free(p); }
  void operator()(BIO* p) const { BIO_free(p); }
  void operator()(BIGNUM* p) const { BN_free(p); }
  void operator()(X509_EXTENSION* p) const { X509_EXTENSION_free(p); }
};
template <class T>
using Owned = std::unique_ptr<T, Freed>;

struct Authority {
  Owned<X509> certificate;
  Owned<EVP_PKEY> key;

  std::string pem() const;          // of the certificate, for devices
  std::string fingerprint() const;  // SHA-256, "AB:CD:…", as devices show it
};

constexpr int authority_days = 3650, leaf_days = 30;

// The authority kept at `path`, made there when nothing is; its owner alone may read it. `now` in s since 1970.
// Problems {detail: the path}: authority_unreadable (never replaced by another), authority_expired,
// authority_unwritable.
Result<Authority> open_authority(const std::filesystem::path& path, std::int64_t now);

// Whether an address ("192.168.1.5") is one of a private network, or of this machine: nobody else's is signed for.
bool private_address(const std::string& address);
// Addresses of this machine in private networks, and its name in .local.
std::vector<std::string> own_names();

// A certificate for `names` from a day before `now` on, with a new key, ready to be served. Throws std::bad_alloc.
Owned<SSL_CTX> leaf_context(const Authority& authority, const std::vector<std::string>& names, std::int64_t now);

}  // namespace strandline::server
