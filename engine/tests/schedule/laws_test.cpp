// Laws of the clock for any visit.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "judge.h"
#include "strandline/schedule.h"
#include "visits.h"

namespace strandline {
namespace {

Application any_application(int i) {
  Application a;
  a.id = a.zone = "zone " + std::to_string(i);
  a.bowl = *rc::gen::element<std::string>("A", "B");
  a.area =
      *rc::gen::element(AreaKind::crown, AreaKind::nape, AreaKind::sides, AreaKind::temples, AreaKind::front_hairline);
  a.span = *rc::gen::element(SpanKind::regrowth, SpanKind::mids, SpanKind::ends);
  a.touches_scalp = a.span == SpanKind::regrowth;
  a.lightening = a.bowl == "B" && *rc::gen::arbitrary<bool>();
  a.packet = !a.touches_scalp && *rc::gen::inRange(0, 4) == 0;
  a.apply = {*rc::gen::inRange(4, 60) / 4.0, 1};
  a.min = *rc::gen::inRange(5, 35);
  a.target = a.min + *rc::gen::inRange(0, 6);
  a.max = a.min + a.apply.mean + *rc::gen::inRange(0, 60);
  a.white_share = *rc::gen::inRange(0, 11) / 10.0;
  a.resistance = *rc::gen::inRange(0, 11) / 10.0;
  a.porosity = *rc::gen::inRange(0, 4);
  return a;
}

rc::Gen<ScheduleRequest> any_visit() {
  return rc::gen::exec([] {
    ScheduleRequest r;
    const int n = *rc::gen::inRange(1, 7);
    for (int i = 0; i < n; ++i) r.applications.push_back(any_application(i));
    for (const std::string id : {"A", "B"})
      r.bowls.push_back(
          {id, id, ProductClass::permanent, {*rc::gen::inRange(2, 7) * 1.0, 0.5}, *rc::gen::inRange(30, 70) * 1.0});
    r.people = {visits::colourist()};
    if (*rc::gen::arbitrary<bool>()) r.people.push_back(visits::assistant());
    r.tail = visits::tail();
    r.policy = visits::house_policy();
    r.policy.develop_to = *rc::gen::element(DevelopTo::minimum, DevelopTo::target);
    return r;
  });
}

RC_GTEST_PROP(ScheduleLaws, EveryPlanKeepsEveryRule, ()) {
  auto request = *any_visit();
  if (*rc::gen::arbitrary<bool>()) request.basin_taken = {{*rc::gen::inRange(20, 80) * 1.0, 90}};
  if (*rc::gen::arbitrary<bool>()) request.people.back().from = *rc::gen::inRange(0, 30);
  if (request.people.size() > 1 && *rc::gen::arbitrary<bool>())
    request.people.back().until = *rc::gen::inRange(40, 120);
  const auto timeline = schedule(request);
  RC_CLASSIFY(timeline.has_value());
  if (timeline) RC_ASSERT(judge::faults(request, *timeline) == std::vector<std::string>{});
}

RC_GTEST_PROP(ScheduleLaws, OneMorePersonNeverMakesItLater, ()) {
  const auto request = *any_visit();
  auto more = request;
  more.people.push_back(visits::second_colourist());
  const auto before = schedule(request), after = schedule(more);
  if (!before) return;
  RC_ASSERT(after.has_value());
  RC_ASSERT(after->finish_min <= before->finish_min);
}

RC_GTEST_PROP(ScheduleLaws, ALongerMinimumNeverMakesItEarlier, ()) {
  auto request = *any_visit();
  request.policy.develop_to = DevelopTo::minimum;
  auto longer = request;
  auto& a = longer.applications[*rc::gen::inRange<std::size_t>(0, longer.applications.size())];
  // The target stays: by it what needs longest starts first, and another order may be earlier.
  a.min = std::min(a.target, a.min + *rc::gen::inRange(1, 10));
  const auto before = schedule(request), after = schedule(longer);
  if (!after) return;
  RC_ASSERT(before.has_value());
  RC_ASSERT(after->finish_min >= before->finish_min);
}

RC_GTEST_PROP(ScheduleLaws, OrderOfTheListsChangesNothing, ()) {
  const auto request = *any_visit();
  auto other = request;
  std::ranges::reverse(other.applications);
  std::ranges::reverse(other.bowls);
  std::ranges::reverse(other.people);
  const auto shift = *rc::gen::inRange<std::size_t>(0, other.applications.size());
  std::rotate(other.applications.begin(), other.applications.begin() + static_cast<long>(shift),
              other.applications.end());
  const auto a = schedule(request), b = schedule(other);
  RC_ASSERT(a.has_value() == b.has_value());
  if (!a) return;
  RC_ASSERT(a->tasks.size() == b->tasks.size());
  for (std::size_t i = 0; i < a->tasks.size(); ++i) {
    RC_ASSERT(a->tasks[i].id == b->tasks[i].id);
    RC_ASSERT(a->tasks[i].who == b->tasks[i].who);
    RC_ASSERT(a->tasks[i].start_min == b->tasks[i].start_min);
    RC_ASSERT(a->tasks[i].earliest == b->tasks[i].earliest);
  }
  RC_ASSERT(a->finish_mean == b->finish_mean);
}

RC_GTEST_PROP(ScheduleLaws, ATakenBasinNeverMakesItEarlier, ()) {
  const auto request = *any_visit();
  auto taken = request;
  const double from = *rc::gen::inRange(0, 100);
  taken.basin_taken = {{from, from + *rc::gen::inRange(1, 30)}};
  const auto before = schedule(request), after = schedule(taken);
  if (before && after) RC_ASSERT(after->finish_min >= before->finish_min);
}

RC_GTEST_PROP(ScheduleLaws, RemediesThatAreNamedDoMend, ()) {
  const auto request = *any_visit();
  const auto timeline = schedule(request);
  if (timeline || timeline.error()[0].code != "clock_breaks") return;
  const auto& params = timeline.error()[0].params;
  RC_ASSERT(std::stod(params.at("minutes")) > 0);
  auto more = request;
  more.people.push_back(visits::second_colourist());
  RC_ASSERT(schedule(more).has_value() == (params.at("second_pair_of_hands") == "yes"));
  auto stretched = request;
  for (auto& a : stretched.applications) a.max += std::stod(params.at("minutes"));
  RC_ASSERT(schedule(stretched).has_value());
}

}  // namespace
}  // namespace strandline
