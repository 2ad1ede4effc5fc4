// Whatever is known of a head: no plan, no way and no own bowl passes a rule, and no zone is taken past its condition.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "engine/tests/rules/visit.h"
#include "strandline/reach.h"

namespace strandline {
namespace {

using namespace testing_support;

FormulateOptions quick() {
  FormulateOptions o;
  o.scenarios = 4;
  return o;
}

// Facts drawn at random: about every third of them speaks against something.
Visit any_visit(unsigned seed) {
  std::mt19937 random(seed);
  const auto one_in = [&](int n) { return random() % static_cast<unsigned>(n) == 0; };
  const auto any = [&](auto... values) {
    const std::array all{values...};
    return all[random() % all.size()];
  };
  Visit v = quiet_visit();
  SchedulePolicy& p = v.policy.schedule;
  p.cover_areas = p.lighten_areas = {AreaKind::top, AreaKind::other};
  p.prepare = {5, 1}, p.remove_packet = {2, 0.5};
  p.first_check = 15, p.check_every_min = 5, p.check_every_max = 10, p.check_minutes = 1;
  p.late_tolerance = 10, p.sample_points = 16, p.node_limit = 2000;
  v.head.areas.pop_back();  // no packets
  v.aims[0].level = any(4.0, 5.0, 6.0, 7.0, 8.0, 9.0);
  Span &root = regrowth(v), &rest = lengths(v);
  if (one_in(3)) root.populations = {pigmented(0.6, 5), white(0.4)};
  if (one_in(3)) rest.populations[0].origin = any(ColourOrigin::tinted, ColourOrigin::lightened, ColourOrigin::direct);
  rest.porosity.value = any(1.0, 1.5, 2.0, 2.5, 2.8);
  if (!one_in(4)) rest.wet_stretch_percent = any(30.0, 45.0, 50.0);
  if (one_in(4))
    rest.services.push_back({any(ServiceKind::relaxed, ServiceKind::permed, ServiceKind::home_colour), 3.0});
  if (one_in(6)) v.answers.scalp = any(Scalp::broken, Scalp::plaque_calm, Scalp::sensitive);
  if (one_in(6)) v.answers.reaction = any(ColourReaction::stinging, ColourReaction::rash);
  if (one_in(6)) v.skin_test = any("2026-03-08", "2025-01-01", "");
  if (one_in(6)) v.head.areas[0].loss = any(HairLoss::thinning, HairLoss::patchy);
  return v;
}

std::vector<Bowl> bowls_of(const std::vector<PlannedBowl>& planned) {
  std::vector<Bowl> all;
  for (const PlannedBowl& b : planned) all.push_back(b.bowl);
  return all;
}

std::string names(const std::vector<Verdict>& all) {
  std::string out;
  for (const Verdict& v : all) out += v.rule + "(" + v.fact + ") ";
  return out;
}

TEST(Binding, NoPlanAndNoWayPassesARule) {
  int bowls = 0, stopped = 0, ways = 0;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    Visit v = any_visit(seed);
    for (const Problem& wrong : check(v)) ADD_FAILURE() << wrong.code << ' ' << wrong.path;
    const auto p = plan(v, quick());
    ASSERT_TRUE(p) << seed;
    if (p->verdicts.go == Go::stopped) {
      ++stopped;
      EXPECT_TRUE(p->plan.bowls.empty() && p->routes.empty() && p->timeline.tasks.empty()) << seed;
      continue;
    }
    const auto clean = [&](const std::vector<PlannedBowl>& planned, const char* what) {
      v.bowls = bowls_of(planned);
      bowls += static_cast<int>(v.bowls.size());
      const auto passed = passed_by_bowls(v);
      std::string how;
      for (const Problem& broken : stops(v)) how += broken.code + " ";
      EXPECT_TRUE(passed.empty()) << seed << " " << what << ": " << names(passed) << how;
    };
    clean(p->plan.bowls, "plan");
    // A bowl that goes on the lengths later has fewer minutes there than it says of itself.
    for (const Alternative& a : p->plan.alternatives)
      if (a.axis != "later_on_lengths") clean(a.bowls, a.axis.c_str());
    for (const Route& r : p->routes) {
      std::vector<PlannedBowl> first_visit;
      for (size_t step = 0; step < r.visits[0].steps.size(); ++step)
        for (PlannedBowl b : r.visits[0].steps[step].bowls) {
          b.bowl.step = static_cast<int>(step) + 1;
          first_visit.push_back(b);
        }
      clean(first_visit, r.kind.c_str());
      ++ways;
    }
  }
  EXPECT_GT(bowls, 10);
  EXPECT_GT(stopped, 0);
  EXPECT_GT(ways, 0);
}

TEST(Binding, NoZoneIsTakenPastItsCondition) {
  for (unsigned seed = 40; seed <= 48; ++seed) {
    const Visit v = any_visit(seed);
    const auto p = plan(v, quick());
    ASSERT_TRUE(p) << seed;
    for (const ZonePlan& z : p->plan.zones)
      if (!z.bowl.empty()) {
        EXPECT_LE(z.result.planned.porosity, std::max(2.8, z.result.today.porosity) + 1e-6)
            << seed << " " << z.result.zone;
      }
  }
}

TEST(Binding, AnOwnBowlPastAStopGetsNoForecast) {
  Visit v = quiet_visit();
  v.bowls = {bowl_of("tint", {{"tint6", 30}, {"dev60", 30}}, 35)};
  const auto open = what_if(v);
  ASSERT_TRUE(open);
  EXPECT_NE(open->plan.zones[0].result.planned.lab.l, open->plan.zones[0].result.today.lab.l);
  v.answers.reaction = ColourReaction::breathing;
  const auto closed = what_if(v);
  ASSERT_TRUE(closed);
  EXPECT_EQ(closed->verdicts.go, Go::stopped);
  EXPECT_EQ(closed->plan.zones[0].result.planned.lab.l, closed->plan.zones[0].result.today.lab.l);
  EXPECT_TRUE(closed->timeline.tasks.empty());
  ASSERT_EQ(closed->plan.bowls.size(), 1u);
}

TEST(Binding, AStoppedPlanHoldsVerdictsAndWhatCanBeDoneAndNoBowl) {
  Visit v = quiet_visit();
  v.aims[0].level = 8;
  v.answers.reaction = ColourReaction::swelling;
  const auto p = plan(v, quick());
  ASSERT_TRUE(p);
  EXPECT_EQ(p->verdicts.go, Go::stopped);
  EXPECT_TRUE(p->plan.bowls.empty());
  EXPECT_FALSE(p->verdicts.list.front().today.empty());
  EXPECT_EQ(p->plan.zones.size(), 3u);
}

TEST(Binding, NothingIsInReachWhereARuleClosesEverything) {
  Visit v = quiet_visit();
  v.answers.reaction = ColourReaction::rash;
  const Visit closed = limited(v);
  const auto r = reach(closed.head, closed.shelf, closed.policy.formula);
  ASSERT_TRUE(r);
  for (const ReachCell& c : r->front().cells) EXPECT_NEAR(c.nearest.l, r->front().cells.front().nearest.l, 1e-9);
}

TEST(Binding, NoHighLiftOnHairThatWasColouredOnce) {
  Visit v = quiet_visit();
  lengths(v).populations[0].origin = ColourOrigin::tinted;
  lengths(v).wet_stretch_percent = 45;
  v.bowls = {bowl_of("remover", {{"remover6", 60}}, 15, "top/lengths"),
             bowl_of("high", {{"high8", 30}, {"dev90", 30}}, 50, "top/lengths")};
  v.bowls[1].label = "B";
  v.bowls[1].step = 2;
  const auto passed = passed_by_bowls(v);
  EXPECT_TRUE(std::any_of(passed.begin(), passed.end(), [](const Verdict& own) {
    return own.bowl == "B" && own.rule == "highlift.base";
  })) << names(passed);
}

}  // namespace
}  // namespace strandline
