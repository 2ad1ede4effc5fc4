#include "schedule/looks.h"

#include <algorithm>

namespace strandline {
namespace {

struct Span {
  int from = kNever, until = 0;
};

Span on_the_hair(const Instance& instance, const PlannedJobs& plan) {
  Span span;
  for (const auto& planned : plan.jobs) {
    if (planned.job.kind != JobKind::apply || !instance.request.applications[planned.job.what].lightening) continue;
    const int removal = removal_of(plan, planned.job.what);
    span.from = std::min(span.from, planned.start);
    span.until = std::max(span.until, removal < 0 ? plan.basin : plan.jobs[removal].start);
  }
  return span;
}

// The job that keeps this person busy in [from, until); -1 = free.
int busy_with(const PlannedJobs& plan, int person, int from, int until) {
  for (std::size_t j = 0; j < plan.jobs.size(); ++j)
    if (plan.jobs[j].job.person == person && plan.jobs[j].start < until && from < plan.jobs[j].end)
      return static_cast<int>(j);
  return -1;
}

bool can_look(const Instance& instance, int person, int from, int until) {
  const auto& hands = instance.people[person];
  return has(instance.request.people[person], Skill::check) && hands.from <= from && until <= hands.until;
}

// In [from, last]: the first time with free hands, else `last` beside a job.
Look take(const Instance& instance, const PlannedJobs& plan, int from, int last, int ticks) {
  for (int at = from; at <= last; ++at)
    for (int p = 0; p < static_cast<int>(instance.people.size()); ++p)
      if (can_look(instance, p, at, at + ticks) && busy_with(plan, p, at, at + ticks) < 0)
        return {p, at, at + ticks, -1};
  for (int at = last; at >= from; --at)
    for (int p = 0; p < static_cast<int>(instance.people.size()); ++p)
      if (can_look(instance, p, at, at + ticks)) return {p, at, at + ticks, busy_with(plan, p, at, at + ticks)};
  return {-1, from, from + ticks, -1};
}

}  // namespace

Result<std::vector<Look>> looks(const Instance& instance, const PlannedJobs& plan, std::vector<Look> taken) {
  const auto& policy = instance.request.policy;
  const auto span = on_the_hair(instance, plan);
  const int ticks = nearest_ticks(policy.check_minutes);
  const int least = ticks_up(policy.check_every_min), most = ticks_down(policy.check_every_max);
  std::vector<Look> out = std::move(taken);
  if (span.from == kNever) return out;
  int from = out.empty() ? span.from + ticks_up(policy.first_check) : out.back().start + least;
  int last = out.empty() ? from + least : out.back().start + most;
  while (from + ticks <= span.until) {
    const auto look = take(instance, plan, from, std::min(last, span.until - ticks), ticks);
    if (look.person < 0)
      return tl::unexpected(
          Problems{{"nobody_can", "/people", {{"task", "check"}, {"minute", whole_minutes(minutes_of(from))}}}});
    out.push_back(look);
    from = look.start + least;
    last = look.start + most;
  }
  return out;
}

}  // namespace strandline
