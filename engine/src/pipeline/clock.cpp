#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "pipeline/follow.h"
#include "pipeline/schedule_request.h"

namespace strandline {
namespace {

using Steps = std::map<int, std::vector<PlannedBowl>>;

template <class T>
void move_behind(std::vector<T>& all, std::vector<T>& more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace

ScheduleRequest begun(ScheduleRequest r, double at) {
  if (at <= 0) return r;
  r.policy.prepare = {0, 0};  // gown and sections are there
  for (Person& p : r.people) {
    p.from = std::max(0.0, p.from - at);
    if (p.until) p.until = *p.until - at;
  }
  std::erase_if(r.people, [](const Person& p) { return p.until && *p.until <= p.from; });
  return r;
}

void shift(Timeline& t, double by) {
  for (TimelineTask& task : t.tasks) task.start_min += by, task.end_min += by, task.earliest += by, task.latest += by;
  for (Development& d : t.developments)
    for (double* m : {&d.first_touch, &d.last_touch, &d.min_until, &d.target_at, &d.max_until, &d.leaves_at}) *m += by;
  for (double* m : {&t.basin_min, &t.finish_min, &t.finish_mean}) *m += by;
}

void follow(Timeline& all, Timeline t, int step, double late_tolerance) {
  std::erase_if(t.tasks, [](const TimelineTask& task) { return task.kind == TaskKind::prepare; });
  for (TimelineTask& task : t.tasks) task.id = "step " + std::to_string(step) + ": " + task.id;
  shift(t, all.finish_min);
  t.finish_mean += all.finish_mean - all.finish_min;
  all.steps.push_back({step, all.finish_min, t.basin_min, t.finish_min});
  move_behind(all.tasks, t.tasks);
  move_behind(all.developments, t.developments);
  move_behind(all.order, t.order);
  all.basin_min = t.basin_min;
  all.finish_min = t.finish_min;
  if (t.developed_to == DevelopTo::minimum) all.developed_to = t.developed_to;
  all.finish_mean = t.finish_mean;
  all.finish_sd = std::hypot(all.finish_sd, t.finish_sd);
  // Forecasts of steps do not lean on each other; their sum is taken as normal.
  const double spare = all.finish_min + late_tolerance - all.finish_mean;
  all.on_time_probability =
      all.finish_sd > 0 ? 0.5 * std::erfc(-spare / (all.finish_sd * std::numbers::sqrt2)) : (spare >= 0 ? 1 : 0);
  all.clocks_probability *= t.clocks_probability;
  all.proven = all.proven && t.proven;
  all.nodes += t.nodes;
}

Result<Timeline> clock(const Visit& visit, const std::vector<PlannedBowl>& bowls) {
  Steps steps;
  for (const PlannedBowl& b : bowls) steps[b.bowl.step].push_back(b);
  Timeline all;
  for (auto at = steps.begin(); at != steps.end(); ++at) {
    const auto then = std::next(at);
    Next next;
    next.last = then == steps.end();
    if (!next.last)
      next.on_damp_hair = std::all_of(then->second.begin(), then->second.end(),
                                      [](const PlannedBowl& b) { return b.bowl.formula.damp_hair; });
    auto timeline = schedule(begun(schedule_request(visit, at->second, next), all.finish_min));
    if (!timeline) return timeline;
    if (at == steps.begin()) {
      all = std::move(*timeline);
      all.steps = {{at->first, 0, all.basin_min, all.finish_min}};
    } else {
      follow(all, std::move(*timeline), at->first, visit.policy.schedule.late_tolerance);
    }
  }
  return all;
}

}  // namespace strandline
