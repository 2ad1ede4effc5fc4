#include "schedule/network.h"

#include <algorithm>

namespace strandline {
namespace {

// Constraints that keep a start from being too early, besides hands and sequence.
struct Clocks {
  std::vector<Link> links;  // may point back in the sequence
  std::vector<int> floors;  // absolute
};

void link_uses(const std::vector<PlannedJob>& jobs, int j, const Instance& instance, std::vector<Link>& out) {
  const auto& use = jobs[j].job;
  for (int i = 0; i < static_cast<int>(jobs.size()); ++i) {
    const auto& other = jobs[i].job;
    if (other.kind == JobKind::prepare || (other.kind == JobKind::mix && other.batch == use.batch))
      out.push_back({i, j, other.ticks});
    if (other.kind == JobKind::remove && other.what == use.what)
      out.push_back({j, i, use.ticks + instance.apps[use.what].develop});
    const bool house = other.kind == JobKind::apply && (instance.apps[use.what].later >> other.what & 1);
    if (house && jobs[j].start <= jobs[i].start) out.push_back({j, i, 0, true});
  }
}

std::vector<Link> links_of(const std::vector<PlannedJob>& jobs, const Instance& instance) {
  std::vector<Link> out;
  for (int j = 0; j < static_cast<int>(jobs.size()); ++j) {
    for (int i = j - 1; i >= 0; --i)
      if (jobs[i].job.person == jobs[j].job.person) {
        out.push_back({i, j, jobs[i].job.ticks});
        break;
      }
    if (jobs[j].job.kind == JobKind::apply) link_uses(jobs, j, instance, out);
  }
  return out;
}

Clocks clocks_of(const PlannedJobs& plan, const Instance& instance) {
  Clocks clocks;
  for (int j = 0; j < static_cast<int>(plan.jobs.size()); ++j) {
    const auto& job = plan.jobs[j].job;
    clocks.floors.push_back(instance.people[job.person].from);
    if (job.kind != JobKind::apply) continue;
    const int removal = removal_of(plan, job.what);
    if (removal < 0)
      clocks.floors.back() = std::max(clocks.floors.back(), plan.basin - instance.apps[job.what].max);
    else
      clocks.links.push_back({removal, j, -instance.apps[job.what].max});
    for (int i = 0; i < static_cast<int>(plan.jobs.size()); ++i)
      if (plan.jobs[i].job.kind == JobKind::mix && plan.jobs[i].job.batch == job.batch)
        clocks.links.push_back({j, i, job.ticks - instance.bowls[plan.jobs[i].job.what].life});
  }
  return clocks;
}

}  // namespace

int removal_of(const PlannedJobs& plan, int application) {
  for (int i = 0; i < static_cast<int>(plan.jobs.size()); ++i)
    if (plan.jobs[i].job.kind == JobKind::remove && plan.jobs[i].job.what == application) return i;
  return -1;
}

PlannedJobs plan_jobs(const Instance& instance, const Shortest& found) {
  PlannedJobs plan;
  plan.basin = found.basin;
  const auto& laid = found.layout.jobs();
  // Laid backwards: the last of a person's sequence comes first in time.
  for (auto job = laid.rbegin(); job != laid.rend(); ++job)
    plan.jobs.push_back({*job, found.basin - job->start(), found.basin - job->end, 0});
  std::ranges::stable_sort(plan.jobs, {}, &PlannedJob::start);
  plan.links = links_of(plan.jobs, instance);

  // Least starts: the planned ones satisfy every constraint, so raising from below ends at or under them.
  const auto clocks = clocks_of(plan, instance);
  for (std::size_t j = 0; j < plan.jobs.size(); ++j) plan.jobs[j].earliest = std::max(0, clocks.floors[j]);
  auto all = plan.links;
  all.insert(all.end(), clocks.links.begin(), clocks.links.end());
  for (bool changed = true; changed;) {
    changed = false;
    for (const auto& link : all) {
      const int least = plan.jobs[link.from].earliest + link.ticks;
      if (plan.jobs[link.to].earliest >= least) continue;
      plan.jobs[link.to].earliest = least;
      changed = true;
    }
  }
  return plan;
}

}  // namespace strandline
