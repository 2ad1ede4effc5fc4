#include "strandline/store/secret.h"

#include <gtest/gtest.h>

#include <chrono>
#include <set>

namespace strandline::store {
namespace {

const HashCost cheap{1, 1};

TEST(Secret, OpensWithItselfOnly) {
  const std::string hash = hash_secret("grey ash at the nape", cheap);
  EXPECT_TRUE(hash.starts_with("$argon2id$v=19$m=1024,t=1,p=1$")) << hash;
  EXPECT_TRUE(is_secret(hash, "grey ash at the nape"));
  for (const char* other : {"grey ash at the nap", "grey ash at the nape ", "Grey ash at the nape", ""})
    EXPECT_FALSE(is_secret(hash, other)) << other;
  EXPECT_NE(hash, hash_secret("grey ash at the nape", cheap)) << "each has its own salt";
  for (const char* none : {"", "x", "$argon2id$"}) EXPECT_FALSE(is_secret(none, "")) << none;
}

// Argon2id of RFC 9106 by its reference implementation (libargon2 20171227), salt "somesaltsomesalt".
TEST(Secret, IsHashedAsPublished) {
  EXPECT_TRUE(is_secret(
      "$argon2id$v=19$m=1024,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$CKGe5/bX9YnCq2rxjW5yQXKxn31v1GKzhDCrMc6r6vA", "password"));
}

TEST(Secret, IsTheSameFromEveryKeyboard) {
  // An e with an acute accent as one sign, and as e and an accent.
  const std::string hash = hash_secret("caf\xC3\xA9 noir de lune", cheap);
  EXPECT_TRUE(is_secret(hash, "cafe\xCC\x81 noir de lune"));
  EXPECT_EQ(signs_of("caf\xC3\xA9"), 4u);
  EXPECT_EQ(signs_of("cafe\xCC\x81"), 4u);
  EXPECT_EQ(signs_of("\xFF\xFE"), 0u) << "is no text";
}

TEST(Secret, OfNobodyCostsTheSameAndOpensWithNothing) {
  const std::string hash = nobodys_hash({2, 8});
  EXPECT_TRUE(hash.starts_with("$argon2id$v=19$m=8192,t=2,p=1$")) << hash;
  EXPECT_EQ(hash.size(), hash_secret("x", {2, 8}).size());
  const auto timed = [](const std::string& of) {
    auto best = std::chrono::steady_clock::duration::max();
    for (int i = 0; i < 5; ++i) {
      const auto begin = std::chrono::steady_clock::now();
      EXPECT_FALSE(is_secret(of, "guess"));
      best = std::min(best, std::chrono::steady_clock::now() - begin);
    }
    return std::chrono::duration<double>(best).count();
  };
  // Refused unread it would take microseconds.
  EXPECT_GT(timed(hash), timed(hash_secret("x", {2, 8})) / 5);
}

TEST(Secret, TokensAreRandomAndKnownByTheirDigestOnly) {
  std::set<std::string> seen;
  for (int i = 0; i < 1000; ++i) {
    const std::string token = random_token();
    EXPECT_EQ(token.size(), 43u);
    EXPECT_EQ(token.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"),
              std::string::npos);
    EXPECT_TRUE(seen.insert(token).second);
  }
  // RFC 7693's function with 32 bytes, by `b2sum -l 256`.
  EXPECT_EQ(token_digest("abc"), "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
}

}  // namespace
}  // namespace strandline::store
