#include "chain.h"

#include <sodium.h>

namespace strandline::store {

namespace {

void add(crypto_generichash_state& state, const std::string& field) {
  unsigned char length[8];
  for (int i = 0; i < 8; ++i) length[i] = static_cast<unsigned char>(field.size() >> (8 * i));
  crypto_generichash_update(&state, length, sizeof length);
  crypto_generichash_update(&state, reinterpret_cast<const unsigned char*>(field.data()), field.size());
}

}  // namespace

std::string hash_of(std::initializer_list<std::string> fields) {
  constexpr std::size_t bytes = 32;
  crypto_generichash_state state;
  crypto_generichash_init(&state, nullptr, 0, bytes);
  for (const std::string& field : fields) add(state, field);
  std::string out(bytes, '\0');
  crypto_generichash_final(&state, reinterpret_cast<unsigned char*>(out.data()), bytes);
  return out;
}

std::string chain_hash(const std::string& before, const Fact& f) {
  return hash_of({before, std::to_string(f.store_seq), f.id, f.stream, std::to_string(f.seq), f.made_at, f.kind,
                  std::to_string(f.version), f.about, f.key, f.body});
}

std::string hexadecimal(const std::string& bytes) {
  std::string out(bytes.size() * 2 + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  out.pop_back();
  return out;
}

std::string content_hash(const std::string& text) { return hexadecimal(hash_of({text})); }

}  // namespace strandline::store
