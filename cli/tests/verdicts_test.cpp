// A visit that a rule stops ends with its own exit code, on every command that would mix something.
#include <gtest/gtest.h>

#include "run_helper.h"

namespace strandline::cli {
namespace {

std::string with_reaction(const std::string& name) {
  wire::Json document = *wire::parse(quick_demo(name));
  document["answers"]["reaction"] = "swelling";
  return wire::print(document);
}

TEST(Stopped, EndsWithItsOwnCodeAndSaysWhyAndWhatCanBeDone) {
  const Ran r = ran({"plan", "-"}, with_reaction("all_over_brown"));
  EXPECT_EQ(r.code, 3);
  EXPECT_NE(r.out.find("There was a reaction to hair colour before."), std::string::npos) << r.out;
  EXPECT_NE(r.out.find("See a doctor first."), std::string::npos);
  EXPECT_NE(r.out.find("Annex III"), std::string::npos) << "where the limit comes from";
  const auto answer = *wire::parse(ran({"plan", "-", "--json"}, with_reaction("all_over_brown")).out);
  EXPECT_EQ(answer["go"], "stopped");
  EXPECT_TRUE(answer["bowls"].empty());
  EXPECT_TRUE(answer["routes"].empty());
}

TEST(Stopped, HoldsForOwnBowlsOnEveryCommand) {
  const std::string document = with_reaction("my_own_bowls");
  for (const char* command : {"predict", "review", "formulate"})
    EXPECT_EQ(ran({command, "-"}, document).code, 3) << command;
  for (const char* command : {"fade", "grow", "schedule"}) EXPECT_EQ(ran({command, "-"}, document).code, 3) << command;
  EXPECT_EQ(ran({"convert", "-", "--range", "demi"}, document).code, 3);
  const auto seen = *wire::parse(ran({"predict", "-", "--json"}, document).out);
  for (const auto& zone : seen["zones"]) EXPECT_EQ(zone["planned"]["lab"], zone["today"]["lab"]);
}

TEST(Stopped, IsNotForAVisitThatWasAsked) { EXPECT_EQ(ran({"plan", "-"}, quick_demo("all_over_brown")).code, 0); }

TEST(Stopped, ATypedLawIsRefused) {
  wire::Json document = *wire::parse(quick_demo("all_over_brown"));
  document["policy"] = {{"rules", {{"off", {"react.colour"}}}}};
  const Ran r = ran({"plan", "-"}, wire::print(document));
  EXPECT_EQ(r.code, 2);
  EXPECT_NE(r.err.find("react.colour"), std::string::npos);
}

}  // namespace
}  // namespace strandline::cli
