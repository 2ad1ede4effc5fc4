#include "schedule/carry_on.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "schedule/branch.h"
#include "schedule/resume.h"
#include "schedule/timeline.h"

namespace strandline {
namespace {

// Of a search between two marks: small, so that an answer takes milliseconds; told in Timeline::proven.
constexpr long kNodes = 1500, kFewNodes = 60;

bool is_tail(const TimelineTask& t) {
  return t.kind != TaskKind::prepare && t.kind != TaskKind::mix && t.kind != TaskKind::apply &&
         t.kind != TaskKind::check && t.kind != TaskKind::remove_packet;
}
bool keeps_hands(const TimelineTask& t) { return t.during.empty(); }

// The told tasks as they stand: what has begun by `at` keeps its times, the rest is ahead.
class Stand {
 public:
  Stand(const Timeline& told, double at_min) : tasks(told.tasks), at(at_min) {
    for (const auto& t : tasks) begun.push_back(t.start_min < at_min);
  }

  // Hands that are marked at one task have ended those before it and not begun those behind it.
  void follow_hands(std::size_t marked, double was_from) {
    const auto& m = tasks[marked];
    // Nobody is at the basin while something is still laid on, whatever the plan thought.
    if (m.kind == TaskKind::apply)
      for (std::size_t i = 0; i < tasks.size(); ++i)
        if (is_tail(tasks[i]) || (tasks[i].kind == TaskKind::remove_packet && tasks[i].zone == m.zone))
          begun[i] = false;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      auto& t = tasks[i];
      if (i == marked || t.who != m.who || !keeps_hands(t) || !begun[i] || t.kind == TaskKind::check) continue;
      if (t.start_min > was_from)
        begun[i] = false;
      else
        t.end_min = std::max(t.start_min, std::min(t.end_min, m.start_min));
    }
  }

  void started(std::size_t i) {
    auto& t = tasks[i];
    const double was = t.start_min, takes = t.end_min - t.start_min;
    t.start_min = at, t.end_min = at + takes;
    begun[i] = true;
    follow_hands(i, was);
  }

  void done(std::size_t i) {
    auto& t = tasks[i];
    const double was = t.start_min, takes = t.end_min - t.start_min;
    if (!begun[i]) {
      double free = 0;
      for (std::size_t j = 0; j < tasks.size(); ++j)
        if (j != i && begun[j] && tasks[j].who == t.who && keeps_hands(tasks[j]) && tasks[j].start_min <= was)
          free = std::max(free, std::min(tasks[j].end_min, at));
      t.start_min = std::min(at, std::max(at - takes, free));
      begun[i] = true;
    }
    t.end_min = std::max(at, t.start_min);
    follow_hands(i, was);
  }

  std::vector<TimelineTask> tasks;
  std::vector<bool> begun;
  double at;
};

int index_of(const auto& list, const std::string& id) {
  const auto found = std::ranges::find_if(list, [&](const auto& one) { return one.id == id; });
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

// What has been begun, as the search and the timeline want it.
struct Past {
  SoFar so_far;
  PlannedJobs plan;         // the jobs that are begun
  std::vector<Look> looks;  // taken
  std::vector<TailStep> tail;
};

void add_job(Past& past, const Instance& in, const TimelineTask& t,
             const std::vector<std::pair<std::string, int>>& made) {
  const int person = index_of(in.request.people, t.who);
  const int from = nearest_ticks(t.start_min), until = std::max(from, nearest_ticks(t.end_min));
  Job job{JobKind::prepare, person, 0, 0, until - from};
  if (t.kind == TaskKind::prepare) past.so_far.prepared = until;
  const auto batch = [&](const std::string& bowl, int mix) {
    return static_cast<int>(std::ranges::find(made, std::pair(bowl, mix)) - made.begin());
  };
  if (t.kind == TaskKind::mix) {
    job.kind = JobKind::mix, job.what = index_of(in.request.bowls, t.bowl), job.batch = batch(t.bowl, t.mix);
    past.so_far.open[job.what] = Made{from, until};
  } else if (t.kind == TaskKind::apply) {
    job.kind = JobKind::apply, job.what = index_of(in.request.applications, t.application);
    job.batch = batch(t.bowl, t.mix);
    past.so_far.touched[job.what] = Touched{from, until};
  } else if (t.kind == TaskKind::remove_packet) {
    job.kind = JobKind::remove, job.what = index_of(in.request.applications, t.application);
    past.so_far.gone[job.what] = true;
  }
  past.plan.jobs.push_back({job, from, until, from});
}

Past past_of(const Instance& in, const Stand& stand, const Mark* mark, const std::vector<std::string>& left_out) {
  Past past;
  const int at = nearest_ticks(stand.at);
  past.so_far = {at,
                 at,
                 std::vector<std::optional<Touched>>(in.apps.size()),
                 std::vector<bool>(in.apps.size()),
                 std::vector<std::optional<Made>>(in.bowls.size()),
                 std::vector<int>(in.people.size(), at)};
  std::vector<std::size_t> by_time;
  for (std::size_t i = 0; i < stand.tasks.size(); ++i) by_time.push_back(i);
  std::ranges::stable_sort(by_time, {}, [&](std::size_t i) { return stand.tasks[i].start_min; });
  std::vector<std::pair<std::string, int>> made;
  for (const auto i : by_time)
    if (stand.begun[i] && stand.tasks[i].kind == TaskKind::mix)
      made.push_back({stand.tasks[i].bowl, stand.tasks[i].mix});
  for (const auto i : by_time) {
    const auto& t = stand.tasks[i];
    const int person = index_of(in.request.people, t.who);
    if (!stand.begun[i] || person < 0) continue;
    const int from = nearest_ticks(t.start_min), until = std::max(from, nearest_ticks(t.end_min));
    if (keeps_hands(t)) past.so_far.free[person] = std::max(past.so_far.free[person], until);
    if (t.kind == TaskKind::check)
      past.looks.push_back({person, from, until, -1});
    else if (is_tail(t))
      past.tail.push_back({std::stoi(t.id.substr(t.id.rfind(':') + 1)) - 1, person, from, until});
    else
      add_job(past, in, t, made);
  }
  for (std::size_t i = 0; i < in.apps.size(); ++i)
    if (!past.so_far.touched[i] && std::ranges::count(left_out, in.request.applications[i].id))
      past.so_far.gone[i] = true;
  if (mark && mark->what == Marked::ran_out)
    if (const int task = index_of(stand.tasks, mark->task); task >= 0)
      past.so_far.open[index_of(in.request.bowls, stand.tasks[task].bowl)].reset();
  return past;
}

// Nobody has prepared yet: whoever can does so first.
void prepare_first(Past& past, const Instance& in) {
  if (in.prepare == 0 ||
      std::ranges::count(past.plan.jobs, JobKind::prepare, [](const PlannedJob& j) { return j.job.kind; }))
    return;
  for (std::size_t p = 0; p < in.people.size(); ++p) {
    if (!in.people[p].prepare) continue;
    const int from = std::max(past.so_far.free[p], in.people[p].from);
    past.so_far.prepared = past.so_far.free[p] = from + in.prepare;
    past.plan.jobs.push_back(
        {{JobKind::prepare, static_cast<int>(p), 0, 0, in.prepare}, from, from + in.prepare, from});
    return;
  }
}

// The rest at the basin and after it, each when the one before is over.
std::vector<TailStep> rest_of_tail(const Past& past, const Timeline& told, const Instance& in) {
  auto steps = past.tail;
  std::ranges::sort(steps, {}, &TailStep::task);
  int at = past.so_far.now;
  for (const auto& step : steps) at = std::max(at, step.end);
  for (std::size_t k = 0; k < in.request.tail.size(); ++k) {
    if (std::ranges::count(steps, static_cast<int>(k), &TailStep::task)) continue;
    if (!steps.empty() && static_cast<int>(k) < steps.back().task) continue;  // passed over
    int who = steps.empty() ? 0 : steps.back().person;
    for (const auto& t : told.tasks)
      if (is_tail(t) && t.id.ends_with(":" + std::to_string(k + 1))) who = index_of(in.request.people, t.who);
    const int ticks = nearest_ticks(in.request.tail[k].minutes.mean);
    steps.push_back({static_cast<int>(k), std::max(0, who), at, at + ticks});
    at += ticks;
  }
  return steps;
}

// Jobs ahead behind those that are over; what is laid on from a mix that was there keeps its number.
void append(Past& past, const Instance& in, const Resumed& rest) {
  int mixes = 0;
  std::vector<int> newest(in.bowls.size(), 0);
  for (const auto& j : past.plan.jobs)
    if (j.job.kind == JobKind::mix) newest[j.job.what] = j.job.batch, ++mixes;
  for (auto planned : rest.jobs) {
    if (planned.job.kind == JobKind::mix) planned.job.batch += mixes;
    if (planned.job.kind == JobKind::apply)
      planned.job.batch = planned.job.batch < 0 ? newest[in.apps[planned.job.what].bowl] : planned.job.batch + mixes;
    past.plan.jobs.push_back(planned);
  }
  std::ranges::stable_sort(past.plan.jobs, {}, &PlannedJob::start);
}

// Durations that lie ahead are taken as independent and their sum as normal.
void forecast(Timeline& out, const ScheduleRequest& r, const Timeline& told, const Stand& stand) {
  double variance = 0;
  for (const auto& t : out.tasks) {
    if (t.start_min < stand.at || t.kind == TaskKind::check) continue;
    const int a = index_of(r.applications, t.application), b = index_of(r.bowls, t.bowl);
    double sd = t.kind == TaskKind::remove_packet ? r.policy.remove_packet.sd : 0;
    if (t.kind == TaskKind::apply && a >= 0) sd = r.applications[a].apply.sd;
    if (t.kind == TaskKind::mix && b >= 0) sd = r.bowls[b].mix.sd;
    if (is_tail(t)) sd = r.tail[std::stoul(t.id.substr(t.id.rfind(':') + 1)) - 1].minutes.sd;
    variance += sd * sd;
  }
  out.finish_mean = out.finish_min;
  out.finish_sd = std::sqrt(variance);
  const double spare = r.leave_by ? *r.leave_by - out.finish_min : r.policy.late_tolerance;
  out.on_time_probability = variance > 0 ? 0.5 * std::erfc(-spare / (out.finish_sd * std::numbers::sqrt2)) : spare >= 0;
  out.clocks_probability = told.clocks_probability;
}

struct Rest {
  std::optional<Resumed> resumed;
  double part = 1;  // of the way from the shortest time to the target
  std::vector<std::string> too_late;
};

std::optional<Resumed> some_way(const Instance& in, const SoFar& so_far, long& nodes) {
  const long most = nodes > 0 ? kNodes : kFewNodes;
  auto found = resume(in, so_far, most);
  nodes -= found ? found->nodes : most;
  return found;
}

std::optional<Resumed> to_target(const ScheduleRequest& r, const SoFar& so_far, double& part, long& nodes) {
  const double step = nodes > 0 ? 0.25 : 1;
  for (part = 1; part >= 0; part -= step) {
    const double wanted = r.policy.develop_to == DevelopTo::minimum ? 0 : part;
    if (auto found = some_way(make_instance(r, wanted), so_far, nodes)) return found;
    if (r.policy.develop_to != DevelopTo::target_if_possible) break;
  }
  return std::nullopt;
}

// All that is left; without what the longest times leave no room for, the last first; with times that are over anyway.
Rest rest_of(const ScheduleRequest& r, const Instance& in, const Stand& stand, SoFar so_far, long& nodes) {
  Rest rest;
  std::vector<int> left;
  for (const auto& t : stand.tasks)
    if (const int a = index_of(in.request.applications, t.application);
        t.kind == TaskKind::apply && a >= 0 && !so_far.touched[a] && !so_far.gone[a])
      left.push_back(a);
  while (!(rest.resumed = to_target(r, so_far, rest.part, nodes))) {
    if (left.empty()) {
      rest.part = 0;
      rest.resumed = some_way(stretched(make_instance(r, 0), kHorizon), so_far, nodes);
      return rest;
    }
    do {
      so_far.gone[left.back()] = true;
      rest.too_late.push_back(in.request.applications[left.back()].id);
      left.pop_back();
    } while (nodes <= 0 && !left.empty());
  }
  return rest;
}

}  // namespace

std::vector<std::string> ahead(const Timeline& told, double at_min) {
  std::vector<std::string> out;
  for (const auto& t : told.tasks)
    if (t.kind == TaskKind::apply && t.start_min >= at_min) out.push_back(t.application);
  return out;
}

Result<CarriedOn> carry_on(const ScheduleRequest& request, const Timeline& told, const Mark* mark, double at_min,
                           const std::vector<std::string>& left_out, long& nodes) {
  const auto instance = make_instance(request, told.developed_to == DevelopTo::minimum ? 0 : 1);
  Stand stand(told, at_min);
  if (mark && (mark->what == Marked::started || mark->what == Marked::done)) {
    const auto task = static_cast<std::size_t>(index_of(stand.tasks, mark->task));
    mark->what == Marked::started ? stand.started(task) : stand.done(task);
  }
  auto past = past_of(instance, stand, mark, left_out);
  CarriedOn out;
  Rest rest;
  std::vector<TailStep> tail;
  if (past.tail.empty()) {
    prepare_first(past, instance);
    rest = rest_of(request, instance, stand, past.so_far, nodes);
    if (!rest.resumed) return tl::unexpected(Problems{{"nobody_can", "/people", {{"task", "apply"}}}});
    append(past, instance, *rest.resumed);
    past.plan.basin = rest.resumed->basin;
    auto laid = lay_tail(instance, past.plan.basin);
    if (!laid) return tl::unexpected(Problems{{"basin_taken", "/basin_taken", {}}});
    tail = std::move(*laid);
  } else {
    // What is in the basin is off.
    tail = rest_of_tail(past, told, instance);
    past.plan.basin = tail.front().start;
    std::ranges::stable_sort(past.plan.jobs, {}, &PlannedJob::start);
  }
  auto seen = looks(instance, past.plan, past.looks);
  if (!seen) return tl::unexpected(seen.error());
  out.timeline = make_timeline(instance, past.plan, tail, *seen);
  out.timeline.developed_to = rest.part < 1 ? DevelopTo::minimum : told.developed_to;
  out.timeline.proven = !rest.resumed || rest.resumed->proven;
  out.timeline.nodes = rest.resumed ? rest.resumed->nodes : 0;
  out.too_late = std::move(rest.too_late);
  forecast(out.timeline, request, told, stand);
  return out;
}

}  // namespace strandline
