// The documents that fuzzing of the verbs begins with are ones that these verbs answer: a rule that is new, or a verb
// of another name, must not leave it with refusals alone.
#include <gtest/gtest.h>

#include <filesystem>
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

}  // namespace
}  // namespace strandline::salon
