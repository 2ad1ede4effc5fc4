// The search against every possible plan of small visits.
#include <gtest/gtest.h>

#include <random>

#include "brute_force.h"
#include "judge.h"
#include "schedule/order.h"
#include "strandline/schedule.h"
#include "visits.h"

namespace strandline {
namespace {

using Random = std::mt19937;

int pick(Random& random, int from, int to) {
  return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
}

Application any_application(Random& random, int i, int bowls, bool packets) {
  static const AreaKind areas[] = {AreaKind::crown, AreaKind::nape, AreaKind::sides, AreaKind::front_hairline};
  Application a;
  a.id = a.zone = "zone " + std::to_string(i);
  a.bowl = std::string(1, static_cast<char>('A' + pick(random, 0, bowls - 1)));
  a.area = areas[pick(random, 0, 3)];
  a.span = static_cast<SpanKind>(pick(random, 0, 2));
  a.touches_scalp = a.span == SpanKind::regrowth;
  a.packet = packets && pick(random, 0, 1);
  a.apply.mean = pick(random, 2, 15);
  a.min = a.target = pick(random, 3, 30);
  a.max = a.min + a.apply.mean + pick(random, 0, 30);
  a.lightening = a.bowl == "B";
  return a;
}

// Clocks, lives and hands tight enough that a third of the visits cannot be done in one go.
ScheduleRequest any_visit(Random& random) {
  ScheduleRequest r;
  r.policy = visits::house_policy();
  r.policy.develop_to = DevelopTo::minimum;
  r.policy.node_limit = 1000000;
  r.policy.prepare.mean = pick(random, 0, 5);
  const int people = pick(random, 1, 2), bowls = pick(random, 1, 2);
  const int applications = people == 1 ? pick(random, 2, 4) : pick(random, 2, 3);
  const bool packets = applications < 4 && pick(random, 0, 2) == 0;
  int longest = 0;
  for (int i = 0; i < applications; ++i) {
    r.applications.push_back(any_application(random, i, bowls, packets));
    longest = std::max(longest, static_cast<int>(r.applications.back().apply.mean));
  }
  for (int b = 0; b < bowls; ++b) {
    const int mix = pick(random, 1, 6);
    r.bowls.push_back({std::string(1, static_cast<char>('A' + b)),
                       "",
                       ProductClass::permanent,
                       {static_cast<double>(mix), 0},
                       static_cast<double>(mix + longest + pick(random, 0, 25))});
  }
  r.people = {visits::colourist()};
  if (people == 2) r.people.push_back(pick(random, 0, 1) ? visits::assistant() : visits::second_colourist());
  if (people == 2) r.people[1].pace = pick(random, 1, 2);
  return r;
}

std::vector<std::vector<bool>> house_order(const ScheduleRequest& r) {
  const auto rules = order_rules(r.applications, r.policy);
  std::vector<std::vector<bool>> later(rules.size(), std::vector<bool>(rules.size()));
  for (std::size_t i = 0; i < rules.size(); ++i)
    for (std::size_t j = 0; j < rules.size(); ++j) later[i][j] = rules[i].later >> j & 1;
  return later;
}

TEST(ScheduleOracle, SmallVisitsAreAsShortAsAnyPlan) {
  Random random(20261125);
  int feasible = 0, split = 0, singly = 0;
  for (int n = 0; n < 330; ++n) {
    const auto request = any_visit(random);
    const auto expected = brute_force::Oracle(request, house_order(request), false).least_basin_time();
    const auto timeline = schedule(request);
    ASSERT_EQ(timeline.has_value(), expected.has_value()) << "visit " << n;
    if (!timeline) {
      EXPECT_EQ(timeline.error().at(0).code, "clock_breaks") << "visit " << n;
      continue;
    }
    ++feasible;
    EXPECT_TRUE(timeline->proven);
    EXPECT_NEAR(timeline->basin_min, *expected, 1e-9) << "visit " << n;
    EXPECT_EQ(judge::faults(request, *timeline), std::vector<std::string>{}) << "visit " << n;
    split += std::ranges::count(timeline->tasks, "small_mix", &TimelineTask::reason) > 0;
    singly += std::ranges::count(timeline->tasks, TaskKind::remove_packet, &TimelineTask::kind) > 0;
  }
  // The sample has all that makes a visit hard.
  EXPECT_GT(feasible, 165);
  EXPECT_LT(feasible, 320);
  EXPECT_GT(split, 10);
  EXPECT_GT(singly, 5);
}

// The hours of people, at which the mirror in time of the search is least obvious.
TEST(ScheduleOracle, HoursOfPeople) {
  Random random(11);
  int moved = 0;
  for (int n = 0; n < 60; ++n) {
    auto request = any_visit(random);
    for (auto& a : request.applications) a.packet = false;
    const auto without = schedule(request);
    request.people.back().from = pick(random, 0, 30);
    if (request.people.size() > 1) request.people.back().until = request.people.back().from + pick(random, 5, 60);
    const auto expected = brute_force::Oracle(request, house_order(request), false).least_basin_time();
    const auto timeline = schedule(request);
    ASSERT_EQ(timeline.has_value(), expected.has_value()) << "visit " << n;
    if (!timeline) continue;
    EXPECT_NEAR(timeline->basin_min, *expected, 1e-9) << "visit " << n;
    EXPECT_EQ(judge::faults(request, *timeline), std::vector<std::string>{}) << "visit " << n;
    moved += without->basin_min < timeline->basin_min;
  }
  EXPECT_GT(moved, 10);
}

// With no price on the order, the soft search must find the shortest plan of all orders.
TEST(ScheduleOracle, SoftOrderWithoutPriceIsTheShortestOfAllOrders) {
  Random random(7);
  for (int n = 0; n < 60; ++n) {
    auto request = any_visit(random);
    request.policy.order = OrderForce::soft;
    request.policy.soft_order_minutes = 0;
    const std::vector<std::vector<bool>> none(request.applications.size(),
                                              std::vector<bool>(request.applications.size()));
    const auto expected = brute_force::Oracle(request, none, false).least_basin_time();
    const auto timeline = schedule(request);
    ASSERT_EQ(timeline.has_value(), expected.has_value()) << "visit " << n;
    if (!timeline) continue;
    EXPECT_NEAR(timeline->basin_min, *expected, 1e-9) << "visit " << n;
  }
}

}  // namespace
}  // namespace strandline
