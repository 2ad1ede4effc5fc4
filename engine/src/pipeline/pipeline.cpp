#include "strandline/pipeline.h"

#include <algorithm>
#include <functional>

#include "formulate/judge.h"
#include "formulate/pour.h"
#include "formulate/reasons.h"
#include "review/remake.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

// Where a bowl comes off before the time that its result was predicted for.
Problems cut_short(const Timeline& timeline) {
  Problems notes;
  if (timeline.developed_to != DevelopTo::minimum) return notes;
  constexpr double kMinute = 1;
  for (const Development& d : timeline.developments)
    if (d.leaves_at < d.target_at - kMinute)
      notes.push_back({"comes_off_early",
                       "",
                       {{"bowl", d.bowl},
                        {"zone", d.zone},
                        {"minutes", figure(d.leaves_at - d.last_touch, 0)},
                        {"planned", figure(d.target_at - d.last_touch, 0)}}});
  return notes;
}

// The clock of a plan. A plan that no clock can hold is still a plan: the notes say which clock breaks.
void add_timeline(const Visit& visit, VisitPlan& out) {
  if (out.plan.bowls.empty()) return;
  if (auto timeline = clock(visit, out.plan.bowls)) {
    const Problems early = cut_short(*timeline);
    out.plan.notes.insert(out.plan.notes.end(), early.begin(), early.end());
    out.timeline = std::move(*timeline);
  } else {
    out.plan.notes.insert(out.plan.notes.end(), timeline.error().begin(), timeline.error().end());
  }
}

Result<Timeline> clock_of(const Visit& visit, const RouteVisit& v) {
  std::vector<PlannedBowl> bowls;
  for (const RouteStep& step : v.steps) bowls.insert(bowls.end(), step.bowls.begin(), step.bowls.end());
  return clock(visit, bowls);
}

bool beside_packets(const PlannedBowl& b) {
  return std::any_of(b.why.begin(), b.why.end(), [](const Problem& why) { return why.code == kBesidePackets; });
}

// Bowls that would colour the hair between packets meanwhile go on after them.
void move_behind_packets(RouteVisit& v) {
  std::vector<PlannedBowl>& first = v.steps.front().bowls;
  const auto beside = std::stable_partition(first.begin(), first.end(), std::not_fn(beside_packets));
  if (beside == first.end()) return;
  if (v.steps.size() == 1) v.steps.push_back({"colour", {}, false, {}});
  for (auto b = beside; b != first.end(); ++b) {
    std::erase_if(b->why, [](const Problem& why) { return why.code == kBesidePackets; });
    b->bowl.step = 2;
    v.steps.back().bowls.push_back(std::move(*b));
  }
  first.erase(beside, first.end());
}

// Each visit of a route has its own clock; a clock that breaks is told with the route.
void add_timelines(const Visit& visit, Route& route) {
  for (RouteVisit& v : route.visits) {
    auto timeline = clock_of(visit, v);
    if (!timeline) {
      move_behind_packets(v);
      timeline = clock_of(visit, v);
    }
    if (timeline) {
      const Problems early = cut_short(*timeline);
      route.notes.insert(route.notes.end(), early.begin(), early.end());
      v.timeline = std::move(*timeline);
    } else {
      route.notes.insert(route.notes.end(), timeline.error().begin(), timeline.error().end());
    }
  }
}

PlannedBowl as_mixed(const Bowl& bowl, const Visit& visit) {
  PlannedBowl b;
  b.bowl = bowl;
  b.grams = grams(bowl.formula);
  b.cost = cost(bowl.formula, visit.shelf);
  const Range* range = find_range(visit.shelf, bowl.formula.range);
  if (const auto made = chemistry(bowl.formula, visit.shelf)) b.on_head_peroxide_percent = made->peroxide_percent;
  if (range)
    if (auto limits = law::check_limits(composition(bowl.formula, visit.shelf), use_of(range->cls))) b.limits = *limits;
  return b;
}

Problems broken_by(const Visit& visit, const std::vector<Bowl>& bowls, const std::vector<Situation>& found) {
  Problems all;
  for (size_t i = 0; i < bowls.size(); ++i) {
    const Problems broken = broken_rules(found[i].head, bowls[i], visit.shelf, visit.policy.formula);
    all.insert(all.end(), broken.begin(), broken.end());
  }
  return all;
}

}  // namespace

std::vector<Bowl> by_step(std::vector<Bowl> bowls) {
  std::stable_sort(bowls.begin(), bowls.end(), [](const Bowl& a, const Bowl& b) { return a.step < b.step; });
  return bowls;
}

Problems stops(const Visit& visit) {
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, 1);
  return found ? broken_by(visit, bowls, *found) : found.error();
}

Result<VisitPlan> plan(const Visit& visit, const FormulateOptions& options) {
  VisitPlan out;
  auto targets = aim(visit.head, visit.aims, visit.shelf);
  if (!targets) return tl::unexpected(targets.error());
  out.targets = std::move(*targets);
  auto bowls = formulate(visit.head, out.targets, visit.shelf, visit.policy.formula, options);
  if (!bowls) return tl::unexpected(bowls.error());
  out.plan = std::move(*bowls);
  out.assessment = assess(visit.head);
  add_timeline(visit, out);
  auto ways = routes(visit.head, out.targets, visit.shelf, visit.policy.formula, out.plan, options);
  if (!ways) return tl::unexpected(ways.error());
  out.routes = std::move(*ways);
  for (Route& route : out.routes) add_timelines(visit, route);
  return out;
}

Result<VisitPlan> what_if(const Visit& visit, const PredictOptions& options) {
  VisitPlan out;
  if (!visit.aims.empty()) {
    auto targets = aim(visit.head, visit.aims, visit.shelf);
    if (!targets) return tl::unexpected(targets.error());
    out.targets = std::move(*targets);
  }
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, 1);
  if (!found) return tl::unexpected(found.error());
  std::vector<Step> steps;
  for (const Bowl& b : bowls) {
    out.plan.bowls.push_back(as_mixed(b, visit));
    if (out.plan.bowls.back().limits.overall == law::Status::unknown_percentage)
      out.plan.notes.push_back({"percentages_unknown", "", {{"bowl", b.label}}});
    steps.push_back({b.formula, b.zones});
    out.plan.grams += out.plan.bowls.back().grams;
    out.plan.cost += out.plan.bowls.back().cost;
  }
  const Problems broken = broken_by(visit, bowls, *found);
  out.plan.notes.insert(out.plan.notes.end(), broken.begin(), broken.end());
  auto prediction = predict(visit.head, steps, visit.shelf, out.targets, options);
  if (!prediction) return tl::unexpected(prediction.error());
  const Situation now = found->empty() ? at_start(visit.head, 1) : found->back();
  out.plan.zones = judged(now, out.targets, *prediction, bowls, visit.shelf, visit.policy.formula);
  out.plan.currency = visit.shelf.currency;
  out.plan.report.stopped = "not_searched";
  for (const ZoneResult& z : prediction->zones) out.assessment.zones.push_back(z.today);
  add_timeline(visit, out);
  return out;
}

}  // namespace strandline
