#include "schedule/layout.h"

#include <algorithm>
#include <bit>

namespace strandline {

Layout::Layout(const Instance& instance, int basin) : instance_(&instance), basin_(basin) {
  application_.fill(-1);
  removal_.fill(-1);
  open_.fill(-1);
  for (std::size_t p = 0; p < instance.people.size(); ++p)
    if (basin != kNever && instance.people[p].until < basin) free_[p] = basin - instance.people[p].until;
  jobs_.reserve(3 * instance.apps.size() + 1);
}

bool Layout::apply(int app, int person, int limit) {
  const auto& a = instance_->apps[app];
  if (open_[a.bowl] < 0) {
    open_[a.bowl] = static_cast<std::int8_t>(batches_.size());
    batches_.push_back({a.bowl});
    ++extras_;
  }
  inversions_ += std::popcount(a.later & ~mask_);
  bound_[app] = a.later & mask_;
  mask_ |= 1u << app;
  application_[app] = static_cast<std::int8_t>(jobs_.size());
  jobs_.push_back({JobKind::apply, person, app, open_[a.bowl], a.apply[person]});
  return settle(limit);
}

bool Layout::mix(int bowl, int person, int limit) {
  batches_[open_[bowl]].job = static_cast<int>(jobs_.size());
  jobs_.push_back({JobKind::mix, person, bowl, open_[bowl], instance_->bowls[bowl].minutes});
  open_[bowl] = -1;
  return settle(limit);
}

bool Layout::remove(int app, int person, int limit) {
  removal_[app] = static_cast<std::int8_t>(jobs_.size());
  jobs_.push_back({JobKind::remove, person, app, 0, instance_->remove});
  removals_ |= 1u << app;
  ++extras_;
  return settle(limit);
}

bool Layout::prepare(int person, int limit) {
  jobs_.push_back({JobKind::prepare, person, 0, 0, instance_->prepare});
  return settle(limit);
}

bool Layout::lay(const Job& job, int limit) {
  switch (job.kind) {
    case JobKind::apply:
      return apply(job.what, job.person, limit);
    case JobKind::mix:
      return mix(job.what, job.person, limit);
    case JobKind::remove:
      return remove(job.what, job.person, limit);
    case JobKind::prepare:
      return prepare(job.person, limit);
  }
  return false;
}

// Where the job may be laid at the nearest, given the jobs before it in the sequence.
int Layout::lower_bound(const Job& job) const {
  int bound = std::max(job.floor, free_[job.person]);
  switch (job.kind) {
    case JobKind::apply: {
      const auto& app = instance_->apps[job.what];
      const int leaves = removal_[job.what] >= 0 ? jobs_[removal_[job.what]].start() : 0;
      bound = std::max(bound, leaves + app.develop);
      for (auto later = bound_[job.what]; later; later &= later - 1)
        bound = std::max(bound, jobs_[application_[std::countr_zero(later)]].start() - job.ticks);
      break;
    }
    case JobKind::mix:
      bound = std::max(bound, batches_[job.batch].first_touch);
      break;
    case JobKind::prepare:
      bound = std::max(bound, first_app_);
      break;
    case JobKind::remove:
      break;
  }
  return bound;
}

bool Layout::push(int job, int floor) {
  if (jobs_[job].end >= floor) return false;
  jobs_[job].floor = floor;
  return true;
}

// One pass in sequence order; `pushed` = a relative clock moved an earlier job and another pass is due.
bool Layout::sweep(int limit, bool& pushed) {
  for (std::size_t p = 0; p < instance_->people.size(); ++p)
    free_[p] = basin_ == kNever ? 0 : std::max(0, basin_ - instance_->people[p].until);
  for (auto& batch : batches_) batch.last_touch = kNever, batch.first_touch = 0;
  furthest_ = first_app_ = 0;
  for (auto& job : jobs_) {
    job.end = lower_bound(job);
    const int start = job.start();
    const int there = basin_ == kNever ? limit : std::min(limit, basin_ - instance_->people[job.person].from);
    if (start > there) return false;
    free_[job.person] = start;
    furthest_ = std::max(furthest_, start);
    if (job.kind != JobKind::apply) continue;
    first_app_ = std::max(first_app_, start);
    auto& batch = batches_[job.batch];
    batch.last_touch = std::min(batch.last_touch, job.end);
    batch.first_touch = std::max(batch.first_touch, start);
    // [two clocks] no longer on the hair than its maximum, counted from the first touch
    const int removal = removal_[job.what];
    const int max = instance_->apps[job.what].max;
    if (removal < 0 && start > max) return false;
    if (removal >= 0) pushed |= push(removal, start - max - jobs_[removal].ticks);
  }
  return true;
}

bool Layout::settle(int limit) {
  for (bool pushed = true; pushed;) {
    pushed = false;
    if (!sweep(limit, pushed)) return false;
    // [mix life] from the start of mixing to the last touch
    for (std::size_t b = 0; b < batches_.size(); ++b) {
      const auto& batch = batches_[b];
      const int mixed =
          batch.job >= 0 ? jobs_[batch.job].start() : batch.first_touch + instance_->bowls[batch.bowl].minutes;
      const int nearest = mixed - instance_->bowls[batch.bowl].life;
      if (batch.last_touch >= nearest) continue;
      for (std::size_t j = 0; j < jobs_.size(); ++j)
        if (jobs_[j].kind == JobKind::apply && jobs_[j].batch == static_cast<int>(b))
          pushed |= push(static_cast<int>(j), nearest);
    }
  }
  return true;
}

std::uint64_t Layout::key() const {
  std::uint64_t open = 0, waiting = 0;
  for (std::size_t b = 0; b < instance_->bowls.size(); ++b) open |= std::uint64_t{open_[b] >= 0} << (b % 16);
  for (std::size_t i = 0; i < instance_->apps.size(); ++i)
    waiting |= std::uint64_t{removal_[i] >= 0 && !placed(static_cast<int>(i))} << i;
  return mask_ | waiting << 24 | open << 48;
}

void Layout::signature(std::vector<int>& out) const {
  out.clear();
  out.push_back(inversions_);
  out.push_back(extras_);
  out.push_back(furthest_);
  for (std::size_t p = 0; p < instance_->people.size(); ++p) out.push_back(free_[p]);
  for (std::size_t b = 0; b < instance_->bowls.size(); ++b)
    out.push_back(open_[b] >= 0 ? batches_[open_[b]].first_touch : -1);
  out.push_back(first_app_);
  for (std::size_t i = 0; i < instance_->apps.size(); ++i) {
    if (placed(static_cast<int>(i))) continue;
    if (removal_[i] >= 0) out.push_back(jobs_[removal_[i]].start());
    int after = 0;  // the house order holds it behind these
    for (auto later = instance_->apps[i].later & mask_; later; later &= later - 1)
      after = std::max(after, jobs_[application_[std::countr_zero(later)]].start());
    out.push_back(after);
  }
}

bool Layout::loose(int limit) const {
  for (const auto& batch : batches_)
    if (batch.job < 0 && batch.last_touch + instance_->bowls[batch.bowl].life < limit) return false;
  for (std::size_t i = 0; i < instance_->apps.size(); ++i)
    if (removal_[i] >= 0 && !placed(static_cast<int>(i)) && jobs_[removal_[i]].start() + instance_->apps[i].max < limit)
      return false;
  return true;
}

}  // namespace strandline
