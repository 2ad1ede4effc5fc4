#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "strandline/law.h"

namespace strandline::law {
namespace {

Declared dye(std::optional<double> percent, std::string basis = "", std::string cas = "95-70-5") {
  return {std::move(cas), "", "", percent, std::move(basis)};
}

LimitReport report(std::vector<Declared> declared, double peroxide = 3, bool full = true) {
  return check_limits({{"ready", 10, peroxide, std::move(declared), full}}, Use::oxidative_dye).value();
}

TEST(Limits, UnknownPercentageIsNeverPassed) {
  const auto r = report({dye(std::nullopt)});
  EXPECT_EQ(r.entries.at(0).entry, "9a");
  EXPECT_EQ(r.entries.at(0).status, Status::unknown_percentage);
  EXPECT_FALSE(r.entries.at(0).on_head_percent);
  EXPECT_EQ(r.sums.at(0).status, Status::unknown_percentage);
  EXPECT_EQ(r.overall, Status::unknown_percentage);
}

TEST(Limits, KnownShareAboveTheCapIsOverEvenWithUnknownsBeside) {
  const Composition mix{{"a", 10, 0.0, {dye(5.0)}, true}, {"b", 10, 0.0, {dye(std::nullopt)}, true}};
  const auto r = check_limits(mix, Use::oxidative_dye).value();
  EXPECT_EQ(r.entries.at(0).status, Status::over);
  EXPECT_NEAR(r.entries.at(0).at_least, 2.5, 1e-12);
}

TEST(Limits, UnknownPeroxideAndIncompleteDeclarationsAreShown) {
  const Composition mix{{"colour", 10, std::nullopt, {}, false}, {"developer", 10, 6.0, {}, true}};
  const auto r = check_limits(mix, Use::oxidative_dye).value();
  EXPECT_EQ(r.entries.at(0).entry, "12");
  EXPECT_EQ(r.entries.at(0).status, Status::unknown_percentage);
  EXPECT_NEAR(r.entries.at(0).at_least, 3, 1e-12);
  EXPECT_EQ(r.not_fully_declared, std::vector<std::string>{"colour"});
  EXPECT_EQ(r.overall, Status::unknown_percentage);
  EXPECT_FALSE(on_head_peroxide(mix).value());
}

TEST(Limits, ReleasersAddToPeroxide) {
  const auto r = report({{"124-43-6", "", "carbamide peroxide", 10.0, ""}}, 9.0);
  EXPECT_NEAR(r.entries.at(0).on_head_percent.value(), 9 + 10 * 34.014 / 94.07, 1e-9);
  EXPECT_EQ(r.overall, Status::over);
}

TEST(Limits, TwoFormsOfOneEntryAreAddedAsBase) {
  const auto r = report({dye(1.2), dye(1.8, "", "615-50-9")});
  ASSERT_EQ(r.entries.size(), 2u);
  EXPECT_EQ(r.entries.at(0).as, "free_base");
  EXPECT_NEAR(r.entries.at(0).on_head_percent.value(), 1.2 + 1.8 * 122.17 / 220.24, 1e-12);
  EXPECT_EQ(r.entries.at(0).status, Status::over);
}

TEST(Limits, FormNotToldIsBoundedNotGuessed) {
  const auto low = report({{"", "203", "", 0.5, ""}});
  EXPECT_EQ(low.entries.at(0).status, Status::within);  // any form of 0.5 % holds at most 0.5 % base
  EXPECT_FALSE(low.entries.at(0).on_head_percent);
  EXPECT_EQ(report({{"", "203", "", 0.9, ""}}).entries.at(0).status, Status::unknown_percentage);
}

TEST(Limits, BaseOfAnEntryListedAsSaltCountsAsTheSalt) {
  const auto r = report({{"", "273", "", 2.0, "free_base"}});
  EXPECT_NEAR(r.entries.at(0).on_head_percent.value(), 2.0 * 240.23 / 142.16, 1e-9);
  EXPECT_EQ(r.entries.at(0).status, Status::over);
}

TEST(Limits, GroupEntryHoldsEachSubstanceByItself) {
  const auto r = report({{"", "8", "first", 2.0, "free_base"}, {"", "8", "second", 2.0, "free_base"}});
  EXPECT_EQ(r.entries.at(0).status, Status::within);
  EXPECT_EQ(r.entries.at(1).status, Status::within);
  EXPECT_NEAR(r.sums.at(0).total.value(), 4.0 / 3, 1e-12);
  EXPECT_EQ(r.sums.at(0).status, Status::over);
  EXPECT_EQ(r.overall, Status::over);
}

TEST(Limits, DoubtfulScopeIsTold) {
  EXPECT_TRUE(report({dye(1.0), dye(1.0, "", "106-50-3")}).sums.at(0).scope_doubtful);
  EXPECT_FALSE(report({dye(1.0)}).sums.at(0).scope_doubtful);
}

TEST(Limits, UnlistedSubstanceIsNamedNotPassed) {
  const auto r = report({{"7727-54-0", "", "ammonium persulfate", 30.0, ""}});
  EXPECT_EQ(r.entries.at(1).status, Status::not_listed);
  EXPECT_EQ(r.entries.at(1).substance, "ammonium persulfate");
  EXPECT_FALSE(r.entries.at(1).cap);
}

TEST(Limits, BadInputNamesThePlace) {
  const double nan = std::nan("");
  const auto problem = [](const Composition& mix) { return check_limits(mix, Use::oxidative_dye).error().at(0); };
  EXPECT_EQ(problem({{"a", -1, 0.0, {}, true}}).path, "/0/grams");
  EXPECT_EQ(problem({{"a", nan, 0.0, {}, true}}).code, "not_an_amount");
  EXPECT_EQ(problem({{"a", 1, 130.0, {}, true}}).path, "/0/peroxide_percent");
  EXPECT_EQ(problem({{"a", 1, 0.0, {dye(nan)}, true}}).path, "/0/declared/0/percent");
  EXPECT_EQ(problem({{"a", 1, 0.0, {dye(1.0, "oxide")}, true}}).code, "unknown_basis");
  EXPECT_EQ(problem({{"a", 1, 0.0, {{"", "", "", 1.0, ""}}, true}}).code, "substance_without_a_name");
  EXPECT_EQ(problem({{"a", 1, 0.0, {{"95-70-5", "8a", "", 1.0, ""}}, true}}).code, "entry_does_not_match");
  EXPECT_EQ(problem({{"a", 1, 0.0, {{"", "999", "", 1.0, ""}}, true}}).code, "entry_does_not_match");
  EXPECT_EQ(problem({}).code, "nothing_in_the_bowl");
}

TEST(Mixing, BadInputIsRefused) {
  EXPECT_EQ(dilute(6, 9, 10).error()[0].code, "stronger_than_the_stock");
  EXPECT_EQ(alligate(10, 40, 50).error()[0].code, "outside_the_two_strengths");
  EXPECT_EQ(alligate(40, 10, 20).error()[0].code, "not_stronger");
  EXPECT_EQ(blend({}).error()[0].code, "nothing_in_the_bowl");
  EXPECT_EQ(blend({{-1, 3}}).error()[0].path, "/0/amount");
  EXPECT_EQ(scale_to_weighed({40, 60}, 2, 1).error()[0].code, "part_not_planned");
  EXPECT_EQ(split_by_ratio(100, {}).error()[0].code, "empty_ratio");
  EXPECT_EQ(volume_to_percent_wv(-1, GasState::one_atm).error()[0].code, "not_an_amount");
  EXPECT_EQ(percent_wv_from_ww(6, 0).error()[0].code, "not_a_density");
  EXPECT_EQ(trade_percent(std::numeric_limits<double>::infinity()).error()[0].path, "/volumes");
}

}  // namespace
}  // namespace strandline::law
