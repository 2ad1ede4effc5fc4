#include "schedule/timeline.h"

#include <algorithm>
#include <map>
#include <string_view>

namespace strandline {
namespace {

constexpr std::string_view kTailNames[] = {"prepare", "mix",     "apply", "check", "remove_packet", "emulsify",
                                           "rinse",   "shampoo", "tone",  "treat", "dry",           "photograph"};

// Number of each mix within its bowl, by the time it is made.
std::map<int, int> mix_numbers(const PlannedJobs& plan) {
  std::map<int, int> number, made;
  for (const auto& planned : plan.jobs)
    if (planned.job.kind == JobKind::mix) number[planned.job.batch] = ++made[planned.job.what];
  return number;
}

TimelineTask task_of(const Instance& instance, const PlannedJob& planned, const std::map<int, int>& mixes) {
  const auto& request = instance.request;
  const auto& job = planned.job;
  TimelineTask task;
  task.who = request.people[job.person].id;
  task.start_min = minutes_of(planned.start);
  task.end_min = minutes_of(planned.end);
  task.earliest = minutes_of(planned.earliest);
  task.latest = task.start_min;
  if (job.kind == JobKind::prepare) {
    task.kind = TaskKind::prepare;
    task.id = "prepare";
    task.reason = "before_the_first_touch";
    return task;
  }
  const bool mix = job.kind == JobKind::mix;
  task.bowl = mix ? request.bowls[job.what].id : request.applications[job.what].bowl;
  if (mix) {
    task.kind = TaskKind::mix;
    task.mix = mixes.at(job.batch);
    task.id = "mix:" + task.bowl + ":" + std::to_string(task.mix);
    task.reason = task.mix == 1 ? "fresh_for_first_use" : "small_mix";
    return task;
  }
  const auto& application = request.applications[job.what];
  task.application = application.id;
  task.zone = application.zone;
  if (job.kind == JobKind::apply) {
    task.kind = TaskKind::apply;
    task.mix = mixes.at(job.batch);
    task.id = "apply:" + application.id;
    task.reason = instance.rules[job.what].reason;
    task.needs_min = application.target;
  } else {
    task.kind = TaskKind::remove_packet;
    task.id = "remove:" + application.id;
    task.reason = "packet_reaches_its_time";
  }
  return task;
}

// What is on the scalp comes off at once, unless a packet there has left before.
bool leaves_together(const Instance& instance, const PlannedJobs& plan) {
  const auto& all = instance.request.applications;
  int on_scalp = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!all[i].touches_scalp) continue;
    ++on_scalp;
    if (removal_of(plan, static_cast<int>(i)) >= 0) return false;
  }
  return on_scalp > 1;
}

TimelineTask tail_task(const Instance& instance, const TailStep& step, bool together) {
  const auto& asked = instance.request.tail[step.task];
  TimelineTask task;
  task.kind = asked.kind;
  task.id = std::string(kTailNames[static_cast<int>(asked.kind)]) + ":" + std::to_string(step.task + 1);
  task.who = instance.request.people[step.person].id;
  task.start_min = task.earliest = task.latest = minutes_of(step.start);
  task.end_min = minutes_of(step.end);
  task.reason = !asked.at_basin ? "after_the_basin" : together ? "one_basin_time" : "time_is_over";
  return task;
}

TimelineTask look_task(const Instance& instance, const Look& look, int number,
                       const std::vector<TimelineTask>& planned) {
  TimelineTask task;
  task.kind = TaskKind::check;
  task.id = "check:" + std::to_string(number);
  task.who = instance.request.people[look.person].id;
  task.start_min = task.earliest = task.latest = minutes_of(look.start);
  task.end_min = minutes_of(look.end);
  task.reason = number == 1 ? "first_look" : "next_look";
  if (look.during >= 0) task.during = planned[look.during].id;
  return task;
}

Development development_of(const Instance& instance, const PlannedJobs& plan, const PlannedJob& planned) {
  const auto& a = instance.request.applications[planned.job.what];
  const int removal = removal_of(plan, planned.job.what);
  Development d{a.id, a.zone, a.bowl, minutes_of(planned.start), minutes_of(planned.end)};
  d.min_until = d.last_touch + a.min;
  d.target_at = d.last_touch + a.target;
  d.max_until = d.first_touch + a.max;
  d.leaves_at = minutes_of(removal < 0 ? plan.basin : plan.jobs[removal].start);
  return d;
}

OrderStep step_of(const Instance& instance, const PlannedJobs& plan, const PlannedJob& planned) {
  const auto& a = instance.request.applications[planned.job.what];
  OrderStep step{
      a.id,  a.zone,  instance.request.people[planned.job.person].id, instance.rules[planned.job.what].reason,
      false, a.target};
  for (const auto& other : plan.jobs) {
    const bool overtaken = other.job.kind == JobKind::apply && other.start > planned.start;
    if (overtaken && (instance.apps[other.job.what].later >> planned.job.what & 1)) step.out_of_order = true;
  }
  return step;
}

}  // namespace

Timeline make_timeline(const Instance& instance, const PlannedJobs& plan, const std::vector<TailStep>& tail,
                       const std::vector<Look>& looks) {
  Timeline timeline;
  const auto mixes = mix_numbers(plan);
  for (const auto& planned : plan.jobs) {
    timeline.tasks.push_back(task_of(instance, planned, mixes));
    if (planned.job.kind != JobKind::apply) continue;
    timeline.developments.push_back(development_of(instance, plan, planned));
    timeline.order.push_back(step_of(instance, plan, planned));
  }
  const auto planned = timeline.tasks;
  for (std::size_t i = 0; i < looks.size(); ++i)
    timeline.tasks.push_back(look_task(instance, looks[i], static_cast<int>(i) + 1, planned));
  const bool together = leaves_together(instance, plan);
  for (const auto& step : tail) timeline.tasks.push_back(tail_task(instance, step, together));
  std::ranges::stable_sort(timeline.tasks, {}, &TimelineTask::start_min);
  timeline.basin_min = minutes_of(plan.basin);
  timeline.finish_min = tail.empty() ? timeline.basin_min : minutes_of(tail.back().end);
  return timeline;
}

}  // namespace strandline
