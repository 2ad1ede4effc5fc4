#include "strandline/schedule.h"

#include <cmath>

#include "schedule/explain.h"
#include "schedule/forecast.h"
#include "schedule/timeline.h"

namespace strandline {
namespace {

struct Attempt {
  Instance instance;
  ShortestSearch report;
  double part;
};

Attempt attempt(const ScheduleRequest& request, double part) {
  auto instance = make_instance(request, part);
  auto report = search(instance);
  return {std::move(instance), std::move(report), part};
}

// To the target where the clocks allow it, else as near to it as they do, as the policy says.
Attempt best_attempt(const ScheduleRequest& request) {
  const auto wish = request.policy.develop_to;
  auto first = attempt(request, wish == DevelopTo::minimum ? 0 : 1);
  if (first.report.best || wish != DevelopTo::target_if_possible) return first;
  auto best = attempt(request, 0);
  constexpr int kHalvings = 5;  // a minute or so
  for (double step = 0.5; best.report.best && step > std::pow(0.5, kHalvings + 1); step /= 2)
    if (auto longer = attempt(request, best.part + step); longer.report.best) best = std::move(longer);
  return best;
}

}  // namespace

Result<Timeline> schedule(const ScheduleRequest& request) {
  if (auto problems = check_request(request); !problems.empty()) return tl::unexpected(std::move(problems));
  const auto [instance, report, part] = best_attempt(request);
  if (!report.best) {
    if (!report.proven) return tl::unexpected(Problems{{"search_stopped", "/policy/node_limit", {}}});
    return tl::unexpected(explain(instance));
  }

  const auto plan = plan_jobs(instance, *report.best);
  const auto tail = lay_tail(instance, plan.basin);
  const auto seen = looks(instance, plan);
  if (!seen) return tl::unexpected(seen.error());

  auto timeline = make_timeline(instance, plan, *tail, *seen);
  if (request.leave_by && timeline.finish_min > *request.leave_by)
    return tl::unexpected(Problems{{"leaves_too_late",
                                    "/leave_by",
                                    {{"minutes", whole_minutes(timeline.finish_min - *request.leave_by)},
                                     {"finish", whole_minutes(timeline.finish_min)}}}});
  const auto spread =
      forecast(instance, plan, *tail, request.leave_by.value_or(timeline.finish_min + request.policy.late_tolerance));
  timeline.finish_mean = spread.mean;
  timeline.finish_sd = spread.sd;
  timeline.on_time_probability = spread.on_time;
  timeline.clocks_probability = spread.clocks_hold;
  timeline.developed_to = part == 1 ? DevelopTo::target : DevelopTo::minimum;
  timeline.proven = report.proven;
  timeline.nodes = report.nodes;
  return timeline;
}

}  // namespace strandline
