#include "schedule/resume.h"

#include <algorithm>
#include <tuple>

#include "schedule/search.h"

namespace strandline {
namespace {

struct Arc {
  int from, to, ticks;  // start(to) >= start(from) + ticks
};

// Least and latest starts of jobs and, behind them, of the basin time.
struct Times {
  std::vector<int> least, most;
  int basin() const { return least.back(); }
};

struct NewMix {
  int bowl = 0, job = -1, uses = 0;
};

class Resume {
 public:
  Resume(const Instance& instance, const SoFar& so_far, long node_limit)
      : in_(instance), at_(so_far), node_limit_(node_limit), open_(instance.bowls.size(), kMade) {
    for (std::size_t i = 0; i < in_.apps.size(); ++i)
      if (!at_.touched[i] && !at_.gone[i]) left_ |= 1u << i;
    for (std::size_t b = 0; b < open_.size(); ++b)
      if (!at_.open[b]) open_[b] = kNone;
  }

  std::optional<Resumed> run() {
    if (const auto times = settle(false, 0)) descend();
    if (best_basin_ == kNever) return std::nullopt;
    jobs_ = best_jobs_, mixes_ = best_mixes_, removed_ = best_removed_;
    left_ = 0;
    best_basin_ = kNever;
    auto times = *settle(true, best_at_);
    lower(times);
    Resumed out{{}, times.basin(), !stopped_, nodes_};
    for (std::size_t j = 0; j < jobs_.size(); ++j)
      out.jobs.push_back({jobs_[j], times.most[j], times.most[j] + jobs_[j].ticks, times.least[j]});
    std::ranges::stable_sort(out.jobs, {}, &PlannedJob::start);
    return out;
  }

 private:
  static constexpr int kNone = -2, kMade = -1;

  bool hair_kept(std::size_t app) const { return at_.touched[app] && !at_.gone[app] && !(removed_ >> app & 1); }

  void arcs_of(int k, bool final) {
    const auto& job = jobs_[k];
    const int basin = static_cast<int>(jobs_.size());
    for (int i = k - 1; i >= 0; --i)
      if (jobs_[i].person == job.person) {
        arcs_.push_back({i, k, jobs_[i].ticks});
        break;
      }
    arcs_.push_back({k, basin, job.ticks});
    if (job.kind == JobKind::remove) {
      if (const auto& worn = at_.touched[job.what]) {
        low_[k] = std::max(low_[k], worn->last + in_.apps[job.what].develop);
        high_[k] = std::min(high_[k], worn->first + in_.apps[job.what].max);
      }
      return;
    }
    if (job.kind != JobKind::apply) return;
    const auto& app = in_.apps[job.what];
    low_[k] = std::max(low_[k], at_.prepared);
    const int life = in_.bowls[app.bowl].life;
    if (job.batch >= 0) {
      const int mix = mixes_[job.batch].job;
      arcs_.push_back({mix, k, jobs_[mix].ticks});
      arcs_.push_back({k, mix, job.ticks - life});
    } else {
      low_[k] = std::max(low_[k], at_.open[app.bowl]->ready);
      high_[k] = std::min(high_[k], at_.open[app.bowl]->start + life - job.ticks);
    }
    int out = basin;
    for (int i = k + 1; i < basin; ++i)
      if (jobs_[i].kind == JobKind::remove && jobs_[i].what == job.what) out = i;
    arcs_.push_back({k, out, job.ticks + app.develop});
    if (out != basin || !app.packet || final) arcs_.push_back({out, k, -app.max});
    for (int i = 0; i < k; ++i)
      if (jobs_[i].kind == JobKind::apply && (in_.apps[jobs_[i].what].later >> job.what & 1))
        arcs_.push_back({i, k, 0});
  }

  // Nothing = some clock cannot hold, or the plan is no better than the best. `final`: packets stay that are not taken
  // out.
  std::optional<Times> settle(bool final, int floor) {
    const std::size_t basin = jobs_.size();
    arcs_.clear();
    low_.assign(basin + 1, at_.now);
    high_.assign(basin + 1, kNever);
    low_[basin] = std::max(at_.now, floor);
    for (std::size_t k = 0; k < basin; ++k) {
      const auto& hands = in_.people[jobs_[k].person];
      low_[k] = std::max({low_[k], at_.free[jobs_[k].person], hands.from});
      high_[k] = hands.until == kNever ? kNever : hands.until - jobs_[k].ticks;
    }
    for (std::size_t k = 0; k < basin; ++k) arcs_of(static_cast<int>(k), final);
    for (std::size_t i = 0; i < in_.apps.size(); ++i) {
      if (!at_.touched[i] || at_.gone[i]) continue;
      low_[basin] = std::max(low_[basin], at_.touched[i]->last + in_.apps[i].develop);
      if (hair_kept(i) && (!in_.apps[i].packet || final))
        high_[basin] = std::min(high_[basin], at_.touched[i]->first + in_.apps[i].max);
    }
    Times times{low_, high_};
    if (!raise(times.least)) return std::nullopt;
    return times;
  }

  // Longest paths (Bellman, Ford); starts that rise for longer than there are jobs have no end.
  bool raise(std::vector<int>& least) const {
    for (std::size_t round = 0; round <= least.size(); ++round) {
      bool changed = false;
      for (const auto& arc : arcs_)
        if (const int at = least[arc.from] + arc.ticks; at > least[arc.to]) least[arc.to] = at, changed = true;
      for (std::size_t k = 0; k < least.size(); ++k)
        if (least[k] > high_[k]) return false;
      if (least.back() > best_basin_) return false;
      if (!changed) return true;
    }
    return false;
  }

  void lower(Times& times) const {
    times.most.back() = times.basin();
    for (std::size_t round = 0; round <= times.most.size(); ++round) {
      bool changed = false;
      for (const auto& arc : arcs_)
        if (const int at = times.most[arc.to] - arc.ticks; at < times.most[arc.from])
          times.most[arc.from] = at, changed = true;
      if (!changed) return;
    }
  }

  // Work that is left over hands that can do it, then the shortest of what it needs on the hair.
  int bound(const Times& times) const {
    if (!left_) return times.basin();
    int hands = 0, work = 0, develop = kNever;
    for (std::size_t p = 0; p < in_.people.size(); ++p) {
      if (!in_.people[p].apply) continue;
      int free = std::max({at_.now, at_.free[p], in_.people[p].from});
      for (std::size_t k = 0; k < jobs_.size(); ++k)
        if (jobs_[k].person == static_cast<int>(p)) free = std::max(free, times.least[k] + jobs_[k].ticks);
      ++hands, work += free;
    }
    if (!hands) return kNever;
    for (std::size_t i = 0; i < in_.apps.size(); ++i)
      if (left_ >> i & 1) work += in_.apps[i].fastest, develop = std::min(develop, in_.apps[i].develop);
    if (in_.people.size() == 1)
      for (std::size_t b = 0; b < open_.size(); ++b)
        if (open_[b] == kNone && needed(static_cast<int>(b))) work += in_.bowls[b].minutes;
    return std::max(times.basin(), (work + hands - 1) / hands + develop);
  }

  bool needed(int bowl) const {
    for (std::size_t i = 0; i < in_.apps.size(); ++i)
      if ((left_ >> i & 1) && in_.apps[i].bowl == bowl) return true;
    return false;
  }

  int inversions(int app) const {
    int out = 0;
    for (std::size_t i = 0; i < in_.apps.size(); ++i)
      out += (left_ >> i & 1) && static_cast<int>(i) != app && (in_.apps[i].later >> app & 1);
    return out;
  }

  bool bound_to(const Job& a, const Job& b) const {
    const bool applies = a.kind == JobKind::apply && b.kind == JobKind::apply;
    if (applies) return (in_.apps[a.what].later >> b.what & 1) || (in_.apps[b.what].later >> a.what & 1);
    if (a.kind == JobKind::remove || b.kind == JobKind::remove)
      return a.what == b.what && a.kind != JobKind::mix && b.kind != JobKind::mix;
    const auto bowl = [&](const Job& j) { return j.kind == JobKind::mix ? j.what : in_.apps[j.what].bowl; };
    return bowl(a) == bowl(b);
  }

  // Neighbours of two people that do not bind each other are laid in one order only.
  bool in_turn(const Job& job) const {
    return jobs_.empty() || job.person >= jobs_.back().person || bound_to(jobs_.back(), job);
  }

  std::vector<Job> candidates() const {
    std::vector<Job> out;
    for (int p = 0; p < static_cast<int>(in_.people.size()); ++p) {
      const auto& hands = in_.people[p];
      for (int i = 0; i < static_cast<int>(in_.apps.size()); ++i) {
        const auto& app = in_.apps[i];
        const bool due = (left_ >> i & 1) && (in_.soft || inversions(i) == 0);
        if (due && app.apply[p] != kNever && open_[app.bowl] != kNone)
          out.push_back({JobKind::apply, p, i, open_[app.bowl], app.apply[p]});
        const bool on = at_.touched[i] ? !at_.gone[i] : !at_.gone[i] && !(left_ >> i & 1);
        if (hands.remove && app.packet && on && !(removed_ >> i & 1))
          out.push_back({JobKind::remove, p, i, kMade, in_.remove});
      }
      for (int b = 0; b < static_cast<int>(in_.bowls.size()); ++b)
        if (hands.mix && needed(b) && (open_[b] < 0 || mixes_[open_[b]].uses))
          out.push_back({JobKind::mix, p, b, static_cast<int>(mixes_.size()), in_.bowls[b].minutes});
    }
    std::erase_if(out, [&](const Job& job) { return !in_turn(job); });
    return out;
  }

  // Lays the job, has `work` done, takes it up again.
  template <class Work>
  void with(const Job& job, Work&& work) {
    const int was = job.kind == JobKind::mix ? open_[job.what] : 0;
    const int out_of_order = job.kind == JobKind::apply && in_.soft ? inversions(job.what) : 0;
    jobs_.push_back(job);
    inversions_ += out_of_order;
    if (job.kind == JobKind::apply) left_ &= ~(1u << job.what);
    if (job.kind == JobKind::apply && job.batch >= 0) ++mixes_[job.batch].uses;
    if (job.kind == JobKind::remove) removed_ |= 1u << job.what;
    if (job.kind == JobKind::mix)
      mixes_.push_back({job.what, static_cast<int>(jobs_.size()) - 1}), open_[job.what] = job.batch;
    work();
    if (job.kind == JobKind::mix) mixes_.pop_back(), open_[job.what] = was;
    if (job.kind == JobKind::remove) removed_ &= ~(1u << job.what);
    if (job.kind == JobKind::apply && job.batch >= 0) --mixes_[job.batch].uses;
    if (job.kind == JobKind::apply) left_ |= 1u << job.what;
    inversions_ -= out_of_order;
    jobs_.pop_back();
  }

  int extras() const {
    return static_cast<int>(std::ranges::count_if(jobs_, [](const Job& j) { return j.kind != JobKind::apply; }));
  }
  int price(int basin) const { return basin + inversions_ * in_.soft_cost; }
  bool worth(int basin) const {
    const int cost = price(basin);
    if (cost != best_cost_) return cost < best_cost_;
    int extras_to_come = 0;
    for (std::size_t b = 0; b < open_.size(); ++b) extras_to_come += open_[b] == kNone && needed(static_cast<int>(b));
    return extras() + extras_to_come < best_extras_;
  }

  void finish() {
    int floor = 0;
    for (;;) {
      const auto times = settle(true, floor);
      if (!times || !worth(times->basin())) return;
      const int free = next_basin_time(in_, times->basin());
      if (free == kNever) return;
      if (free > times->basin()) {
        floor = free;
        continue;
      }
      best_cost_ = price(free), best_extras_ = extras(), best_at_ = free;
      best_basin_ = in_.soft ? kNever : free;
      best_jobs_ = jobs_, best_mixes_ = mixes_, best_removed_ = removed_;
      return;
    }
  }

  void descend() {
    if (++nodes_ > node_limit_) {
      stopped_ = true;
      return;
    }
    if (!left_) finish();
    struct Child {
      Job job;
      int bound, start;
    };
    std::vector<Child> children;
    for (const auto& job : candidates())
      with(job, [&] {
        const auto laid = settle(false, 0);
        if (laid && worth(bound(*laid))) children.push_back({job, bound(*laid), laid->least[jobs_.size() - 1]});
      });
    // What is to be laid on hair before what is only made ready; the sooner the better.
    std::ranges::stable_sort(children, [](const Child& a, const Child& b) {
      const auto rank = [](const Child& c) { return std::tuple(c.bound, c.job.kind != JobKind::apply, c.start); };
      return rank(a) < rank(b);
    });
    for (const auto& child : children) {
      if (stopped_) return;
      with(child.job, [&] {
        if (const auto laid = settle(false, 0); laid && worth(bound(*laid))) descend();
      });
    }
  }

  const Instance& in_;
  const SoFar& at_;
  long node_limit_, nodes_ = 0;
  bool stopped_ = false;
  std::uint32_t left_ = 0, removed_ = 0;
  int inversions_ = 0;
  std::vector<int> open_;  // by bowl: number of a new mix, kMade or kNone
  std::vector<Job> jobs_;
  std::vector<NewMix> mixes_;
  std::vector<Arc> arcs_;
  std::vector<int> low_, high_;
  int best_basin_ = kNever, best_cost_ = kNever, best_extras_ = kNever, best_at_ = 0;
  std::vector<Job> best_jobs_;
  std::vector<NewMix> best_mixes_;
  std::uint32_t best_removed_ = 0;
};

}  // namespace

std::optional<Resumed> resume(const Instance& instance, const SoFar& so_far, long node_limit) {
  return Resume(instance, so_far, node_limit).run();
}

}  // namespace strandline
