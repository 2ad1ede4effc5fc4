// The documents that fuzzing of the verbs begins with are ones that these verbs answer: a rule that is new, or a verb
// of another name, must not leave it with refusals alone.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <map>
#include <random>
#include <set>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace strandline::salon {
namespace {

TEST(Seeds, EveryVerbAnswersItsOwn) {
  const House house = *open_house({});
  std::set<std::string> verbs;
  for (const auto& file : std::filesystem::directory_iterator("salon/fuzz/corpus/verbs_fuzz")) {
    const std::string seed = *read_file(file.path(), 1u << 20);
    const std::string verb = seed.substr(0, seed.find('\n'));
    verbs.insert(verb);
    auto document = wire::parse(seed.substr(verb.size())).value();
    document["options"]["scenarios"] = 1;
    const auto got = answer(verb, document, house.sources(), {}, {.range = "demi", .product = "permanent-6-gold"});
    EXPECT_TRUE(got) << verb << ' ' << got.error()[0].code << ' ' << got.error()[0].path;
  }
  EXPECT_EQ(verbs.size(), 14u);
}

// Another small head of the same shape, with levels, white and size of its own.
void redraw(wire::Json& value, std::mt19937_64& random) {
  const auto from = [&](int least, int most) { return std::uniform_int_distribution(least, most)(random); };
  if (value.is_array()) {
    for (wire::Json& part : value) redraw(part, random);
    return;
  }
  if (!value.is_object()) return;
  for (auto& [key, part] : value.items()) {
    if (key == "level" || key == "natural_level")
      part = from(2, 20) / 2.0;
    else if (key == "white_percent")
      part = from(0, 20) * 5;
    else if (key == "scalp_cm2")
      part = from(20, 300);
    else if (key != "running" && key != "bowls")
      redraw(part, random);
  }
}

// STRANDLINE_HEADS (3): how many heads each verb is asked of.
TEST(Seeds, SmallHeadsAreAnsweredOrRefusedByName) {
  const House house = *open_house({});
  const char* asked = std::getenv("STRANDLINE_HEADS");
  const int heads = asked ? std::atoi(asked) : 3;
  std::map<std::string, int> answered;
  for (const auto& file : std::filesystem::directory_iterator("salon/fuzz/corpus/verbs_fuzz")) {
    const std::string seed = *read_file(file.path(), 1u << 20);
    const std::string verb = seed.substr(0, seed.find('\n'));
    std::mt19937_64 random(std::hash<std::string>()(verb));
    for (int i = 0; i < heads; ++i) {
      auto document = wire::parse(seed.substr(verb.size())).value();
      redraw(document, random);
      document["options"]["scenarios"] = 1;
      document["options"]["seconds"] = 1;
      const auto got = answer(verb, document, house.sources(), {}, {.range = "demi", .product = "permanent-6-gold"});
      answered[verb] += got.has_value();
      if (!got) EXPECT_FALSE(got.error().empty() || got.error()[0].code.empty()) << verb << document.dump();
      if (got) EXPECT_FALSE(wire::print(*got).empty());
    }
    if (asked) std::printf("%s: %d of %d answered\n", verb.c_str(), answered[verb], heads);
  }
  EXPECT_EQ(answered.at("assess"), heads);
}

}  // namespace
}  // namespace strandline::salon
