#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/rules/visit.h"

namespace strandline {
namespace {

using namespace testing_support;

const Verdict* find(const Verdicts& all, const std::string& rule) {
  const auto own = std::find_if(all.list.begin(), all.list.end(), [&](const Verdict& v) { return v.rule == rule; });
  return own == all.list.end() ? nullptr : &*own;
}

TEST(Verdicts, LetAQuietVisitGo) {
  const Verdicts all = verdicts(quiet_visit());
  EXPECT_EQ(all.go, Go::go);
  for (const Verdict& v : all.list) EXPECT_TRUE(v.says == Says::say) << v.rule;
}

TEST(Verdicts, AskWhatWasNotAnswered) {
  Visit v = quiet_visit();
  v.answers = {};
  const Verdicts all = verdicts(v);
  EXPECT_EQ(all.go, Go::stopped);
  for (const char* rule : {"age.ask", "react.ask", "tattoo.ask", "scalp.ask"}) {
    ASSERT_NE(find(all, rule), nullptr) << rule;
    EXPECT_EQ(find(all, rule)->says, Says::ask);
  }
}

TEST(Verdicts, NoWordOfADoctorOpensDyeAfterAReaction) {
  Visit v = quiet_visit();
  v.answers.reaction = ColourReaction::swelling;
  EXPECT_EQ(verdicts(v).go, Go::stopped);
  v.answers.doctor_agrees = YesNo::yes;
  const Visit closed = limited(v);
  for (const RangeLimits& l : closed.head.areas[0].spans[1].limits)
    if (l.range != "bleach" && l.range != "remover" && l.range != "chelate" && l.range != "soft" &&
        l.range != "clear") {
      EXPECT_EQ(l.closed_by, "react.colour") << l.range;
    }
}

TEST(Verdicts, SayTheNumberThatDecidedAndTheLimit) {
  Visit v = quiet_visit();
  v.skin_test = "2026-03-08";
  v.test.read = "2026-03-09";
  const Verdicts all = verdicts(v);
  const Verdict* lead = find(all, "test.lead");
  ASSERT_NE(lead, nullptr);
  EXPECT_EQ(lead->figures.at("found"), 24);
  EXPECT_EQ(lead->figures.at("lead_h"), 48);
  EXPECT_EQ(lead->zones, (std::vector<std::string>{"top/regrowth"}));
  EXPECT_FALSE(lead->today.empty());
}

TEST(Verdicts, PutTheLawFirst) {
  Visit v = quiet_visit();
  v.answers.reaction = ColourReaction::rash;
  v.head.areas[0].spans[0].wet_stretch_percent = 20;
  const Verdicts all = verdicts(v);
  ASSERT_FALSE(all.list.empty());
  EXPECT_EQ(all.list.front().standing, Standing::law);
  for (size_t i = 1; i < all.list.size(); ++i)
    EXPECT_TRUE(all.list[i].says == Says::say || all.list[i - 1].standing <= all.list[i].standing);
}

TEST(RulePolicy, LawAndFloorsStay) {
  RulePolicy p;
  p.off = {"age.dye"};
  EXPECT_EQ(check(p).at(0).code, "rule_not_of_the_house");
  p.off = {"metal.positive"};
  EXPECT_EQ(check(p).at(0).code, "rule_not_of_the_house");
  p.off = {"no.such"};
  EXPECT_EQ(check(p).at(0).code, "unknown_rule");
  p.off = {"porosity.high"};
  EXPECT_TRUE(check(p).empty());
}

TEST(RulePolicy, AHouseSetsItsOwnFiguresAndTightensAFloor) {
  RulePolicy p;
  p.values = {{"dev.law", "on_head_max", 20}};
  EXPECT_EQ(check(p).at(0).code, "rule_not_of_the_house");
  p.values = {{"test.lead", "lead_h", 12}};
  EXPECT_EQ(check(p).at(0).code, "rule_value_out_of_range");
  p.values = {{"test.lead", "lead_h", 24}};
  EXPECT_TRUE(check(p).empty());
  Visit v = quiet_visit();
  v.skin_test = "2026-03-08";
  v.test.read = "2026-03-09";
  v.policy.rules = p;
  EXPECT_EQ(find(verdicts(v), "test.lead"), nullptr);
}

TEST(RulePolicy, ALawLeftOutIsStillKept) {
  Visit v = quiet_visit();
  v.answers.age = AgeBand::under_16;
  v.policy.rules.off = {"age.dye"};
  EXPECT_NE(find(verdicts(v), "age.dye"), nullptr);
}

TEST(Limits, TheLowestCeilingWinsAndCrossedOnesClose) {
  Visit v = quiet_visit();
  v.head.areas[0].spans[1].porosity.value = 2;
  const Visit porous = limited(v);
  for (const RangeLimits& l : porous.head.areas[0].spans[1].limits)
    if (l.range == "tint") {
      EXPECT_EQ(l.developer_max, 3);
    }
  // Ten minutes at most where the range needs 25.
  v = quiet_visit();
  v.head.areas[0].spans[1].populations[0].origin = ColourOrigin::tinted;
  v.head.areas[0].spans[1].wet_stretch_percent = 45;
  const Visit coloured = limited(v);
  for (const RangeLimits& l : coloured.head.areas[0].spans[1].limits)
    if (l.range == "tint") {
      EXPECT_EQ(l.closed_by, "overlap.coloured");
    }
}

TEST(OwnBowls, PassNoLimit) {
  Visit v = quiet_visit();
  v.bowls = {bowl_of("tint", {{"tint6", 30}, {"dev60", 30}}, 35)};
  EXPECT_TRUE(passed_by_bowls(v).empty());
  v.bowls[0].formula.minutes = 50;
  const auto too_long = passed_by_bowls(v);
  EXPECT_TRUE(
      std::any_of(too_long.begin(), too_long.end(), [](const Verdict& own) { return own.rule == "time.permanent"; }));
  v.bowls[0].formula.minutes = 35;
  v.answers.scalp = Scalp::broken;
  const auto passed = passed_by_bowls(v);
  ASSERT_FALSE(passed.empty());
  EXPECT_EQ(passed.front().rule, "scalp.label");
  EXPECT_EQ(passed.front().bowl, "A");
}

}  // namespace
}  // namespace strandline
