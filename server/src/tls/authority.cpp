#include "authority.h"

#include <arpa/inet.h>
#include <fcntl.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <openssl/pem.h>
#include <openssl/x509v3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <new>

namespace strandline::server {

namespace {

constexpr std::int64_t day_s = 86400;

// OpenSSL fails here for want of memory or randomness only: the names were looked at before.
void must(bool done) {
  if (!done) throw std::bad_alloc();
}

template <class T>
Owned<T> had(T* made) {
  must(made != nullptr);
  return Owned<T>(made);
}

void extend(X509* certificate, X509* issuer, int what, const std::string& value) {
  X509V3_CTX context;
  X509V3_set_ctx(&context, issuer, certificate, nullptr, nullptr, 0);
  const auto extension = had(X509V3_EXT_conf_nid(nullptr, &context, what, value.c_str()));
  must(X509_add_ext(certificate, extension.get(), -1) == 1);
}

// Unsigned and without a subject's rights: version, serial, key, names, time.
Owned<X509> blank(EVP_PKEY* key, const std::string& name, std::int64_t now, int days) {
  auto out = had(X509_new());
  constexpr int version_3 = 2, serial_bits = 127;
  must(X509_set_version(out.get(), version_3) == 1);
  const auto serial = had(BN_new());
  must(BN_rand(serial.get(), serial_bits, BN_RAND_TOP_ONE, BN_RAND_BOTTOM_ANY) == 1);
  must(BN_to_ASN1_INTEGER(serial.get(), X509_get_serialNumber(out.get())) != nullptr);
  must(ASN1_TIME_adj(X509_getm_notBefore(out.get()), now, -1, 0) != nullptr);  // clocks of devices differ
  must(ASN1_TIME_adj(X509_getm_notAfter(out.get()), now, days, 0) != nullptr);
  must(X509_set_pubkey(out.get(), key) == 1);
  must(X509_NAME_add_entry_by_txt(X509_get_subject_name(out.get()), "CN", MBSTRING_UTF8,
                                  reinterpret_cast<const unsigned char*>(name.c_str()), -1, -1, 0) == 1);
  return out;
}

Authority made_now(std::int64_t now) {
  Authority out;
  out.key = had(EVP_EC_gen("P-256"));
  out.certificate = blank(out.key.get(), "Strandline, this salon's own authority", now, authority_days);
  X509* c = out.certificate.get();
  must(X509_set_issuer_name(c, X509_get_subject_name(c)) == 1);
  extend(c, c, NID_basic_constraints, "critical,CA:TRUE,pathlen:0");
  extend(c, c, NID_key_usage, "critical,keyCertSign,cRLSign");
  extend(c, c, NID_subject_key_identifier, "hash");
  // Whoever steals its key cannot speak for anybody outside such a network.
  extend(c, c, NID_name_constraints,
         "critical,permitted;DNS:local,permitted;IP:10.0.0.0/255.0.0.0,permitted;IP:172.16.0.0/255.240.0.0,"
         "permitted;IP:192.168.0.0/255.255.0.0,permitted;IP:169.254.0.0/255.255.0.0,permitted;IP:127.0.0.0/255.0.0.0,"
         "permitted;IP:fc00::/fe00::");
  must(X509_sign(c, out.key.get(), EVP_sha256()) != 0);
  return out;
}

tl::unexpected<Problems> problem(const char* code, const std::filesystem::path& path) {
  return tl::unexpected(Problems{{code, "", {{"detail", path.string()}}}});
}

Result<void> keep(const Authority& authority, const std::filesystem::path& path) {
  const auto memory = had(BIO_new(BIO_s_mem()));
  must(PEM_write_bio_PrivateKey(memory.get(), authority.key.get(), nullptr, nullptr, 0, nullptr, nullptr) == 1);
  must(PEM_write_bio_X509(memory.get(), authority.certificate.get()) == 1);
  const char* bytes = nullptr;
  const long size = BIO_get_mem_data(memory.get(), &bytes);
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, S_IRUSR | S_IWUSR);
  if (file < 0) return problem("authority_unwritable", path);
  const bool whole = ::write(file, bytes, static_cast<std::size_t>(size)) == size && ::fsync(file) == 0;
  if (::close(file) == 0 && whole) return {};
  ::unlink(path.c_str());
  return problem("authority_unwritable", path);
}

Result<Authority> read_back(const std::filesystem::path& path, std::int64_t now) {
  const auto file = Owned<BIO>(BIO_new_file(path.c_str(), "r"));
  Authority out;
  if (file) {
    out.key.reset(PEM_read_bio_PrivateKey(file.get(), nullptr, nullptr, nullptr));
    out.certificate.reset(PEM_read_bio_X509(file.get(), nullptr, nullptr, nullptr));
  }
  if (!out.key || !out.certificate || X509_check_private_key(out.certificate.get(), out.key.get()) != 1)
    return problem("authority_unreadable", path);
  time_t at = now + leaf_days * day_s;  // what it signs today must be valid as long
  if (X509_cmp_time(X509_get0_notAfter(out.certificate.get()), &at) < 0) return problem("authority_expired", path);
  return out;
}

std::string printed(const sockaddr* address) {
  std::array<char, INET6_ADDRSTRLEN> text{};
  const void* bytes = address->sa_family == AF_INET6
                          ? static_cast<const void*>(&reinterpret_cast<const sockaddr_in6*>(address)->sin6_addr)
                          : &reinterpret_cast<const sockaddr_in*>(address)->sin_addr;
  return inet_ntop(address->sa_family, bytes, text.data(), text.size()) != nullptr ? text.data() : "";
}

bool is_address(const std::string& name) {
  in6_addr any{};
  return inet_pton(AF_INET, name.c_str(), &any) == 1 || inet_pton(AF_INET6, name.c_str(), &any) == 1;
}

}  // namespace

std::string Authority::pem() const {
  const auto memory = had(BIO_new(BIO_s_mem()));
  must(PEM_write_bio_X509(memory.get(), certificate.get()) == 1);
  const char* bytes = nullptr;
  const long size = BIO_get_mem_data(memory.get(), &bytes);
  return {bytes, static_cast<std::size_t>(size)};
}

std::string Authority::fingerprint() const {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned size = 0;
  must(X509_digest(certificate.get(), EVP_sha256(), digest.data(), &size) == 1);
  std::string out;
  for (unsigned i = 0; i < size; ++i) {
    constexpr std::string_view signs = "0123456789ABCDEF";
    constexpr unsigned half = 4, low = 15;
    if (i > 0) out += ':';
    out += signs[digest[i] >> half];
    out += signs[digest[i] & low];
  }
  return out;
}

Result<Authority> open_authority(const std::filesystem::path& path, std::int64_t now) {
  struct stat found{};
  if (::lstat(path.c_str(), &found) == 0) return read_back(path, now);
  if (errno != ENOENT) return problem("authority_unreadable", path);
  Authority made = made_now(now);
  if (auto kept = keep(made, path); !kept) return tl::unexpected(kept.error());
  return made;
}

bool private_address(const std::string& address) {
  in_addr four{};
  in6_addr six{};
  if (inet_pton(AF_INET, address.c_str(), &four) == 1) {
    constexpr std::array<std::array<std::uint32_t, 2>, 5> nets{{{0x0A000000, 0xFF000000},
                                                                {0xAC100000, 0xFFF00000},
                                                                {0xC0A80000, 0xFFFF0000},
                                                                {0xA9FE0000, 0xFFFF0000},
                                                                {0x7F000000, 0xFF000000}}};
    const std::uint32_t bits = ntohl(four.s_addr);
    return std::any_of(nets.begin(), nets.end(), [&](const auto& net) { return (bits & net[1]) == net[0]; });
  }
  constexpr unsigned mask = 0xFE, unique_local = 0xFC;
  return inet_pton(AF_INET6, address.c_str(), &six) == 1 && (six.s6_addr[0] & mask) == unique_local;
}

std::vector<std::string> own_names() {
  std::vector<std::string> out;
  ifaddrs* all = nullptr;
  if (getifaddrs(&all) == 0) {
    for (const ifaddrs* one = all; one != nullptr; one = one->ifa_next) {
      if (one->ifa_addr == nullptr || (one->ifa_flags & IFF_LOOPBACK) != 0 || (one->ifa_flags & IFF_UP) == 0) continue;
      if (one->ifa_addr->sa_family != AF_INET && one->ifa_addr->sa_family != AF_INET6) continue;
      if (std::string text = printed(one->ifa_addr); private_address(text)) out.push_back(std::move(text));
    }
    freeifaddrs(all);
  }
  std::array<char, HOST_NAME_MAX + 1> host{};
  if (gethostname(host.data(), host.size() - 1) == 0) {
    std::string name(host.data());
    name.resize(std::min(name.find('.'), name.size()));
    const bool written = !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
    });
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (written) out.push_back(name + ".local");
  }
  return out;
}

Owned<SSL_CTX> leaf_context(const Authority& authority, const std::vector<std::string>& names, std::int64_t now) {
  const auto key = had(EVP_EC_gen("P-256"));
  const auto leaf = blank(key.get(), "Strandline", now, leaf_days);
  X509* const c = leaf.get();
  X509* const above = authority.certificate.get();
  must(X509_set_issuer_name(c, X509_get_subject_name(above)) == 1);
  std::string alternatives;
  for (const std::string& name : names)
    alternatives += (alternatives.empty() ? "" : ",") + std::string(is_address(name) ? "IP:" : "DNS:") + name;
  extend(c, above, NID_basic_constraints, "critical,CA:FALSE");
  extend(c, above, NID_key_usage, "critical,digitalSignature");
  extend(c, above, NID_ext_key_usage, "serverAuth");
  extend(c, above, NID_authority_key_identifier, "keyid");
  extend(c, above, NID_subject_alt_name, alternatives);
  must(X509_sign(c, authority.key.get(), EVP_sha256()) != 0);

  auto out = had(SSL_CTX_new(TLS_server_method()));
  SSL_CTX* const context = out.get();
  must(SSL_CTX_set_min_proto_version(context, TLS1_2_VERSION) == 1);
  must(SSL_CTX_set_cipher_list(context, "ECDHE+AESGCM:ECDHE+CHACHA20") == 1);
  SSL_CTX_set_options(context, SSL_OP_NO_RENEGOTIATION | SSL_OP_NO_COMPRESSION | SSL_OP_CIPHER_SERVER_PREFERENCE);
  SSL_CTX_set_mode(context, SSL_MODE_ENABLE_PARTIAL_WRITE | SSL_MODE_ACCEPT_MOVING_WRITE_BUFFER);
  SSL_CTX_set_session_cache_mode(context, SSL_SESS_CACHE_OFF);
  must(SSL_CTX_use_certificate(context, c) == 1);
  must(SSL_CTX_use_PrivateKey(context, key.get()) == 1);
  return out;
}

}  // namespace strandline::server
