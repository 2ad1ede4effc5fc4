// fade and grow: the weeks after the visit.
#include <gtest/gtest.h>

#include "run_helper.h"
#include "strandline/wire/json.h"

namespace strandline::cli {
namespace {

TEST(Fade, TellsTheToneWeekByWeek) {
  const Ran r = ran({"fade", demo("my_own_bowls"), "--washes", "4", "--weeks", "6"});
  EXPECT_EQ(r.code, 0) << r.err;
  EXPECT_NE(r.out.find("4 washes a week"), std::string::npos) << r.out;
  EXPECT_NE(r.out.find("week"), std::string::npos);
}

TEST(Fade, AnswersAsJson) {
  const Ran r = ran({"fade", demo("my_own_bowls"), "--json", "--weeks", "4"});
  ASSERT_EQ(r.code, 0) << r.err;
  const auto json = wire::parse(r.out);
  ASSERT_TRUE(json);
  EXPECT_EQ(json->at("schema"), "strandline.fade/1");
  for (const auto& zone : json->at("zones")) {
    ASSERT_EQ(zone.at("moments").size(), 5u);
    EXPECT_EQ(zone.at("moments")[0].at("delta_e_2000"), 0);
    EXPECT_GE(zone.at("moments")[4].at("delta_e_2000"), zone.at("moments")[1].at("delta_e_2000"));
  }
}

TEST(Fade, RefusesAHabitThatNobodyHas) {
  const Ran r = ran({"fade", demo("my_own_bowls"), "--washes", "50"});
  EXPECT_EQ(r.code, 2);
  EXPECT_NE(r.err.find("/habit/washes"), std::string::npos) << r.err;
}

TEST(Grow, TellsWhenTheLineShows) {
  const Ran r = ran({"grow", demo("my_own_bowls")});
  EXPECT_EQ(r.code, 0) << r.err;
  EXPECT_NE(r.out.find("Grown by then:"), std::string::npos) << r.out;
  const Ran j = ran({"grow", demo("my_own_bowls"), "--json"});
  const auto json = wire::parse(j.out);
  ASSERT_TRUE(json);
  EXPECT_EQ(json->at("schema"), "strandline.grow/1");
  EXPECT_FALSE(json->at("lines").empty());
  EXPECT_EQ(json->at("lengths").size(), 5u);
}

TEST(Predict, SaysWhereTheDoubtComesFrom) {
  const Ran r = ran({"predict", demo("my_own_bowls")});
  EXPECT_EQ(r.code, 0) << r.err;
  EXPECT_NE(r.out.find("of the uncertainty in depth is"), std::string::npos) << r.out;
}

}  // namespace
}  // namespace strandline::cli
