// People from the command line of the salon's own machine.
#include <gtest/gtest.h>

#include <filesystem>

#include "run_helper.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class PeopleCommand : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-people-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    db_ = folder_ / "salon.sqlite";
    ASSERT_TRUE(salon::make_salon(db_, [](salon::World&) { return Result<void>(); }));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  Ran people(std::vector<std::string> words, const std::string& typed = "") const {
    words.insert(words.begin(), "people");
    words.insert(words.end(), {"--db", db_});
    return ran(words, typed);
  }

  std::filesystem::path folder_;
  std::string db_;
};

TEST_F(PeopleCommand, MakesASalonAndLooksAfterItsPeople) {
  EXPECT_NE(people({"list"}).out.find("nobody signs in"), std::string::npos);
  const Ran early = people({"add", "Bo", "--role", "colourist"}, "seven wet towels at nine\n");
  EXPECT_EQ(early.code, refused);
  EXPECT_NE(early.err.find("no owner yet"), std::string::npos) << early.err;
  const Ran nowhere = people({"add", "Ada", "--role", "owner", "--zone", "Nowhere"}, "brown tape on blue jars\n");
  EXPECT_EQ(nowhere.code, refused);
  EXPECT_NE(nowhere.err.find("\"Nowhere\" is no time zone"), std::string::npos) << nowhere.err;
  const Ran made =
      people({"add", "Ada Invented", "--role", "owner,colourist", "--zone", "Europe/Vienna", "--shelf", "empty"},
             "brown tape on blue jars\n");
  ASSERT_EQ(made.code, done) << made.err;
  EXPECT_NE(made.out.find("everybody signs in"), std::string::npos) << made.out;
  EXPECT_NE(ran({"shelf", "list", "--db", db_}).out.find("Our shelf"), std::string::npos);
  EXPECT_EQ(people({"add", "Bo", "--role", "assistant"}, "short\n").code, refused);
  EXPECT_EQ(people({"add", "Bo", "--role", "assistant"}, "seven wet towels at nine\n").code, done);
  EXPECT_EQ(people({"add", "Bo", "--role", "barber"}, "seven wet towels at nine\n").code, refused);
  EXPECT_EQ(people({"role", "bo", "--role", "colourist"}).code, done);
  EXPECT_EQ(people({"reset", "Bo"}, "nine wet towels at seven\n").code, done);
  EXPECT_EQ(people({"revoke", "Bo"}).code, done);
  EXPECT_EQ(people({"list"}).out, "Ada Invented  colourist, owner\nBo  colourist\n");
  EXPECT_EQ(people({"leave", "Bo"}).code, done);
  EXPECT_NE(people({"list"}).out.find("Bo  colourist  (left)"), std::string::npos);
  const Ran last = people({"leave", "Ada Invented"});
  EXPECT_EQ(last.code, refused);
  EXPECT_NE(last.err.find("the only owner"), std::string::npos) << last.err;
  EXPECT_EQ(people({"revoke", "Nobody"}).code, refused);
}

TEST_F(PeopleCommand, IsToldThatAServerHasTheFile) {
  const auto world = salon::real_world(db_);
  const Ran got = people({"list"});
  EXPECT_EQ(got.code, failed);
  EXPECT_NE(got.err.find("already running"), std::string::npos) << got.err;
}

}  // namespace
}  // namespace strandline::cli
