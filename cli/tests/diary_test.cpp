// The diary from the command line, on a salon file.
#include <gtest/gtest.h>

#include <filesystem>

#include "run_helper.h"
#include "strandline/salon/world.h"

namespace strandline::cli {
namespace {

class Diary : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (std::filesystem::temp_directory_path() / "strandline-diary-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    ASSERT_TRUE(salon::make_salon(folder_ / "salon.sqlite", [](salon::World&) { return Result<void>(); }));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  Ran diary(std::vector<std::string> words, const std::string& typed = "") const {
    words.insert(words.begin(), "diary");
    words.insert(words.end(), {"--db", folder_ / "salon.sqlite"});
    return ran(words, typed);
  }
  std::filesystem::path folder_;
};

TEST_F(Diary, KeepsALineFindsItsHourTakenAndCallsItOff) {
  const std::string line =
      R"({"starts_at": "2031-03-12T09:00:00Z", "minutes": 60, "kind": "other", "client": "Ana", "wish": "gold"})";
  const Ran made = diary({"book", "-"}, line);
  ASSERT_EQ(made.code, done) << made.err;
  EXPECT_NE(made.out.find("2031-03-12T09:00:00Z  60 min  other, booked  Ana: gold  ["), std::string::npos) << made.out;
  const Ran taken = diary({"book", "-"}, line);
  EXPECT_EQ(taken.code, refused);
  EXPECT_NE(taken.err.find("2031-03-12T09:00:00Z"), std::string::npos) << taken.err;
  EXPECT_EQ(diary({"book", "-", "--beside"}, line).code, done);

  const std::vector<std::string> day{"--from", "2031-03-12T08:00:00Z", "--days", "1"};
  const auto with_day = [&](std::vector<std::string> words) {
    words.insert(words.end(), day.begin(), day.end());
    return diary(words).out;
  };
  EXPECT_EQ(with_day({"free", "60"}).find("2031-03-12T09:00:00Z"), std::string::npos);
  EXPECT_NE(with_day({"free", "60"}).find("2031-03-12T10:00:00Z"), std::string::npos);
  const auto id_at = made.out.rfind('[');
  const std::string id = made.out.substr(id_at + 1, made.out.rfind(']') - id_at - 1);
  EXPECT_NE(diary({"cancel", id}).out.find("cancelled"), std::string::npos);
  const auto json = wire::parse(with_day({"list", "--json"}));
  ASSERT_TRUE(json);
  EXPECT_EQ(json->size(), 2u);
}

TEST_F(Diary, SaysWhichTestIsMissingAndRefusesWhatItCannotRead) {
  ASSERT_EQ(diary({"book", "-"}, R"({"starts_at": "2031-03-12T09:00:00Z", "minutes": 90})").code, done);
  EXPECT_NE(diary({"tests"}).out.find("to be made by 2031-03-10T09:00:00Z"), std::string::npos);
  EXPECT_EQ(diary({"due", "--day", "2031-03-12"}).code, done);
  EXPECT_EQ(diary({"due", "--day", "soon"}).code, refused);
  EXPECT_EQ(diary({"book", "-"}, "{").code, refused);
  EXPECT_EQ(diary({"book", "-"}, R"({"starts_at": "noon", "minutes": 90})").code, refused);
  EXPECT_EQ(diary({"cancel", "nobody"}).code, refused);
}

}  // namespace
}  // namespace strandline::cli
