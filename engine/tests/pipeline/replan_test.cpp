// A running visit of two steps, planned anew mark upon mark.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>

#include "engine/tests/cleared.h"
#include "engine/tests/pipeline/one_bowl.h"
#include "strandline/pipeline.h"
#include "strandline/running.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr double kEps = 1e-6;

Visit two_steps() {
  Visit v = clocked_visit(16);
  Bowl a = tint_on({});
  for (const ZoneRef& z : zones(v.head)) a.zones.push_back(z.id);
  Bowl b = a;
  b.label = "B", b.step = 2;
  v.bowls = {a, b};
  for (Area& area : v.head.areas)
    for (Span& span : area.spans) span.wet_stretch_percent = 45;
  return cleared(v);
}

Running begun(const Visit& v) {
  Running r;
  std::vector<PlannedBowl> planned(v.bowls.size());
  for (size_t i = 0; i < planned.size(); ++i) planned[i].bowl = v.bowls[i];
  const auto timeline = clock(v, planned);
  EXPECT_TRUE(timeline) << timeline.error().front().code;
  if (timeline) r.plan = *timeline;
  for (const Bowl& b : v.bowls) r.bowls.push_back({b, "tint", {}, 60});
  return r;
}

const TimelineTask* task_of(const Timeline& t, const std::string& id) {
  const auto found = std::ranges::find(t.tasks, id, &TimelineTask::id);
  return found == t.tasks.end() ? nullptr : &*found;
}

// Rules of hands, hair, mixes and steps, from the timeline alone.
std::vector<std::string> faults(const Running& running, const Timeline& t, double at) {
  std::vector<std::string> out;
  for (const auto& a : t.tasks)
    for (const auto& b : t.tasks)
      if (a.id < b.id && a.who == b.who && a.during.empty() && b.during.empty() && a.start_min < b.end_min - kEps &&
          b.start_min < a.end_min - kEps && std::max(a.end_min, b.end_min) > at + kEps)
        out.push_back(a.id + " and " + b.id + " share hands");
  for (const auto& d : t.developments) {
    if (d.leaves_at <= at) continue;
    if (d.leaves_at < d.min_until - kEps) out.push_back(d.bowl + " on " + d.zone + " too short");
    if (d.leaves_at > d.max_until + kEps) out.push_back(d.bowl + " on " + d.zone + " too long");
    const auto step = std::ranges::find_if(running.bowls, [&](const RunningBowl& b) { return b.bowl.label == d.bowl; });
    const auto& times = t.steps[static_cast<size_t>(step->bowl.step) - 1];
    if (std::abs(d.leaves_at - times.basin_min) > kEps) out.push_back(d.zone + " not at its one basin time");
    if (d.first_touch < times.from_min - kEps) out.push_back(d.zone + " before its step");
  }
  for (const auto& a : t.tasks) {
    if (a.kind != TaskKind::apply || a.start_min < at - kEps) continue;
    const std::string prefix = a.id.starts_with("step 2: ") ? "step 2: " : "";
    const auto* mix = task_of(t, prefix + "mix:" + a.bowl + ":" + std::to_string(a.mix));
    if (!mix || mix->end_min > a.start_min + kEps) out.push_back(a.id + " before its mix");
    if (mix && a.end_min > mix->start_min + 60 + kEps) out.push_back(a.id + " from a stale mix");
  }
  for (size_t k = 1; k < t.steps.size(); ++k)
    if (t.steps[k].from_min < t.steps[k - 1].until_min - kEps) out.push_back("steps overlap");
  return out;
}

TEST(Replan, WithoutMarksThePlanStays) {
  const Visit v = two_steps();
  const Running r = begun(v);
  const auto now = replan(v, r, 0);
  ASSERT_TRUE(now) << now.error().front().code;
  EXPECT_EQ(now->timeline.finish_min, r.plan.finish_min);
  EXPECT_EQ(faults(r, now->timeline, 0), std::vector<std::string>{});
}

TEST(Replan, WhatIsLateInTheFirstStepMovesTheSecondByAsMuch) {
  const Visit v = two_steps();
  Running r = begun(v);
  const auto last = std::ranges::find_if(r.plan.tasks, [](const TimelineTask& t) { return t.kind == TaskKind::rinse; });
  ASSERT_NE(last, r.plan.tasks.end());
  r.marks = {{last->id, Marked::done, last->end_min + 7}};
  const auto now = replan(v, r, last->end_min + 7);
  ASSERT_TRUE(now);
  const double late = now->timeline.steps[0].until_min - r.plan.steps[0].until_min;
  EXPECT_NEAR(late, 7, 0.25 + kEps) << "a quarter is the grain of the clock";
  EXPECT_NEAR(now->timeline.steps[1].basin_min - r.plan.steps[1].basin_min, late, kEps);
  EXPECT_NEAR(now->timeline.finish_min - r.plan.finish_min, late, kEps);
  for (const Development& d : r.plan.developments) {
    if (d.bowl != "B") continue;
    const auto moved = std::ranges::find_if(now->timeline.developments,
                                            [&](const Development& m) { return m.bowl == "B" && m.zone == d.zone; });
    ASSERT_NE(moved, now->timeline.developments.end());
    EXPECT_NEAR(moved->leaves_at - moved->last_touch, d.leaves_at - d.last_touch, kEps) << "no minute is lost";
  }
}

TEST(Replan, AMarkOfTheSecondStepLeavesTheFirstAsItWas) {
  const Visit v = two_steps();
  Running r = begun(v);
  const auto apply = std::ranges::find_if(
      r.plan.tasks, [](const TimelineTask& t) { return t.kind == TaskKind::apply && t.bowl == "B"; });
  ASSERT_NE(apply, r.plan.tasks.end());
  r.marks = {{apply->id, Marked::done, apply->end_min + 4}};
  const auto now = replan(v, r, apply->end_min + 4);
  ASSERT_TRUE(now);
  EXPECT_EQ(now->timeline.steps[0].basin_min, r.plan.steps[0].basin_min);
  EXPECT_GE(now->timeline.steps[1].basin_min, r.plan.steps[1].basin_min);
  EXPECT_NEAR(task_of(now->timeline, apply->id)->end_min, apply->end_min + 4, 0.25 + kEps);
}

// Each step alone is as early as any plan (CarryOn.IsAsEarlyAsAnyPlanFromThere); one behind the other nothing is lost:
// the second begins when the first is over and takes what it takes by itself.
TEST(Replan, StepsFollowEachOtherWithoutAGap) {
  const Visit v = two_steps();
  std::mt19937 random(29);
  for (int n = 0; n < 25; ++n) {
    Running r = begun(v);
    std::vector<const TimelineTask*> first;
    for (const TimelineTask& t : r.plan.tasks)
      if (!t.id.starts_with("step ") && t.kind == TaskKind::apply) first.push_back(&t);
    ASSERT_FALSE(first.empty());
    const TimelineTask& task = *first[random() % first.size()];
    r.marks = {{task.id, Marked::done, task.end_min + static_cast<double>(random() % 5)}};
    const auto now = replan(v, r, r.marks[0].at_min);
    ASSERT_TRUE(now) << n;
    const Timeline& t = now->timeline;
    EXPECT_NEAR(t.steps[1].from_min, t.steps[0].until_min, kEps);
    EXPECT_NEAR(t.steps[1].until_min - t.steps[1].from_min, r.plan.steps[1].until_min - r.plan.steps[1].from_min, kEps);
  }
}

RC_GTEST_PROP(ReplanLaws, MarkUponMarkOverTwoStepsEveryRuleHolds, ()) {
  const Visit v = two_steps();
  Running r = begun(v);
  Timeline now = r.plan;
  double at = 0;
  const int marks = *rc::gen::inRange(1, 6);
  for (int n = 0; n < marks; ++n) {
    std::vector<const TimelineTask*> ahead;
    for (const TimelineTask& t : now.tasks)
      if ((t.kind == TaskKind::apply || t.kind == TaskKind::mix) && t.end_min > at) ahead.push_back(&t);
    if (ahead.empty()) return;
    const TimelineTask& task = *ahead[static_cast<size_t>(*rc::gen::inRange<int>(0, static_cast<int>(ahead.size())))];
    const bool done = *rc::gen::arbitrary<bool>();
    at = std::max(at, std::round(done ? task.end_min : task.start_min) + *rc::gen::inRange(0, 5));
    r.marks.push_back({task.id, done ? Marked::done : Marked::started, at});
    const auto told = replan(v, r, at);
    RC_ASSERT(told.has_value());
    now = told->timeline;
    // Times that marks made themselves are over; nothing that is planned could mend them.
    const bool over = std::ranges::any_of(
        now.developments, [&](const Development& d) { return d.first_touch <= at && d.max_until < d.min_until; });
    if (over || !told->too_late.empty()) return;
    RC_ASSERT(faults(r, now, at) == std::vector<std::string>{});
  }
}

}  // namespace
}  // namespace strandline
