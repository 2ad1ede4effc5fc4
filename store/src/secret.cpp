#include "strandline/store/secret.h"

#include <sodium.h>
#include <utf8proc.h>

#include <array>
#include <cstdlib>
#include <memory>
#include <new>
#include <stdexcept>

#include "strandline/store/plain.h"

namespace strandline::store {

namespace {

constexpr std::size_t mebibyte = 1u << 20;

void expect_randomness() {
  if (sodium_init() < 0) throw std::runtime_error("no source of randomness");
}

// A secret as it is hashed; wiped when it goes.
class Composed {
 public:
  explicit Composed(std::string_view text) {
    utf8proc_uint8_t* mapped = nullptr;
    constexpr int how = UTF8PROC_COMPAT | UTF8PROC_COMPOSE | UTF8PROC_STABLE;
    // Several options at once are a value of the library's enumeration that has no name.
    // NOLINTNEXTLINE(clang-analyzer-optin.core.EnumCastOutOfRange)
    const auto options = static_cast<utf8proc_option_t>(how);
    const utf8proc_ssize_t length = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                                 static_cast<utf8proc_ssize_t>(text.size()), &mapped, options);
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> freed(mapped, &std::free);
    if (length == UTF8PROC_ERROR_NOMEM) throw std::bad_alloc();
    whole_ = length >= 0;
    text_ = whole_ ? std::string(reinterpret_cast<const char*>(mapped), static_cast<std::size_t>(length))
                   : std::string(text);
    if (whole_) sodium_memzero(mapped, static_cast<std::size_t>(length));
  }
  ~Composed() { sodium_memzero(text_.data(), text_.size()); }
  Composed(const Composed&) = delete;
  Composed& operator=(const Composed&) = delete;

  const std::string& text() const { return text_; }
  bool whole() const { return whole_; }

 private:
  std::string text_;
  bool whole_ = false;
};

template <std::size_t N>
std::string base64(const std::array<unsigned char, N>& bytes, int variant) {
  std::string out(sodium_base64_ENCODED_LEN(N, sodium_base64_VARIANT_ORIGINAL), '\0');
  sodium_bin2base64(out.data(), out.size(), bytes.data(), N, variant);
  out.resize(out.find('\0'));
  return out;
}

template <std::size_t N>
std::array<unsigned char, N> random_bytes() {
  expect_randomness();
  std::array<unsigned char, N> out{};
  randombytes_buf(out.data(), N);
  return out;
}

}  // namespace

std::string hash_secret(std::string_view secret, const HashCost& cost) {
  expect_randomness();
  const Composed composed(secret);
  std::string out(crypto_pwhash_STRBYTES, '\0');
  const int done = crypto_pwhash_str_alg(
      out.data(), composed.text().data(), composed.text().size(), static_cast<unsigned long long>(cost.passes),
      static_cast<std::size_t>(cost.mebibytes) * mebibyte, crypto_pwhash_ALG_ARGON2ID13);
  if (done != 0) throw std::bad_alloc();  // the one reason that libsodium knows
  out.resize(out.find('\0'));
  return out;
}

std::string nobodys_hash(const HashCost& cost) {
  constexpr int unpadded = sodium_base64_VARIANT_ORIGINAL_NO_PADDING;
  constexpr std::size_t kibibytes = 1024;
  return "$argon2id$v=19$m=" + std::to_string(static_cast<std::size_t>(cost.mebibytes) * kibibytes) +
         ",t=" + std::to_string(cost.passes) + ",p=1$" + base64(random_bytes<crypto_pwhash_SALTBYTES>(), unpadded) +
         '$' + base64(random_bytes<32>(), unpadded);
}

bool is_secret(const std::string& hash, std::string_view secret) {
  if (hash.empty() || hash.size() >= crypto_pwhash_STRBYTES) return false;
  const Composed composed(secret);
  return crypto_pwhash_str_verify(hash.c_str(), composed.text().data(), composed.text().size()) == 0;
}

std::size_t signs_of(std::string_view secret) {
  const Composed composed(secret);
  if (!composed.whole()) return 0;
  std::size_t out = 0;
  constexpr unsigned char continues_mask = 0xC0, continues = 0x80;
  for (const char c : composed.text()) out += (static_cast<unsigned char>(c) & continues_mask) != continues;
  return out;
}

std::string random_token() { return base64(random_bytes<32>(), sodium_base64_VARIANT_URLSAFE_NO_PADDING); }

std::string token_digest(std::string_view token) {
  std::array<unsigned char, crypto_generichash_BYTES> hash{};
  crypto_generichash(hash.data(), hash.size(), reinterpret_cast<const unsigned char*>(token.data()), token.size(),
                     nullptr, 0);
  std::string out(hash.size() * 2 + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), hash.data(), hash.size());
  out.pop_back();
  return out;
}

}  // namespace strandline::store
