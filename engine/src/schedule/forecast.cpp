#include "schedule/forecast.h"

#include <algorithm>
#include <cmath>

#include "hair/latin.h"

namespace strandline {
namespace {

constexpr double kSlack = 1e-9;  // minutes; rounding of sums

Duration duration_of(const Instance& instance, const Job& job) {
  const auto& request = instance.request;
  switch (job.kind) {
    case JobKind::prepare:
      return request.policy.prepare;
    case JobKind::remove:
      return request.policy.remove_packet;
    case JobKind::mix:
      return request.bowls[job.what].mix;
    case JobKind::apply:
      break;
  }
  const double pace = request.people[job.person].pace;
  const auto& apply = request.applications[job.what].apply;
  return {apply.mean * pace, apply.sd * pace};
}

// Column k = the duration of job or tail task k at every fixed point. The mean is that of the plan, so that
// the plan itself is the middle of its own forecast.
std::vector<std::vector<double>> sample(const Instance& instance, const PlannedJobs& plan,
                                        const std::vector<TailStep>& tail) {
  const int points = instance.request.policy.sample_points;
  std::vector<std::vector<double>> columns;
  const auto add = [&](int ticks, double sd) {
    auto column = latin_column(points, columns.size());
    for (auto& z : column) z = std::max(0.0, minutes_of(ticks) + sd * z);
    columns.push_back(std::move(column));
  };
  for (const auto& planned : plan.jobs) add(planned.job.ticks, duration_of(instance, planned.job).sd);
  for (const auto& step : tail) add(step.end - step.start, instance.request.tail[step.task].minutes.sd);
  return columns;
}

struct Run {
  double finish = 0;
  bool clocks_hold = true;
};

struct Times {
  std::vector<double> start, end;
};

// Links other than the house order run along the sequence, so one pass in order settles them.
Times run_jobs(const Instance& instance, const PlannedJobs& plan, const std::vector<std::vector<double>>& columns,
               int point) {
  const auto& jobs = plan.jobs;
  Times times{std::vector<double>(jobs.size()), std::vector<double>(jobs.size())};
  std::vector<int> before(instance.people.size(), -1);
  for (std::size_t j = 0; j < jobs.size(); ++j) {
    int& previous = before[jobs[j].job.person];
    double start = minutes_of(jobs[j].earliest);
    if (previous >= 0)
      start -= std::max(0.0, minutes_of(jobs[previous].earliest + jobs[previous].job.ticks) - times.end[previous]);
    for (const auto& link : plan.links) {
      if (link.to != static_cast<int>(j) || link.house) continue;
      start = std::max(start, times.end[link.from] + minutes_of(link.ticks - jobs[link.from].job.ticks));
    }
    times.start[j] = start;
    times.end[j] = start + columns[j][point];
    previous = static_cast<int>(j);
  }
  return times;
}

double basin_time(const Instance& instance, const PlannedJobs& plan, const Times& times) {
  double ready = 0;
  for (std::size_t j = 0; j < plan.jobs.size(); ++j) {
    const auto& job = plan.jobs[j].job;
    const bool stays = job.kind == JobKind::apply && removal_of(plan, job.what) < 0;
    ready = std::max(ready, times.end[j] + (stays ? minutes_of(instance.apps[job.what].develop) : 0));
  }
  const int first = ticks_up(ready);
  const int free = next_basin_time(instance, first);
  return free == first || free == kNever ? ready : minutes_of(free);
}

Run run_once(const Instance& instance, const PlannedJobs& plan, const std::vector<TailStep>& tail,
             const std::vector<std::vector<double>>& columns, int point) {
  const auto times = run_jobs(instance, plan, columns, point);
  Run run;
  run.finish = basin_time(instance, plan, times);
  for (std::size_t j = 0; j < plan.jobs.size(); ++j) {
    const auto& job = plan.jobs[j].job;
    if (job.kind != JobKind::apply) continue;
    const int removal = removal_of(plan, job.what);
    const double leaves = removal >= 0 ? times.start[removal] : run.finish;
    if (leaves > times.start[j] + minutes_of(instance.apps[job.what].max) + kSlack) run.clocks_hold = false;
  }
  for (std::size_t k = 0; k < tail.size(); ++k) {
    const double gap = minutes_of(tail[k].start - (k ? tail[k - 1].end : plan.basin));
    run.finish += gap + columns[plan.jobs.size() + k][point];
  }
  return run;
}

}  // namespace

Forecast forecast(const Instance& instance, const PlannedJobs& plan, const std::vector<TailStep>& tail, double due) {
  const auto columns = sample(instance, plan, tail);
  const int points = instance.request.policy.sample_points;
  Forecast out;
  double squares = 0;
  for (int point = 0; point < points; ++point) {
    const auto run = run_once(instance, plan, tail, columns, point);
    out.mean += run.finish / points;
    squares += run.finish * run.finish / points;
    out.on_time += run.finish <= due + kSlack ? 1.0 / points : 0;
    out.clocks_hold += run.clocks_hold ? 1.0 / points : 0;
  }
  out.sd = std::sqrt(std::max(0.0, squares - out.mean * out.mean));
  return out;
}

}  // namespace strandline
