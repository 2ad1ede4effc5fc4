#include "seal.h"

#include <sodium.h>

#include <algorithm>
#include <cctype>

namespace strandline::store {

namespace {

constexpr std::size_t nonce_bytes = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
constexpr std::size_t tag_bytes = crypto_aead_xchacha20poly1305_ietf_ABYTES;
constexpr std::size_t step = 64;        // of a filled text
constexpr std::size_t check_bytes = 4;  // of a key in words

const unsigned char* raw(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }
unsigned char* raw(std::string& text) { return reinterpret_cast<unsigned char*>(text.data()); }

std::string hash(std::string_view text, std::size_t bytes) {
  std::string out(bytes, '\0');
  crypto_generichash(raw(out), bytes, raw(text), text.size(), nullptr, 0);
  return out;
}

constexpr std::string_view consonants = "bdfghjklmnprstvz", vowels = "aiou";

// Five letters: consonant (4 bits), vowel (2), consonant, vowel, consonant.
std::string word_of(unsigned bits) {
  return {consonants[bits >> 12 & 15], vowels[bits >> 10 & 3], consonants[bits >> 6 & 15], vowels[bits >> 4 & 3],
          consonants[bits & 15]};
}

std::optional<unsigned> bits_of(std::string_view word) {
  constexpr std::size_t letters = 5;
  unsigned bits = 0;
  for (std::size_t i = 0; i < letters; ++i) {
    const bool vowel = i % 2 == 1;
    const auto at = (vowel ? vowels : consonants).find(word[i]);
    if (at == std::string_view::npos) return std::nullopt;
    bits = bits << (vowel ? 2u : 4u) | static_cast<unsigned>(at);
  }
  return bits;
}

}  // namespace

Key Key::made() {
  Key out;
  randombytes_buf(out.bytes_.data(), size);
  return out;
}

std::optional<Key> Key::of(std::string_view bytes) {
  if (bytes.size() != size) return std::nullopt;
  Key out;
  std::copy(bytes.begin(), bytes.end(), out.bytes_.begin());
  return out;
}

Key::~Key() { sodium_memzero(bytes_.data(), size); }

std::string Key::seal(std::string_view plain, std::string_view beside) const {
  std::string box(nonce_bytes + plain.size() + tag_bytes, '\0');
  randombytes_buf(box.data(), nonce_bytes);
  crypto_aead_xchacha20poly1305_ietf_encrypt(raw(box) + nonce_bytes, nullptr, raw(plain), plain.size(), raw(beside),
                                             beside.size(), nullptr, raw(box),
                                             reinterpret_cast<const unsigned char*>(bytes_.data()));
  return box;
}

std::optional<std::string> Key::open(std::string_view box, std::string_view beside) const {
  if (box.size() < nonce_bytes + tag_bytes) return std::nullopt;
  std::string out(box.size() - nonce_bytes - tag_bytes, '\0');
  const int opened = crypto_aead_xchacha20poly1305_ietf_decrypt(
      raw(out), nullptr, nullptr, raw(box) + nonce_bytes, box.size() - nonce_bytes, raw(beside), beside.size(),
      raw(box), reinterpret_cast<const unsigned char*>(bytes_.data()));
  return opened == 0 ? std::optional(std::move(out)) : std::nullopt;
}

std::string Key::digest(std::string_view text) const {
  std::string out(size, '\0');
  crypto_generichash(raw(out), size, raw(text), text.size(), reinterpret_cast<const unsigned char*>(bytes_.data()),
                     size);
  return out;
}

std::string beside(std::initializer_list<std::string_view> fields) {
  std::string out;
  for (const std::string_view field : fields) out.append(std::to_string(field.size())).append(":").append(field);
  return out;
}

std::string filled(std::string text) {
  const std::string length = std::to_string(text.size()) + ' ';
  text.insert(0, length);
  text.resize((text.size() + step - 1) / step * step, ' ');
  return text;
}

std::optional<std::string> unfilled(std::string text) {
  std::size_t length = 0, at = 0;
  for (; at < text.size() && text[at] >= '0' && text[at] <= '9' && length < text.size(); ++at)
    length = length * 10 + static_cast<std::size_t>(text[at] - '0');
  if (at == text.size() || text[at] != ' ' || length > text.size() - at - 1) return std::nullopt;
  return text.substr(at + 1, length);
}

std::string words_of(const Key& key) {
  const std::string bytes = key.bytes() + hash(key.bytes(), check_bytes);
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 2) {
    const auto high = static_cast<unsigned char>(bytes[i]), low = static_cast<unsigned char>(bytes[i + 1]);
    out += (i ? " " : "") + word_of(high * 256u + low);
  }
  return out;
}

std::optional<Key> key_of_words(std::string_view words) {
  constexpr std::size_t letters = 5;
  std::string plain, bytes;
  for (const char c : words) {
    if (std::isalpha(static_cast<unsigned char>(c))) plain += static_cast<char>(std::tolower(c));
  }
  if (plain.size() != (Key::size + check_bytes) / 2 * letters) return std::nullopt;
  for (std::size_t i = 0; i < plain.size(); i += letters) {
    const auto bits = bits_of(std::string_view(plain).substr(i, letters));
    if (!bits) return std::nullopt;
    bytes += static_cast<char>(*bits >> 8);
    bytes += static_cast<char>(*bits & 255);
  }
  const std::string secret = bytes.substr(0, Key::size);
  return hash(secret, check_bytes) == bytes.substr(Key::size) ? Key::of(secret) : std::nullopt;
}

}  // namespace strandline::store
