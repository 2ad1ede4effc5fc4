#include <algorithm>
#include <cmath>

#include "mix/on_hair.h"
#include "pipeline/follow.h"
#include "pipeline/schedule_request.h"
#include "schedule/carry_on.h"
#include "strandline/running.h"

namespace strandline {
namespace {

std::string prefix_of(int step, bool first) { return first ? "" : "step " + std::to_string(step) + ": "; }

bool in_step(const std::string& task, const std::string& prefix) {
  return prefix.empty() ? !task.starts_with("step ") : task.starts_with(prefix);
}

// One step of a timeline by itself, its tasks named as in a clock of one step.
Timeline step_alone(const Timeline& all, std::size_t nth, const std::vector<RunningBowl>& bowls) {
  const int step = all.steps[nth].step;
  const std::string prefix = prefix_of(step, nth == 0);
  const auto elsewhere = [&](const std::string& label) {
    return std::ranges::none_of(bowls,
                                [&](const RunningBowl& b) { return b.bowl.label == label && b.bowl.step == step; });
  };
  Timeline out = all;
  std::erase_if(out.tasks, [&](const TimelineTask& t) { return !in_step(t.id, prefix); });
  for (auto& t : out.tasks) {
    t.id.erase(0, prefix.size());
    if (t.during.starts_with(prefix)) t.during.erase(0, prefix.size());
  }
  std::erase_if(out.developments, [&](const Development& d) { return elsewhere(d.bowl); });
  std::erase_if(out.order, [&](const OrderStep& o) {
    return std::ranges::count(out.developments, o.application, &Development::application) == 0;
  });
  out.steps = {all.steps[nth]};
  out.basin_min = all.steps[nth].basin_min;
  out.finish_min = all.steps[nth].until_min;
  return out;
}

// `part` in the place of the nth step; what comes after it moves by as much as its end did.
void put_back(Timeline& all, std::size_t nth, Timeline part, const std::vector<RunningBowl>& bowls) {
  const double moved = part.finish_min - all.steps[nth].until_min;
  Timeline out;
  for (std::size_t k = 0; k < all.steps.size(); ++k) {
    const int step = all.steps[k].step;
    Timeline one = k == nth ? part : step_alone(all, k, bowls);
    if (k > nth) shift(one, moved);
    for (auto& t : one.tasks) {
      t.id.insert(0, prefix_of(step, k == 0));
      if (!t.during.empty() && k == nth) t.during.insert(0, prefix_of(step, k == 0));
    }
    out.tasks.insert(out.tasks.end(), one.tasks.begin(), one.tasks.end());
    out.developments.insert(out.developments.end(), one.developments.begin(), one.developments.end());
    out.order.insert(out.order.end(), one.order.begin(), one.order.end());
    TimelineStep times = all.steps[k];
    if (k > nth)
      for (double* m : {&times.from_min, &times.basin_min, &times.until_min}) *m += moved;
    if (k == nth) times.basin_min = part.basin_min, times.until_min = part.finish_min;
    out.steps.push_back(times);
  }
  out.basin_min = out.steps.back().basin_min;
  out.finish_min = out.steps.back().until_min;
  out.developed_to = all.developed_to == DevelopTo::minimum ? all.developed_to : part.developed_to;
  out.finish_mean = out.finish_min;
  out.finish_sd = std::hypot(part.finish_sd, nth + 1 < all.steps.size() ? all.finish_sd : 0);
  out.on_time_probability = part.on_time_probability;
  out.clocks_probability = all.clocks_probability;
  out.proven = part.proven;
  out.nodes = part.nodes;
  all = std::move(out);
}

// What was told of a step, as a question to the clock: times on the hair as they were agreed.
ScheduleRequest request_of(const Visit& visit, const Running& running, std::size_t nth) {
  const auto& steps = running.plan.steps;
  std::vector<PlannedBowl> bowls;
  Next next;
  next.last = nth + 1 == steps.size();
  next.on_damp_hair = !next.last;
  for (const auto& b : running.bowls) {
    if (b.bowl.step == steps[nth].step) {
      auto& planned = bowls.emplace_back();
      planned.bowl = b.bowl;
      planned.on = on_alike(visit.head, b.bowl, b.bowl.formula.minutes);
    }
    if (!next.last && b.bowl.step == steps[nth + 1].step)
      next.on_damp_hair = next.on_damp_hair && b.bowl.formula.damp_hair;
  }
  auto request = schedule_request(visit, bowls, next);
  if (nth > 0) request.policy.prepare = {0, 0};
  for (auto& a : request.applications)
    for (const auto& d : running.plan.developments)
      if (d.application == a.id && d.bowl == a.bowl) {
        a.min = d.min_until - d.last_touch;
        a.target = std::max(a.min, d.target_at - d.last_touch);
        a.max = d.max_until - d.first_touch;
      }
  for (auto& b : request.bowls)
    for (const auto& r : running.bowls)
      if (r.bowl.label == b.id) b.mix_life = r.mix_life_min;
  return request;
}

class Fold {
 public:
  Fold(const Visit& visit, const Running& running) : visit_(visit), running_(running) { out.timeline = running.plan; }

  Problems take(const Mark& mark) {
    const auto& steps = out.timeline.steps;
    std::size_t nth = steps.size();
    for (std::size_t k = steps.size(); k-- > 0;)
      if (const auto prefix = prefix_of(steps[k].step, k == 0); in_step(mark.task, prefix)) {
        nth = k;
        break;
      }
    const auto task = std::ranges::find(out.timeline.tasks, mark.task, &TimelineTask::id);
    if (nth == steps.size() || task == out.timeline.tasks.end()) {
      out.notes.push_back({"unknown_task", "", {{"task", mark.task}}});
      return {};
    }
    if (mark.what == Marked::left_out) {
      if (task->kind != TaskKind::apply || task->start_min < mark.at_min) {
        out.notes.push_back({"already_on", "", {{"task", mark.task}}});
        return {};
      }
      left_out_.push_back(task->application);
    }
    Mark local = mark;
    local.task.erase(0, prefix_of(steps[nth].step, nth == 0).size());
    return carry(nth, &local, mark.at_min);
  }

  // As things stand at `at`, without these too.
  Problems without(const std::vector<std::string>& more, double at) {
    left_out_.insert(left_out_.end(), more.begin(), more.end());
    return carry(current(at), nullptr, at);
  }

  std::size_t current(double at) const {
    const auto& steps = out.timeline.steps;
    std::size_t nth = 0;
    while (nth + 1 < steps.size() && steps[nth].until_min <= at) ++nth;
    return nth;
  }

  Replanned out;

 private:
  Problems carry(std::size_t nth, const Mark* mark, double at) {
    auto part = carry_on(request_of(visit_, running_, nth), step_alone(out.timeline, nth, running_.bowls), mark, at,
                         left_out_, nodes_);
    if (!part) return part.error();
    for (const auto& a : part->too_late)
      if (std::ranges::count(out.too_late, a) == 0) out.too_late.push_back(a), left_out_.push_back(a);
    put_back(out.timeline, nth, std::move(part->timeline), running_.bowls);
    return {};
  }

  const Visit& visit_;
  const Running& running_;
  std::vector<std::string> left_out_;
  long nodes_ = 30000;  // of all searches of one answer: bounds its time
};

Problems check(const Running& running) {
  Problems problems;
  const auto minutes = [&](double value, const std::string& path) {
    if (!std::isfinite(value) || value < 0 || value > 24 * 60) problems.push_back({"not_minutes", path, {}});
  };
  if (running.bowls.empty()) problems.push_back({"no_bowls", "/running/bowls", {}});
  if (running.plan.steps.empty()) problems.push_back({"nothing_to_apply", "/running/plan", {}});
  for (std::size_t i = 0; i < running.marks.size(); ++i)
    minutes(running.marks[i].at_min, "/running/marks/" + std::to_string(i) + "/at_min");
  if (running.leave_by) minutes(*running.leave_by, "/running/leave_by");
  return problems;
}

}  // namespace

Result<Replanned> replan(const Visit& visit, const Running& running, double now_min) {
  if (auto problems = check(running); !problems.empty()) return tl::unexpected(std::move(problems));
  auto marks = running.marks;
  std::ranges::stable_sort(marks, {}, &Mark::at_min);
  Fold fold(visit, running);
  for (const auto& mark : marks)
    if (auto problems = fold.take(mark); !problems.empty()) return tl::unexpected(std::move(problems));

  if (!running.leave_by || fold.out.timeline.finish_min <= *running.leave_by) return std::move(fold.out);
  auto left = ahead(step_alone(fold.out.timeline, fold.current(now_min), running.bowls), now_min);
  std::vector<std::string> without;
  while (!left.empty()) {
    without.push_back(left.back());
    left.pop_back();
    Fold shorter = fold;
    if (!shorter.without(without, now_min).empty()) break;
    if (shorter.out.timeline.finish_min <= *running.leave_by) {
      fold.out.fits_without = without;
      return std::move(fold.out);
    }
  }
  fold.out.notes.push_back({"leaves_too_late",
                            "/running/leave_by",
                            {{"minutes", std::to_string(fold.out.timeline.finish_min - *running.leave_by)},
                             {"finish", std::to_string(fold.out.timeline.finish_min)}}});
  return std::move(fold.out);
}

}  // namespace strandline
