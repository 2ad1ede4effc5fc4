// Sealing with libsodium's XChaCha20-Poly1305: a box is a random nonce (24 bytes), what it hides, and a tag (16 bytes);
// it opens only with its key and beside the same words it was sealed beside.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace strandline::store {

// 32 secret bytes, wiped when they go.
class Key {
 public:
  static constexpr std::size_t size = 32;
  static Key made();
  static std::optional<Key> of(std::string_view bytes);
  Key(const Key&) = default;
  Key& operator=(const Key&) = default;
  ~Key();

  std::string bytes() const { return {bytes_.begin(), bytes_.end()}; }
  std::string seal(std::string_view plain, std::string_view beside) const;
  std::optional<std::string> open(std::string_view box, std::string_view beside) const;
  // BLAKE2b-256 under this key: tells the same text again, and nothing to whoever lacks the key.
  std::string digest(std::string_view text) const;

 private:
  Key() = default;
  std::array<char, size> bytes_{};
};

// Fields of what a box lies beside, told apart by their lengths.
std::string beside(std::initializer_list<std::string_view> fields);

// A text filled up so that its box tells its length only to the next 64 bytes; and without that again.
std::string filled(std::string text);
std::optional<std::string> unfilled(std::string text);

// A key as 18 words of five letters that can be said and typed (proquints, arXiv:0901.4016: 16 bits a word), the last
// two for errors of typing; and read back, whatever stands between the words. Nothing when a word is wrong.
std::string words_of(const Key& key);
std::optional<Key> key_of_words(std::string_view words);

}  // namespace strandline::store
