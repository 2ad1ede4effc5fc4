// Ways over several steps, and a second look at own bowls.
#include <gtest/gtest.h>

#include "run_helper.h"
#include "strandline/wire/json.h"

namespace strandline::cli {
namespace {

TEST(Plan, ShowsTheWayOverSeveralSteps) {
  const Ran r = ran({"plan", "-"}, quick_demo("remove_then_tint"));
  EXPECT_EQ(r.code, 0) << r.err;
  EXPECT_NE(r.out.find("Recommended"), std::string::npos) << r.out;
  EXPECT_NE(r.out.find("then check the strand"), std::string::npos);
  EXPECT_NE(r.out.find("by what the check shows on"), std::string::npos);
  EXPECT_TRUE(r.out.find("stop at once on pain") != std::string::npos ||
              r.out.find("Rinse as long as the maker says") != std::string::npos)
      << "the usual caution stands with the step";
}

TEST(Plan, AnswersRoutesAsJson) {
  const Ran r = ran({"plan", "-", "--json"}, quick_demo("coloured_lengths_lighter"));
  ASSERT_EQ(r.code, 0) << r.err;
  const auto json = wire::parse(r.out);
  ASSERT_TRUE(json);
  ASSERT_FALSE(json->at("routes").empty());
  const auto& best = json->at("routes")[0];
  EXPECT_TRUE(best.at("recommended").get<bool>());
  EXPECT_LT(best.at("objective").get<double>(), json->at("report").at("objective").get<double>());
  const auto& steps = best.at("visits")[0].at("steps");
  ASSERT_EQ(steps.size(), 2u);
  EXPECT_TRUE(steps[0].at("check_after").get<bool>());
  EXPECT_EQ(best.at("visits")[0].at("timeline").at("steps").size(), 2u) << "both steps on one clock";
  for (const auto& step : steps)
    for (const auto& bowl : step.at("bowls")) EXPECT_GT(bowl.at("grams").get<double>(), 0);
}

TEST(ReviewCommand, LooksOwnBowlsOver) {
  const Ran r = ran({"review", "-"}, quick_demo("my_own_bowls"));
  EXPECT_EQ(r.code, 0) << r.err;
  EXPECT_NE(r.out.find("the best bowl of this shelf has"), std::string::npos) << r.out;
  EXPECT_NE(r.out.find("If a reading is wrong"), std::string::npos);
  const Ran j = ran({"review", "-", "--json"}, quick_demo("my_own_bowls"));
  const auto json = wire::parse(j.out);
  ASSERT_TRUE(json);
  EXPECT_EQ(json->at("schema"), "strandline.review/1");
  for (const auto& bowl : json->at("bowls"))
    EXPECT_EQ(bowl.contains("change"), bowl.contains("change_objective")) << bowl.dump();
}

TEST(ReviewCommand, NeedsBowls) {
  const Ran r = ran({"review", demo("all_over_brown")});
  EXPECT_EQ(r.code, 2);
  EXPECT_NE(r.err.find("/bowls"), std::string::npos) << r.err;
}

TEST(ConvertCommand, MakesTheSameFromAnotherRange) {
  const Ran r = ran({"convert", demo("my_own_bowls"), "--range", "demi", "--json", "--seconds", "900"});
  ASSERT_EQ(r.code, 0) << r.err;
  const auto json = wire::parse(r.out);
  ASSERT_TRUE(json);
  EXPECT_EQ(json->at("schema"), "strandline.remade/1");
  for (const auto& bowl : json->at("bowls")) {
    if (bowl.contains("bowl")) {
      EXPECT_EQ(bowl.at("bowl").at("range"), "demi");
      EXPECT_FALSE(bowl.at("zones").empty());
    } else {
      EXPECT_FALSE(bowl.at("notes").empty()) << "where nothing may be mixed that is said";
    }
  }
}

TEST(ConvertCommand, SaysWhatIsWrongWithARange) {
  EXPECT_EQ(ran({"convert", demo("my_own_bowls"), "--range", "nothing"}).code, 2);
  const Ran powder = ran({"convert", demo("my_own_bowls"), "--range", "lightener-off-scalp"});
  EXPECT_EQ(powder.code, 2);
  EXPECT_NE(powder.err.find("gives no colour"), std::string::npos) << powder.err;
  EXPECT_EQ(ran({"convert", demo("my_own_bowls")}).code, 2) << "the range is asked for";
}

TEST(SubstituteCommand, DoesWithoutATube) {
  EXPECT_EQ(ran({"substitute", demo("my_own_bowls"), "--product", "nothing"}).code, 2);
  const Ran gold = ran({"substitute", demo("my_own_bowls"), "--product", "permanent-6-gold", "--seconds", "900"});
  EXPECT_EQ(gold.code, 0) << gold.err;
  EXPECT_NE(gold.out.find("Instead of bowl A"), std::string::npos) << gold.out;
  EXPECT_EQ(gold.out.find("Instead of bowl B"), std::string::npos) << "only bowls that hold it";
  const Ran none = ran({"substitute", demo("my_own_bowls"), "--product", "direct-red", "--seconds", "900"});
  EXPECT_EQ(none.code, 0);
  EXPECT_NE(none.out.find("No bowl holds it"), std::string::npos) << none.out;
}

}  // namespace
}  // namespace strandline::cli
