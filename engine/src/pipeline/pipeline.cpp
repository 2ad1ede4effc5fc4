#include "strandline/pipeline.h"

#include <algorithm>
#include <functional>

#include "assess/strands.h"
#include "formulate/from.h"
#include "formulate/judge.h"
#include "formulate/reasons.h"
#include "formulate/turns.h"
#include "mix/on_hair.h"
#include "mix/pour.h"
#include "mix/within.h"
#include "pipeline/afterwards.h"
#include "pipeline/minutes.h"
#include "pipeline/to_the_lengths.h"
#include "review/remake.h"
#include "strandline/as_it_went.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

void add(Problems& notes, const Problems& more) { notes.insert(notes.end(), more.begin(), more.end()); }

// The clock of a plan. A plan that no clock can hold is still a plan: the notes say which clock breaks.
void add_timeline(const Visit& visit, VisitPlan& out) {
  if (out.plan.bowls.empty()) return;
  if (auto timeline = clock(visit, out.plan.bowls)) {
    out.timeline = std::move(*timeline);
    add(out.plan.notes, told_of(visit, out.plan.bowls, out.timeline));
  } else {
    add(out.plan.notes, timeline.error());
  }
}

// What every zone comes to when each bowl is on for as long as the clock leaves it there.
Result<std::vector<ZonePlan>> on_the_clock(const Visit& visit, const std::vector<Target>& targets,
                                           const std::vector<PlannedBowl>& bowls, const Situation& before,
                                           const PredictOptions& options) {
  return predict(visit.head, steps_of(bowls), visit.shelf, targets, options).map([&](const Prediction& p) {
    return judged(before, targets, p, bowls, visit.shelf, visit.policy.formula);
  });
}

// How long bowls of one step would be on by this visit's clock.
Clock clock_for(const Visit& visit) {
  return [&visit](std::vector<PlannedBowl> bowls) -> std::optional<std::vector<PlannedBowl>> {
    const auto timeline = clock(visit, bowls);
    if (!timeline) return std::nullopt;
    leave_on(bowls, *timeline);
    return bowls;
  };
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
      v.timeline = std::move(*timeline);
      for (const RouteStep& step : v.steps) add(route.notes, told_of(visit, step.bowls, v.timeline));
    } else {
      add(route.notes, timeline.error());
    }
  }
}

PlannedBowl as_mixed(const Bowl& bowl, const Visit& visit) {
  PlannedBowl b;
  b.bowl = bowl;
  b.on = on_alike(visit.head, bowl, bowl.formula.minutes);
  b.grams = grams(bowl.formula);
  b.cost = cost(bowl.formula, visit.shelf);
  const Range* range = find_range(visit.shelf, bowl.formula.range);
  if (const auto made = chemistry(bowl.formula, visit.shelf)) b.on_head_peroxide_percent = made->peroxide_percent;
  if (range)
    if (auto limits = law::check_limits(composition(bowl.formula, visit.shelf), use_of(range->cls))) b.limits = *limits;
  return b;
}

// Today's colours and the verdicts: nothing is searched, nothing is on a clock.
Result<VisitPlan> stopped(const Visit& visit, VisitPlan out) {
  out.assessment = assess(visit.head);
  out.plan = {};
  out.plan.currency = visit.shelf.currency;
  out.plan.why.push_back({"stopped_by_rules", "", {}});
  out.timeline = {};
  auto zones = on_the_clock(visit, out.targets, {}, at_start(visit.head, 1), {});
  if (!zones) return tl::unexpected(zones.error());
  out.plan.zones = std::move(*zones);
  out.after = afterwards(visit, out);
  return out;
}

// Own bowls that pass a rule are listed as they are mixed, beside the hair as it is.
Result<VisitPlan> no_forecast(const Visit& visit, VisitPlan out) {
  auto zones = on_the_clock(visit, out.targets, {}, at_start(visit.head, 1), {});
  if (!zones) return tl::unexpected(zones.error());
  out.plan.zones = std::move(*zones);
  out.plan.currency = visit.shelf.currency;
  out.plan.report.stopped = "not_searched";
  out.plan.notes.push_back({"bowls_stopped_by_rules", "", {}});
  add(out.plan.notes, stops(visit));
  for (const ZonePlan& z : out.plan.zones) out.assessment.zones.push_back(z.result.today);
  return out;
}

// The clock may leave a bowl on for longer than the search thought. Where that would take a zone past the condition
// that the rules leave it, its bowl is not offered.
bool spends(const Visit& visit, const PlannedBowl& b, const std::vector<ZonePlan>& zones_after) {
  constexpr double kSame = 1e-6;
  const Range* range = find_range(visit.shelf, b.bowl.formula.range);
  for (const ZoneRef& z : zones(visit.head)) {
    const RangeLimits* limits = range ? limits_on(*z.span, *range) : nullptr;
    const auto after = std::find_if(zones_after.begin(), zones_after.end(),
                                    [&](const ZonePlan& p) { return p.result.zone == z.id && p.bowl == b.bowl.label; });
    if (limits && after != zones_after.end() && after->result.planned.porosity > limits->porosity_after_max + kSame)
      return true;
  }
  return false;
}

Problems broken_by(const Visit& visit, const std::vector<Bowl>& bowls, const std::vector<Found>& found) {
  Problems all;
  for (size_t i = 0; i < bowls.size(); ++i) {
    const Problems broken = broken_rules(found[i].now.head, bowls[i], visit.shelf, visit.policy.formula);
    add(all, broken);
  }
  return all;
}

double worst_band(const Plan& plan) { return plan.bands.empty() ? 0 : plan.bands.front().levels; }

// The bowls for `out.targets` with their clock and what they come to. Problems: those of formulate() and predict().
Problems search_bowls(const Visit& visit, VisitPlan& out, const FormulateOptions& options) {
  const Situation start = at_start(visit.head, options.scenarios);
  auto bowls = formulate_from({start, visit.head, 'A', true, clock_for(visit)}, out.targets, visit.shelf,
                              visit.policy.formula, options);
  if (!bowls) return bowls.error();
  if (bowls->report.stopped == "exhausted")
    add_turns({visit.head, out.targets, visit.shelf, visit.policy.formula, options.scenarios, options.cancelled},
              bowls->bowls);
  out.plan = std::move(*bowls);
  add_timeline(visit, out);
  leave_on(out.plan.bowls, out.timeline);
  PredictOptions report;
  report.parallel = options.parallel;
  report.covered_contrast_levels = visit.policy.formula.covered_contrast_levels;
  auto zones = on_the_clock(visit, out.targets, out.plan.bowls, at_start(visit.head, 1), report);
  if (!zones) return zones.error();
  out.plan.zones = std::move(*zones);
  const size_t found = out.plan.bowls.size();
  std::erase_if(out.plan.bowls, [&](const PlannedBowl& b) { return spends(visit, b, out.plan.zones); });
  if (out.plan.bowls.size() < found) {
    out.plan.notes.push_back({"left_out_for_condition", "", {}});
    out.timeline = {};
    add_timeline(visit, out);
    auto without = on_the_clock(visit, out.targets, out.plan.bowls, at_start(visit.head, 1), report);
    if (!without) return without.error();
    out.plan.zones = std::move(*without);
  }
  return {};
}

// With what its strands tell.
Visit known(Visit visit) {
  visit.head = known_by_strands(std::move(visit.head), visit.shelf);
  return visit;
}

}  // namespace

std::vector<Bowl> by_step(std::vector<Bowl> bowls) {
  std::stable_sort(bowls.begin(), bowls.end(), [](const Bowl& a, const Bowl& b) { return a.step < b.step; });
  return bowls;
}

std::vector<Step> on_the_clock(const Visit& visit) {
  std::vector<PlannedBowl> bowls;
  for (const Bowl& b : by_step(visit.bowls)) bowls.push_back(as_mixed(b, visit));
  if (const auto timeline = clock(visit, bowls)) leave_on(bowls, *timeline);
  return steps_of(bowls);
}

Problems stops(const Visit& visit) {
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, 1);
  return found ? broken_by(visit, bowls, *found) : found.error();
}

Result<VisitPlan> plan(const Visit& as_told, const FormulateOptions& asked) {
  VisitPlan out;
  FormulateOptions options = asked;
  options.rules = [&](Head now) {
    Visit then = as_told;
    then.head = std::move(now);  // which knows its strands
    return limited(std::move(then)).head;
  };
  out.verdicts = verdicts(as_told);
  const Visit visit = limited(as_told);
  auto targets = aim(visit.head, visit.aims, visit.shelf);
  if (!targets) return tl::unexpected(targets.error());
  out.targets = std::move(*targets);
  if (out.verdicts.go == Go::stopped) return stopped(visit, std::move(out));
  out.assessment = assess(visit.head);
  if (const auto wrong = search_bowls(visit, out, options); !wrong.empty()) return tl::unexpected(wrong);
  auto ways = routes(visit.head, out.targets, visit.shelf, visit.policy.formula, out.plan, options);
  if (!ways) return tl::unexpected(ways.error());
  out.routes = std::move(*ways);
  for (Route& route : out.routes) add_timelines(visit, route);
  if (const std::vector<Target> even = to_the_lengths(visit, out); !even.empty() && !options.cancelled()) {
    VisitPlan other;
    other.targets = even;
    if (const auto wrong = search_bowls(visit, other, options); !wrong.empty()) return tl::unexpected(wrong);
    if (!other.plan.bowls.empty() && worst_band(other.plan) < worst_band(out.plan)) {
      out.targets = std::move(other.targets), out.timeline = std::move(other.timeline);
      offer_first(out, std::move(other.plan));
    }
  }
  // Proven best, perhaps, but not every other way was looked at.
  if (options.cancelled()) out.plan.report.stopped = "cancelled";
  out.after = afterwards(visit, out);
  return out;
}

namespace {

// `ran`: a clock that is given; nothing = it is planned.
Result<VisitPlan> own_bowls(const Visit& as_told, const Timeline* ran, const PredictOptions& options) {
  const Visit visit = known(as_told);
  VisitPlan out;
  if (!visit.aims.empty()) {
    auto targets = aim(visit.head, visit.aims, visit.shelf);
    if (!targets) return tl::unexpected(targets.error());
    out.targets = std::move(*targets);
  }
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  for (const Bowl& b : bowls) {
    out.plan.bowls.push_back(as_mixed(b, visit));
    if (out.plan.bowls.back().limits.overall == law::Status::unknown_percentage)
      out.plan.notes.push_back({"percentages_unknown", "", {{"bowl", b.label}}});
    out.plan.grams += out.plan.bowls.back().grams;
    out.plan.cost += out.plan.bowls.back().cost;
  }
  out.verdicts = with_bowls(visit);
  if (!may_be_mixed(out.verdicts)) return no_forecast(visit, std::move(out));
  if (ran) {
    out.timeline = *ran;
    add(out.plan.notes, told_of(visit, out.plan.bowls, *ran));
  } else {
    add_timeline(visit, out);
  }
  leave_on(out.plan.bowls, out.timeline);
  const std::vector<Step> steps = steps_of(out.plan.bowls);
  const auto found = found_by(visit, bowls, steps, 1);
  if (!found) return tl::unexpected(found.error());
  add(out.plan.notes, broken_by(visit, bowls, *found));
  const Situation now = found->empty() ? at_start(visit.head, 1) : found->back().now;
  auto zones = on_the_clock(visit, out.targets, out.plan.bowls, now, options);
  if (!zones) return tl::unexpected(zones.error());
  out.plan.zones = std::move(*zones);
  out.plan.currency = visit.shelf.currency;
  out.plan.report.stopped = "not_searched";
  for (const ZonePlan& z : out.plan.zones) out.assessment.zones.push_back(z.result.today);
  out.after = afterwards(visit, out);
  return out;
}

}  // namespace

Result<VisitPlan> what_if(const Visit& visit, const PredictOptions& options) {
  return own_bowls(visit, nullptr, options);
}

Result<VisitPlan> as_it_went(const Visit& visit, const Timeline& ran, const PredictOptions& options) {
  return own_bowls(visit, &ran, options);
}

}  // namespace strandline
