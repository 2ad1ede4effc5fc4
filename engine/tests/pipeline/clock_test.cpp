#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/cleared.h"
#include "engine/tests/pipeline/one_bowl.h"

namespace strandline {
namespace {

using namespace testing_support;

// Two bowls on the crown: the strong one first, the weak one when it is rinsed out.
Visit two_steps() {
  Visit v = clocked_visit();
  const Bowl a = tint_on({"crown/regrowth"});
  Bowl b = a;
  b.label = "B", b.step = 2;
  v.bowls = {b, a};                                                        // the order of the document does not matter
  for (Area& area : v.head.areas) area.spans[0].wet_stretch_percent = 45;  // both steps find it sound
  return cleared(v);
}

std::vector<PlannedBowl> mixed(const Visit& v) {
  std::vector<PlannedBowl> all(v.bowls.size());
  for (size_t i = 0; i < all.size(); ++i) all[i].bowl = v.bowls[i];
  return all;
}

bool holds(const Timeline& t, int step, TaskKind kind) {
  const TimelineStep s = t.steps[static_cast<size_t>(step) - 1];
  return std::any_of(t.tasks.begin(), t.tasks.end(), [&](const TimelineTask& task) {
    return task.kind == kind && task.start_min >= s.from_min - 1e-9 && task.end_min <= s.until_min + 1e-9;
  });
}

TEST(Clock, TheSecondStepBeginsWhenTheFirstIsRinsedOut) {
  const Visit v = two_steps();
  ASSERT_TRUE(check(v).empty());
  const auto t = clock(v, mixed(v));
  ASSERT_TRUE(t) << t.error().front().code;
  ASSERT_EQ(t->steps.size(), 2u);
  EXPECT_EQ(t->steps[0].from_min, 0);
  EXPECT_GT(t->steps[0].until_min, t->steps[0].basin_min) << "it is rinsed";
  EXPECT_EQ(t->steps[1].from_min, t->steps[0].until_min);
  EXPECT_EQ(t->finish_min, t->steps[1].until_min);
  EXPECT_EQ(t->basin_min, t->steps[1].basin_min);
  for (const TimelineTask& task : t->tasks) {
    if (task.bowl == "A") EXPECT_LE(task.end_min, t->steps[0].basin_min + 1e-9);
    if (task.bowl == "B") EXPECT_GE(task.start_min, t->steps[1].from_min - 1e-9) << "fresh: mixed only then";
  }
  ASSERT_EQ(t->developments.size(), 2u);
  for (const Development& d : t->developments) {
    EXPECT_GE(d.leaves_at, d.min_until - 1e-9) << d.bowl;
    EXPECT_LE(d.leaves_at, d.max_until + 1e-9) << d.bowl;
  }
}

TEST(Clock, TheHairIsTreatedAndPhotographedOnceAndPreparedOnce) {
  const Visit v = two_steps();
  const auto t = clock(v, mixed(v));
  ASSERT_TRUE(t);
  for (TaskKind once : {TaskKind::prepare, TaskKind::treat, TaskKind::photograph})
    EXPECT_EQ(std::count_if(t->tasks.begin(), t->tasks.end(), [&](const TimelineTask& x) { return x.kind == once; }),
              1);
  EXPECT_TRUE(holds(*t, 1, TaskKind::rinse));
  EXPECT_TRUE(holds(*t, 1, TaskKind::dry)) << "the second bowl goes on dry hair";
  EXPECT_TRUE(holds(*t, 2, TaskKind::rinse));
}

TEST(Clock, DampHairIsNotDriedBetweenSteps) {
  Visit v = two_steps();
  const auto dry = clock(v, mixed(v));
  for (Bowl& b : v.bowls) b.formula.damp_hair = b.label == "B";
  const auto damp = clock(v, mixed(v));
  ASSERT_TRUE(dry && damp);
  EXPECT_FALSE(holds(*damp, 1, TaskKind::dry));
  EXPECT_LT(damp->finish_min, dry->finish_min);
}

TEST(Clock, StepsAddTheirDoubt) {
  Visit v = two_steps();
  const auto both = clock(v, mixed(v));
  std::erase_if(v.bowls, [](const Bowl& b) { return b.step == 2; });
  const auto one = clock(v, mixed(v));
  ASSERT_TRUE(both && one);
  EXPECT_GT(both->finish_sd, one->finish_sd);
  EXPECT_LE(both->clocks_probability, one->clocks_probability + 1e-12);
  EXPECT_GT(both->on_time_probability, 0);
  EXPECT_LE(both->on_time_probability, 1);
}

TEST(Clock, APersonWhoHasLeftDoesNothingInTheNextStep) {
  Visit v = two_steps();
  const std::vector<Skill> all = {Skill::prepare, Skill::mix, Skill::apply, Skill::check, Skill::basin, Skill::finish};
  const auto free = clock(v, mixed(v));
  ASSERT_TRUE(free);
  Person stays{"stays", "colourist", all, 1, 0, {}};
  Person leaves{"leaves", "assistant", all, 1, 0, free->steps[0].basin_min};
  v.people = {stays, leaves};
  const auto t = clock(v, mixed(v));
  ASSERT_TRUE(t) << t.error().front().code;
  for (const TimelineTask& task : t->tasks)
    if (task.who == "leaves") EXPECT_LE(task.end_min, *leaves.until + 1e-9);
}

// A lightener's longest time counts from its first touch, the time its result is predicted for from the last.
TEST(Clock, WhatCannotStayForItsTimeStaysAsLongAsItCanAndIsTold) {
  Visit v = two_steps();
  v.bowls.pop_back();
  v.bowls[0].step = 1;
  Range& range = v.shelf.ranges[0];
  range.cls = ProductClass::lightener;
  range.minutes = {15, 30, 45};
  v.bowls[0].formula.minutes = 44;  // 7 minutes to paint 200 cm² leave 38
  const auto told = what_if(v);
  ASSERT_TRUE(told);
  ASSERT_EQ(told->timeline.developments.size(), 1u);
  const Development& d = told->timeline.developments[0];
  const double stays = d.leaves_at - d.last_touch;
  EXPECT_EQ(told->timeline.developed_to, DevelopTo::minimum);
  EXPECT_LE(d.leaves_at, d.max_until + 1e-9);
  EXPECT_LT(stays, 43);
  EXPECT_GT(d.leaves_at, d.max_until - 2) << "no shorter than the clocks ask for";
  auto early = [](const VisitPlan& p) {
    return std::count_if(p.plan.notes.begin(), p.plan.notes.end(),
                         [](const Problem& note) { return note.code == "comes_off_early"; });
  };
  EXPECT_EQ(early(*told), 1);
  v.bowls[0].formula.minutes = 30;
  const auto fits = what_if(v);
  ASSERT_TRUE(fits);
  EXPECT_EQ(fits->timeline.developed_to, DevelopTo::target);
  EXPECT_EQ(early(*fits), 0);
}

TEST(Steps, AZoneMayBeInOneBowlOfEachStep) {
  Visit v = two_steps();
  EXPECT_TRUE(check(v).empty());
  for (Bowl& b : v.bowls) b.step = 1;
  const Problems problems = check(v);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].code, "zone_in_two_bowls");
  EXPECT_EQ(problems[0].path, "/bowls/1/zones/0");
}

TEST(Steps, WhatIfFollowsTheHairFromStepToStep) {
  const Visit v = two_steps();
  const auto both = what_if(v);
  ASSERT_TRUE(both);
  // The same two by hand, in the order they go on, each zone from the middle of its application to where it leaves.
  std::vector<Step> steps;
  for (const char* label : {"A", "B"})
    for (const Bowl& b : v.bowls)
      if (b.label == label) {
        steps.push_back({b.formula, b.zones});
        for (const std::string& zone : b.zones)
          for (const Development& d : both->timeline.developments)
            if (d.bowl == label && d.zone == zone)
              steps.back().minutes.push_back(d.leaves_at - (d.first_touch + d.last_touch) / 2);
        ASSERT_EQ(steps.back().minutes.size(), b.zones.size());
      }
  const auto direct = predict(v.head, steps, v.shelf, {}, {});
  ASSERT_TRUE(direct);
  for (size_t z = 0; z < direct->zones.size(); ++z)
    EXPECT_EQ(both->plan.zones[z].result.planned.lab.l, direct->zones[z].planned.lab.l);
  EXPECT_EQ(both->plan.bowls.front().bowl.label, "A");
  EXPECT_EQ(both->plan.zones[1].bowl, "B") << "the bowl that serves it last";
  EXPECT_EQ(both->timeline.steps.size(), 2u);
}

TEST(Steps, RulesAreThoseOfTheHairAsItIsByThen) {
  // Common practice: lightened hair is toned with a weak developer, not lifted again.
  Visit v = two_steps();
  Range lift = v.shelf.ranges[0];
  lift.id = lift.name = "lift", lift.cls = ProductClass::lightener, lift.reference = ReferenceProcess{6, 2, 40},
  lift.ratios = {2};
  lift.alkaline_lift = 1;
  v.shelf.ranges.push_back(lift);
  Product powder;
  powder.id = powder.name = "powder", powder.range = "lift", powder.cls = ProductClass::lightener;
  powder.stock_g = 500, powder.fully_declared = true;
  v.shelf.products.push_back(powder);
  for (Bowl& b : v.bowls)
    if (b.label == "A") b.formula.range = "lift", b.formula.parts = {{"powder", 30}, {"developer-6", 60}};
  auto toned = [](const VisitPlan& p) {
    return std::any_of(p.plan.notes.begin(), p.plan.notes.end(), [](const Problem& note) {
      const auto bowl = note.params.find("bowl");
      return note.code == "ceiling" && bowl != note.params.end() && bowl->second == "B";
    });
  };
  const auto after_lightening = what_if(v);
  ASSERT_TRUE(after_lightening) << after_lightening.error().front().code;
  EXPECT_TRUE(toned(*after_lightening));
  std::erase_if(v.bowls, [](const Bowl& b) { return b.label == "A"; });
  const auto alone = what_if(v);
  ASSERT_TRUE(alone);
  EXPECT_FALSE(toned(*alone)) << "on natural hair the same bowl breaks no rule";
}

}  // namespace
}  // namespace strandline
