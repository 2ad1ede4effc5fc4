// A visit that runs, planned anew after a mark: every rule kept, and as early as any plan.
#include "schedule/carry_on.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <random>

#include "brute_force.h"
#include "schedule/order.h"
#include "visits.h"

namespace strandline {
namespace {

using Random = std::mt19937;

int pick(Random& random, int from, int to) {
  return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
}

ScheduleRequest any_visit(Random& random, int most) {
  static const AreaKind areas[] = {AreaKind::crown, AreaKind::nape, AreaKind::sides, AreaKind::front_hairline};
  ScheduleRequest r;
  r.policy = visits::house_policy();
  r.policy.develop_to = DevelopTo::minimum;
  r.policy.prepare.mean = pick(random, 0, 5);
  const int bowls = pick(random, 1, 2), n = pick(random, 2, most);
  int longest = 0;
  for (int i = 0; i < n; ++i) {
    Application a;
    a.id = a.zone = "zone " + std::to_string(i);
    a.bowl = std::string(1, static_cast<char>('A' + pick(random, 0, bowls - 1)));
    a.area = areas[pick(random, 0, 3)];
    a.span = static_cast<SpanKind>(pick(random, 0, 2));
    a.touches_scalp = a.span == SpanKind::regrowth;
    a.packet = most <= 3 && pick(random, 0, 3) == 0;
    a.apply.mean = pick(random, 2, 12);
    a.min = a.target = pick(random, 3, 25);
    a.max = a.min + a.apply.mean + pick(random, 6, 45);
    a.lightening = a.bowl == "B";
    longest = std::max(longest, static_cast<int>(a.apply.mean));
    r.applications.push_back(a);
  }
  for (int b = 0; b < bowls; ++b) {
    const double mix = pick(random, 1, 5);
    r.bowls.push_back({std::string(1, static_cast<char>('A' + b)),
                       "",
                       ProductClass::permanent,
                       {mix, 0},
                       mix + longest + pick(random, 5, 40)});
  }
  r.people = {visits::colourist()};
  if (most <= 3 && pick(random, 0, 1))
    r.people.push_back(pick(random, 0, 1) ? visits::assistant() : visits::second_colourist());
  r.tail = visits::tail();
  return r;
}

const TimelineTask* task_of(const Timeline& t, const std::string& id) {
  const auto found = std::ranges::find(t.tasks, id, &TimelineTask::id);
  return found == t.tasks.end() ? nullptr : &*found;
}

// Times that marks have made are over: nothing that is still planned could mend them.
bool over_already(const ScheduleRequest& r, const Timeline& t, const Mark& mark) {
  double soonest = mark.at_min, latest = 1e9;
  for (const auto& d : t.developments) {
    const auto& a = *std::ranges::find(r.applications, d.application, &Application::id);
    const bool on = d.first_touch < mark.at_min || "apply:" + d.application == mark.task;
    if (!on || d.leaves_at <= mark.at_min) continue;
    if (!a.packet) latest = std::min(latest, d.first_touch + a.max);
    if (a.packet && std::max(mark.at_min, d.last_touch + a.min) > d.first_touch + a.max) return true;
    soonest = std::max(soonest, d.last_touch + a.min);
  }
  return soonest > latest;
}

// The rules of hands, hair and mixes for what lies ahead of `at`; nothing of how it was planned.
std::vector<std::string> faults(const ScheduleRequest& r, const Timeline& t, double at,
                                const std::string& marked = "") {
  constexpr double kEps = 1e-9;
  std::vector<std::string> out;
  for (const auto& a : t.tasks)
    for (const auto& b : t.tasks)
      if (a.id < b.id && a.who == b.who && a.during.empty() && b.during.empty() && a.start_min < b.end_min - kEps &&
          b.start_min < a.end_min - kEps && std::max(a.end_min, b.end_min) > at + kEps)
        out.push_back(a.id + " and " + b.id + " share hands");
  for (const auto& d : t.developments) {
    const auto& a = *std::ranges::find(r.applications, d.application, &Application::id);
    if (d.leaves_at <= at) continue;
    if (d.leaves_at < d.last_touch + a.min - kEps) out.push_back(a.id + " too short on the hair");
    if (d.leaves_at > d.first_touch + a.max + kEps) out.push_back(a.id + " too long on the hair");
  }
  for (const auto& a : t.tasks) {
    if (a.kind != TaskKind::apply || a.start_min < at - kEps || a.id == marked) continue;
    const auto* mix = task_of(t, "mix:" + a.bowl + ":" + std::to_string(a.mix));
    const auto& bowl = *std::ranges::find(r.bowls, a.bowl, &ScheduledBowl::id);
    if (!mix || mix->end_min > a.start_min + kEps) out.push_back(a.id + " before its mix");
    if (mix && a.end_min > mix->start_min + bowl.mix_life + kEps) out.push_back(a.id + " from a stale mix");
  }
  return out;
}

std::vector<std::vector<bool>> house_order(const ScheduleRequest& r) {
  const auto rules = order_rules(r.applications, r.policy);
  std::vector<std::vector<bool>> later(rules.size(), std::vector<bool>(rules.size()));
  for (std::size_t i = 0; i < rules.size(); ++i)
    for (std::size_t j = 0; j < rules.size(); ++j) later[i][j] = rules[i].later >> j & 1;
  return later;
}

// An application that is done some minutes late, or begun late.
Mark any_mark(Random& random, const Timeline& t) {
  std::vector<const TimelineTask*> applies;
  for (const auto& task : t.tasks)
    if (task.kind == TaskKind::apply) applies.push_back(&task);
  const auto& task = *applies[random() % applies.size()];
  if (pick(random, 0, 1)) return {task.id, Marked::done, std::round(task.end_min) + pick(random, 0, 6)};
  return {task.id, Marked::started, std::round(task.start_min) + pick(random, 0, 6)};
}

TEST(CarryOn, WithoutAnythingNewThePlanStays) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  for (const double at : {0.0, 7.0, 21.5, 40.0}) {
    long nodes = 30000;
    const auto on = carry_on(request, told, nullptr, at, {}, nodes).value();
    EXPECT_NEAR(on.timeline.basin_min, told.basin_min, 1e-9) << at;
    EXPECT_TRUE(on.too_late.empty()) << at;
    EXPECT_EQ(faults(request, on.timeline, at), std::vector<std::string>{}) << at;
  }
}

TEST(CarryOn, ALateHandMovesWhatComesAfterIt) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  const auto& first = *std::ranges::find(told.tasks, TaskKind::apply, &TimelineTask::kind);
  const Mark late{first.id, Marked::done, first.end_min + 4};
  long nodes = 30000;
  const auto on = carry_on(request, told, &late, late.at_min, {}, nodes).value();
  EXPECT_DOUBLE_EQ(task_of(on.timeline, first.id)->end_min, first.end_min + 4);
  EXPECT_DOUBLE_EQ(on.timeline.basin_min, told.basin_min + 4);
  EXPECT_EQ(faults(request, on.timeline, late.at_min), std::vector<std::string>{});
}

TEST(CarryOn, AnEmptyBowlIsMixedAgain) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  const Mark empty{"mix:A:1", Marked::ran_out, 20};
  long nodes = 30000;
  const auto on = carry_on(request, told, &empty, 20, {}, nodes).value();
  const auto* again = task_of(on.timeline, "mix:A:2");
  ASSERT_NE(again, nullptr);
  EXPECT_GE(again->start_min, 20);
  for (const auto& task : on.timeline.tasks)
    if (task.kind == TaskKind::apply && task.bowl == "A" && task.start_min >= 20) EXPECT_EQ(task.mix, 2) << task.id;
  EXPECT_EQ(faults(request, on.timeline, 20), std::vector<std::string>{});
}

TEST(CarryOn, WhatIsNotWantedIsNotPlanned) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  long nodes = 30000;
  const auto on = carry_on(request, told, nullptr, 12, {"nape/ends", "sides/ends"}, nodes).value();
  EXPECT_EQ(task_of(on.timeline, "apply:nape/ends"), nullptr);
  EXPECT_EQ(task_of(on.timeline, "apply:sides/ends"), nullptr);
  EXPECT_LE(on.timeline.basin_min, told.basin_min);
}

// The longest time of what is on the hair comes before what is not on it yet.
TEST(CarryOn, WhatFindsNoRoomIsTold) {
  auto request = visits::virgin_lift();
  const auto told = schedule(request).value();
  const auto& first = *std::ranges::find(told.tasks, TaskKind::apply, &TimelineTask::kind);
  const Mark late{first.id, Marked::done, first.end_min + 30};
  long nodes = 30000;
  const auto on = carry_on(request, told, &late, late.at_min, {}, nodes).value();
  EXPECT_FALSE(on.too_late.empty());
  EXPECT_EQ(faults(request, on.timeline, late.at_min), std::vector<std::string>{});
}

TEST(CarryOn, NobodyIsAtTheBasinWhileSomethingIsLaidOn) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  const Mark late{"apply:" + told.order.back().application, Marked::done, told.basin_min + 1};
  long nodes = 30000;
  const auto on = carry_on(request, told, &late, late.at_min, {}, nodes).value();
  EXPECT_GT(on.timeline.basin_min, told.basin_min + 1);
}

TEST(CarryOn, AtTheBasinEverythingIsOff) {
  const auto request = visits::two_bowls();
  const auto told = schedule(request).value();
  const Mark rinsed{"emulsify:1", Marked::started, told.basin_min + 3};
  long nodes = 30000;
  const auto on = carry_on(request, told, &rinsed, rinsed.at_min, {}, nodes).value();
  EXPECT_DOUBLE_EQ(on.timeline.basin_min, told.basin_min + 3);
  EXPECT_DOUBLE_EQ(on.timeline.finish_min, told.finish_min + 3);
  for (const auto& d : on.timeline.developments) EXPECT_DOUBLE_EQ(d.leaves_at, told.basin_min + 3);
}

TEST(CarryOn, IsAsEarlyAsAnyPlanFromThere) {
  Random random(20261129);
  int compared = 0, moved = 0;
  for (int n = 0; n < 260; ++n) {
    const auto request = any_visit(random, n % 3 ? 3 : 5);
    const auto told = schedule(request);
    if (!told) continue;
    const auto mark = any_mark(random, *told);
    long nodes = 1000000;
    const auto on = carry_on(request, *told, &mark, mark.at_min, {}, nodes);
    ASSERT_TRUE(on) << n;
    // The oracle is told the past by the answer's own tasks: what they did is no question.
    const auto begun = [&](const TimelineTask* t) { return t && t->start_min < mark.at_min + (t->id == mark.task); };
    bool unused = false;
    for (const auto& t : on->timeline.tasks)
      if (t.kind == TaskKind::mix && begun(&t))
        unused = unused || std::ranges::none_of(on->timeline.tasks, [&](const TimelineTask& a) {
                   return a.kind == TaskKind::apply && a.bowl == t.bowl && a.mix == t.mix && begun(&a);
                 });
    if (unused || !on->too_late.empty()) continue;
    brute_force::Oracle oracle(request, house_order(request), false);
    oracle.now = mark.at_min;
    oracle.past = [&](char kind, const std::vector<int>& apps) -> std::optional<brute_force::Past> {
      const TimelineTask* task = nullptr;
      if (kind == 'p') task = task_of(on->timeline, "prepare");
      for (const int a : apps) {
        const auto* apply = task_of(on->timeline, "apply:" + request.applications[a].id);
        if (kind == 'a') task = apply;
        if (kind == 'r') task = task_of(on->timeline, "remove:" + request.applications[a].id);
        if (kind == 'm' && begun(apply)) {
          const auto* mix = task_of(on->timeline, "mix:" + apply->bowl + ":" + std::to_string(apply->mix));
          if (task && task != mix) return brute_force::Past{-1, 0, -1};  // one dish, two mixes
          task = mix;
        }
      }
      if (!begun(task)) return std::nullopt;
      const auto hands = std::ranges::find(request.people, task->who, &Person::id) - request.people.begin();
      return brute_force::Past{task->start_min, task->end_min - task->start_min, static_cast<int>(hands)};
    };
    const auto expected = oracle.least_basin_time();
    const auto broken = faults(request, on->timeline, mark.at_min, mark.task);
    EXPECT_EQ(broken.empty(), expected.has_value()) << n;
    if (!expected) continue;  // marks have made times that nothing could mend
    EXPECT_TRUE(on->timeline.proven) << n;
    EXPECT_NEAR(on->timeline.basin_min, *expected, 1e-9) << n;
    ++compared;
    moved += on->timeline.basin_min > told->basin_min;
  }
  EXPECT_GT(compared, 80);
  EXPECT_GT(moved, 30);
}

RC_GTEST_PROP(CarryOnLaws, MarkUponMarkEveryRuleHolds, ()) {
  Random random(*rc::gen::arbitrary<unsigned>());
  const auto request = any_visit(random, 6);
  const auto told = schedule(request);
  if (!told) return;
  Timeline timeline = *told;
  double at = 0;
  std::vector<std::string> left_out;
  for (int n = 0; n < 4; ++n) {
    auto mark = any_mark(random, timeline);
    at = mark.at_min = std::max(at, mark.at_min);
    long nodes = 30000;
    const auto on = carry_on(request, timeline, &mark, at, left_out, nodes);
    RC_ASSERT(on.has_value());
    if (over_already(request, on->timeline, mark)) return;
    RC_ASSERT(faults(request, on->timeline, at, mark.task) == std::vector<std::string>{});
    left_out.insert(left_out.end(), on->too_late.begin(), on->too_late.end());
    timeline = on->timeline;
    if (std::ranges::count(timeline.tasks, TaskKind::apply, &TimelineTask::kind) == 0) return;
  }
}

}  // namespace
}  // namespace strandline
