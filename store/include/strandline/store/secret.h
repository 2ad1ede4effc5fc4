// What proves who somebody is: passphrases and PINs, kept as hashes that cost time and memory to try, and random
// tokens.
#pragma once

#include <string>
#include <string_view>

namespace strandline::store {

// What one hash takes (argon2id, RFC 9106), and whoever tries a stolen one again for each guess.
struct HashCost {
  int passes = 3;      // 1 … 100
  int mebibytes = 64;  // 1 … 4096
};

// Salt, cost and hash as one printable text. What two keyboards compose differently is the same secret (Unicode NFKC).
// Throws std::bad_alloc when there is not enough memory.
std::string hash_secret(std::string_view secret, const HashCost& cost);
// A hash that no secret has, which takes as long to try as any other of this cost.
std::string nobodys_hash(const HashCost& cost);
bool is_secret(const std::string& hash, std::string_view secret);
// How many signs (Unicode code points after NFKC) a secret has; 0 when it is not UTF-8.
std::size_t signs_of(std::string_view secret);

// 256 random bits, 43 letters, digits, - and _.
std::string random_token();
// BLAKE2b-256 of it, hexadecimal: tells a token again and does not tell it.
std::string token_digest(std::string_view token);

}  // namespace strandline::store
