#include "strandline/pipeline.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "engine/tests/cleared.h"
#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

Visit visit() {
  Visit v;
  v.head = two_areas();
  v.shelf = small_shelf();
  ZoneAim wish;
  wish.zone = "*", wish.level = 6;
  v.aims = {wish};
  SchedulePolicy& p = v.policy.schedule;
  p.resistant_from = 0.5, p.porous_from = 2;
  p.cover_areas = {AreaKind::crown, AreaKind::top,     AreaKind::nape,          AreaKind::other,
                   AreaKind::sides, AreaKind::temples, AreaKind::front_hairline};
  p.lighten_areas = p.cover_areas;
  p.prepare = {5, 1}, p.remove_packet = {2, 0.5};
  p.first_check = 15, p.check_every_min = 5, p.check_every_max = 10, p.check_minutes = 1;
  p.late_tolerance = 10, p.sample_points = 64, p.node_limit = 60000;
  return cleared(v);
}

FormulateOptions quick() {
  FormulateOptions o;
  o.scenarios = 8;
  return o;
}

TEST(Pipeline, PlanHasBowlsZonesAndAClock) {
  ASSERT_TRUE(check(visit()).empty());
  const auto p = plan(visit(), quick());
  ASSERT_TRUE(p);
  EXPECT_EQ(p->plan.zones.size(), 2u);
  ASSERT_FALSE(p->plan.bowls.empty());
  ASSERT_FALSE(p->timeline.tasks.empty());
  EXPECT_GT(p->timeline.finish_min, p->timeline.basin_min);
  EXPECT_EQ(p->timeline.developments.size(), 2u);
}

TEST(Pipeline, APlanStoppedAnywhereIsAPlanThatSaysSo) {
  const auto whole = plan(visit(), quick());
  ASSERT_TRUE(whole);
  ASSERT_EQ(whole->plan.report.stopped, "exhausted");
  constexpr double kSame = 1e-6;
  bool ended = false;
  for (int after = 0; !ended; after += 1 + after / 2) {
    int asked = 0;
    FormulateOptions o = quick();
    o.cancelled = [&] { return asked++ >= after; };
    const auto p = plan(visit(), o);
    ASSERT_TRUE(p) << after;
    ended = asked <= after;
    EXPECT_EQ(p->plan.report.stopped, ended ? "exhausted" : "cancelled") << after;
    EXPECT_EQ(p->plan.zones.size(), whole->plan.zones.size()) << after;
    EXPECT_LE(p->plan.report.bound, whole->plan.report.objective + kSame) << after;
    EXPECT_GE(p->plan.report.objective, whole->plan.report.bound - kSame) << after;
    // Little is begun once it was told to stop.
    EXPECT_LE(asked - after, 200) << after;
  }
}

// Colour does not lift colour, and this shelf takes none off: lengths at 6 stay, whatever is wished.
Visit with_lengths_that_stay(double wished) {
  Visit v = visit();
  Span lengths = span("lengths", 1.8, 20, 0, 6);
  lengths.populations[0].origin = ColourOrigin::tinted;
  lengths.populations[0].natural_level = Reading{5, 0.35};
  v.head.areas = {area("crown", AreaKind::crown, 250, {span("regrowth", 0, 1.8, 0, 5), lengths})};
  v.aims[0].level = wished;
  return v;
}

TEST(Pipeline, RegrowthGoesToLengthsThatCannotFollowAndTheWishIsTheOtherWay) {
  const auto p = plan(with_lengths_that_stay(7.5), quick());
  ASSERT_TRUE(p);
  const auto why = std::find_if(p->plan.why.begin(), p->plan.why.end(),
                                [](const Problem& w) { return w.code == "regrowth_to_lengths"; });
  ASSERT_NE(why, p->plan.why.end());
  ASSERT_FALSE(p->plan.alternatives.empty());
  const Alternative& wished = p->plan.alternatives.front();
  EXPECT_EQ(wished.axis, "as_wished");
  ASSERT_FALSE(wished.bands.empty());
  EXPECT_GE(wished.bands[0].levels, 0.5);
  const double band = p->plan.bands.empty() ? 0 : p->plan.bands[0].levels;
  EXPECT_LT(band, wished.bands[0].levels);
  EXPECT_NEAR(p->targets[0].level, p->plan.zones[1].result.planned.named.level, 1e-9);
  EXPECT_FALSE(p->timeline.tasks.empty());
}

TEST(Pipeline, ABandThatIsWishedIsNotEvenedOut) {
  Visit v = with_lengths_that_stay(7.5);
  v.aims[0].zone = "crown/regrowth";
  ZoneAim stay;
  stay.zone = "*", stay.leave = true;
  v.aims.push_back(stay);
  const auto p = plan(v, quick());
  ASSERT_TRUE(p);
  EXPECT_NEAR(p->targets[0].level, 7.5, 1e-9);
  EXPECT_TRUE(p->plan.alternatives.empty() || p->plan.alternatives[0].axis != "as_wished");
}

TEST(Pipeline, WhatIfOfThePlansOwnBowlsIsThePlansPrediction) {
  Visit v = visit();
  v.head.areas[1].spans = v.head.areas[0].spans;  // a bowl told by hand has one time for all its zones
  const auto p = plan(v, quick());
  ASSERT_TRUE(p);
  for (const PlannedBowl& b : p->plan.bowls) v.bowls.push_back(b.bowl);
  ASSERT_TRUE(check(v).empty());
  const auto w = what_if(v);
  ASSERT_TRUE(w);
  for (size_t i = 0; i < p->plan.zones.size(); ++i) {
    EXPECT_NEAR(delta_e_ab(w->plan.zones[i].result.planned.lab, p->plan.zones[i].result.planned.lab), 0, 1e-12);
    EXPECT_EQ(w->plan.zones[i].result.landing->likelihood, p->plan.zones[i].result.landing->likelihood);
  }
  EXPECT_NEAR(w->plan.cost, p->plan.cost, 1e-9);
}

TEST(Pipeline, WhatIfNamesTheRulesItsBowlsBreak) {
  Visit v = visit();
  Bowl b;
  b.label = "A";
  b.formula.range = "tint";
  b.formula.minutes = 90;
  b.formula.parts = {{"shade-1", 20}, {"developer-6", 60}};
  b.zones = {"crown/regrowth"};
  v.bowls = {b};
  const auto w = what_if(v);
  ASSERT_TRUE(w);
  auto told = [&](const char* code) {
    return std::any_of(w->plan.notes.begin(), w->plan.notes.end(), [&](const Problem& p) { return p.code == code; });
  };
  EXPECT_TRUE(told("ratio_not_of_range"));
  EXPECT_TRUE(told("longer_than_range_allows"));
}

TEST(Pipeline, ABowlOfDeveloperAloneOrOfTwoRangesIsToldSo) {
  Visit v = visit();
  Range second = v.shelf.ranges[0];
  second.id = "second";
  v.shelf.ranges.push_back(second);
  Product p = v.shelf.products[0];
  p.id = "second-0", p.range = "second";
  v.shelf.products.push_back(p);
  const auto told = [&](const std::vector<Part>& parts) {
    Bowl b;
    b.label = "A", b.formula.range = "tint", b.formula.minutes = 35, b.zones = {"crown/regrowth"};
    b.formula.parts = parts;
    v.bowls = {b};
    std::set<std::string> codes;
    const auto seen = what_if(v);
    for (const Problem& note : seen->plan.notes) codes.insert(note.code);
    return codes;
  };
  EXPECT_TRUE(told({{"developer-6", 60}}).contains("developer_alone"));
  EXPECT_TRUE(told({{"shade-1", 20}, {"second-0", 10}, {"developer-6", 30}}).contains("two_ranges_in_one_bowl"));
  const auto fine = told({{"shade-1", 30}, {"developer-6", 30}});
  EXPECT_FALSE(fine.contains("developer_alone") || fine.contains("two_ranges_in_one_bowl"));
}

TEST(Pipeline, BadReadingsAreToldWithTheirPlace) {
  Visit v = visit();
  v.head.areas[0].spans[0].populations[0].level.value = 14;
  v.head.areas[1].spans[0].populations[0].share.value = 1.3;
  const Problems p = check(v);
  ASSERT_GE(p.size(), 3u);
  EXPECT_EQ(p[0].code, "level_out_of_range");
  EXPECT_EQ(p[0].path, "/head/areas/0/spans/0/populations/0/level");
  EXPECT_EQ(p[1].code, "share_out_of_range");
  EXPECT_EQ(p[2].code, "shares_do_not_add_up");
}

TEST(Pipeline, NotANumberIsOutsideEveryRange) {
  Visit v = visit();
  v.head.areas[0].spans[0].porosity.value = std::nan("");
  EXPECT_EQ(check(v).at(0).code, "porosity_out_of_range");
}

}  // namespace
}  // namespace strandline
