// Boxes, keys in words, and what stands in the clear.
#include "seal.h"

#include <set>

#include "salon_folder.h"

namespace strandline::store {
namespace {

namespace fs = std::filesystem;

constexpr const char* name = "Wilhelmina Quastenberg";
constexpr const char* answer = "xanthoxylum-rash";

std::string told() { return std::string(R"({"client":")") + name + R"(","answers":")" + answer + "\"}"; }

// Every file of the salon that holds one of these words.
std::set<std::string> holding(const SalonFolder& salon, const std::vector<std::string>& words) {
  std::set<std::string> out;
  for (const auto& file : fs::directory_iterator(fs::path(salon.path()).parent_path())) {
    std::ifstream in(file.path(), std::ios::binary);
    const std::string bytes(std::istreambuf_iterator<char>(in), {});
    for (const std::string& word : words) {
      if (bytes.find(word) != std::string::npos) out.insert(file.path().filename().string() + ": " + word);
    }
  }
  return out;
}

TEST(Seal, ABoxOpensWithItsKeyAndInItsPlaceOnly) {
  const Key key = Key::made(), other = Key::made();
  const std::string box = key.seal("thirty grams", "visit 1");
  EXPECT_EQ(key.open(box, "visit 1"), "thirty grams");
  EXPECT_FALSE(key.open(box, "visit 2"));
  EXPECT_FALSE(other.open(box, "visit 1"));
  EXPECT_NE(key.seal("thirty grams", "visit 1"), box);
  for (std::size_t i = 0; i < box.size(); ++i) {
    std::string changed = box;
    changed[i] ^= 1;
    EXPECT_FALSE(key.open(changed, "visit 1")) << i;
    EXPECT_FALSE(key.open(box.substr(0, i), "visit 1")) << i;
  }
}

// The algorithm is the published one: the test vector of draft-irtf-cfrg-xchacha-03, A.3.1.
TEST(Seal, IsXChaCha20Poly1305AsPublished) {
  std::string key, box;
  for (int i = 0x80; i <= 0x9f; ++i) key += static_cast<char>(i);
  const auto bytes = [](const char* hex) {
    std::string out;
    for (; *hex; hex += 2) out += static_cast<char>(std::stoi(std::string(hex, 2), nullptr, 16));
    return out;
  };
  box = bytes(
      "404142434445464748494a4b4c4d4e4f5051525354555657"
      "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb731c7f1b0b4aa6440bf3a82f4eda7e39ae64c6708c54c216"
      "cb96b72e1213b4522f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f76b2383565d3fff921f9664c97637da9768812f615c68b13"
      "b52ec0875924c1c7987947deafd8780acf49");
  EXPECT_EQ(Key::of(key)->open(box, bytes("50515253c0c1c2c3c4c5c6c7")),
            "Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, sunscreen "
            "would be it.");
}

TEST(Seal, ABoxTellsTheLengthOfWhatItHidesToSixtyFourBytesOnly) {
  EXPECT_EQ(filled("").size(), filled(std::string(60, 'x')).size());
  for (std::size_t n = 0; n < 300; ++n) EXPECT_EQ(unfilled(filled(std::string(n, 'x'))), std::string(n, 'x'));
  for (const char* none : {"", "x", "12", "9 abc", "99999999999999999999999 a"}) EXPECT_FALSE(unfilled(none)) << none;
}

TEST(Seal, AKeyGoesThroughWordsAndWrongWordsAreNoKey) {
  for (int i = 0; i < 200; ++i) {
    const Key key = Key::made();
    std::string words = words_of(key);
    EXPECT_EQ(key_of_words(words)->bytes(), key.bytes());
    EXPECT_EQ(std::count(words.begin(), words.end(), ' '), 17);
    std::string typed = "\n 1. ";
    for (const char c : words) typed += c == ' ' ? std::string(",\n 2. ") : std::string(1, static_cast<char>(c - 32));
    EXPECT_EQ(key_of_words(typed)->bytes(), key.bytes());
    char& letter = words[static_cast<std::size_t>(i) % words.size()];
    if (letter == ' ') continue;
    letter = letter == 'b' ? 'd' : letter == 'a' ? 'o' : letter == 'd' ? 'b' : 'a';
    EXPECT_FALSE(key_of_words(words)) << words;
  }
  EXPECT_FALSE(key_of_words(""));
  // The published examples: 127.0.0.1 is lusab babad.
  EXPECT_EQ(words_of(*Key::of(std::string("\x7f\0\0\1", 4) + std::string(28, '\0'))).substr(0, 11), "lusab babad");
}

TEST(Sealed, NothingOfAPersonStandsInTheClearInAnyFile) {
  const SalonFolder salon;
  salon.make();
  {
    const auto store = salon.open();
    for (int i = 0; i < 20; ++i) ASSERT_TRUE(store->save(draft("d" + std::to_string(i), "v", i, told(), "person")));
    ASSERT_TRUE(store->append(fact("f", "person", 0, told(), "person")));
    EXPECT_EQ(holding(salon, {name, answer}), std::set<std::string>{});
    EXPECT_EQ((*store->visit("v"))->body, told());
    EXPECT_EQ(store->facts()->front().body, told());
    EXPECT_EQ(store->visits({.find = "quasten", .client = {}})->size(), 1u);
    EXPECT_EQ(store->visits({.find = {}, .client = {}, .person = "person"})->size(), 1u);
  }
  EXPECT_EQ(holding(salon, {name, answer}), std::set<std::string>{});
  // The test would see it: what is not sealed is found.
  salon.open()->append(fact("g", "salon", 0, told()));
  EXPECT_EQ(holding(salon, {name, answer}).size(), 2u);
}

TEST(Sealed, WithoutItsKeyOrWithAnotherAFileIsRefusedByName) {
  const SalonFolder salon, other;
  salon.make(2);
  other.make(2);
  const std::string own = salon.bytes("-key");
  salon.put(std::nullopt, "-key");
  EXPECT_EQ(salon.refusal(), "store_key_missing");
  EXPECT_FALSE(fs::exists(salon.path() + "-key")) << "no new key hides that";
  salon.write(other.bytes("-key"), "-key");
  EXPECT_EQ(salon.refusal(), "store_key_wrong");
  for (const char* none : {"", "strandline-key 1 abcd\n", "nonsense\n"}) {
    salon.write(none, "-key");
    EXPECT_EQ(salon.refusal(), "store_key_unreadable") << none;
  }
  salon.write(own, "-key");
  EXPECT_EQ(salon.refusal(), "opened") << "nothing was lost meanwhile";
}

TEST(Sealed, TheKeyMayLieElsewhere) {
  const SalonFolder salon, stick;
  auto options = salon.options();
  options.key = stick.path("salon.key");
  ASSERT_TRUE(Store::make(options, [](Store& store) { return store.save(draft("a", "v", 0)).map([](Save) {}); }));
  EXPECT_FALSE(fs::exists(salon.path() + "-key"));
  EXPECT_TRUE((*(*Store::open(options))->visit("v"))->client == "A");
  EXPECT_EQ(salon.refusal(), "store_key_missing");
}

TEST(Sealed, WhoWasErasedCanBeReadByNobodyAndComesBackWithNoOlderFile) {
  const SalonFolder salon;
  salon.make();
  std::string older;
  {
    const auto store = salon.open();
    ASSERT_TRUE(store->append(fact("f", "person", 0, told(), "person")));
    ASSERT_TRUE(store->append(fact("g", "other", 0, told(), "other")));
    ASSERT_TRUE(store->save(draft("a", "v", 0, told(), "person")));
    ASSERT_TRUE(store->save(draft("b", "w", 0, told(), "other")));
  }
  older = salon.bytes();
  for (const bool restored : {false, true}) {
    if (restored) {
      salon.write(older);
      salon.put(std::nullopt, "-head");
    }
    const auto store = salon.open();
    if (!restored) ASSERT_TRUE(store->erase("person"));
    const auto facts = *store->facts();
    ASSERT_EQ(facts.size(), 2u);
    EXPECT_TRUE(facts[0].closed);
    EXPECT_EQ(facts[0].body, "");
    EXPECT_FALSE(facts[1].closed);
    EXPECT_FALSE(*store->visit("v"));
    EXPECT_TRUE(*store->visit("w"));
    EXPECT_EQ(store->visits()->size(), 1u);
    EXPECT_EQ(store->append(fact("h", "person", 1, "{}", "person")).error().code, "store_erased");
    EXPECT_EQ(*store->verify(), std::nullopt) << "the chain holds without what was erased";
  }
}

// Cut off between the list and the file, the erasure is done at the next opening.
TEST(Sealed, AnErasureThatWasCutOffIsDoneAtTheNextOpening) {
  const SalonFolder salon;
  salon.make();
  salon.open()->append(fact("f", "person", 0, told(), "person"));
  salon.write("\nperson\n", "-key-erased");
  EXPECT_TRUE(salon.open()->facts()->front().closed);
}

}  // namespace
}  // namespace strandline::store
