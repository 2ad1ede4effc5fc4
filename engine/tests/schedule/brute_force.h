// Every way to run a small visit, tried one by one, forwards in time: the oracle for the search.
//
// Chooses the mix of every application, the hands and the sequence of all jobs, and which packets leave
// singly; for each choice the least basin time follows from a net of difference constraints. Nothing is
// pruned but impossible choices.
#pragma once

#include <algorithm>
#include <functional>
#include <optional>
#include <vector>

#include "strandline/schedule.h"

namespace strandline::brute_force {

struct Task {
  char kind = 'a';  // a apply, m mix, r remove, p prepare
  int what = 0;     // application, or group of applications that share a mix
  int person = 0;
};

struct Arc {
  int from, to;
  double minutes;  // start(to) >= start(from) + minutes
};

// What has happened of a task; nothing = it lies ahead.
struct Past {
  double start = 0, minutes = 0;
  int person = 0;
};

class Oracle {
 public:
  // Of a visit that runs: nothing ahead begins before `now`. Asked with the applications of the task (of a mix: all
  // that share it).
  double now = 0;
  std::function<std::optional<Past>(char kind, const std::vector<int>& apps)> past = [](char, const auto&) {
    return std::optional<Past>();
  };

  // `later[i][j]`: the house starts application i no later than j.
  Oracle(const ScheduleRequest& request, std::vector<std::vector<bool>> later, bool to_target)
      : r_(request), later_(std::move(later)), to_target_(to_target), group_(request.applications.size(), -1) {}

  std::optional<double> least_basin_time() {
    share(0, 0);
    if (best_ > 1e8) return std::nullopt;
    return best_;
  }

 private:
  // [mixes] partitions of the applications of each bowl
  void share(std::size_t app, int groups) {
    if (app == r_.applications.size()) {
      groups_ = groups;
      for (unsigned singly = 0; singly < (1u << r_.applications.size()); ++singly) {
        bool packets = true;
        for (std::size_t i = 0; i < r_.applications.size(); ++i)
          packets = packets && (!(singly >> i & 1) || r_.applications[i].packet);
        if (!packets) continue;
        singly_ = singly;
        left_.clear();
        left_.push_back({'p', 0, -1});
        for (int g = 0; g < groups_; ++g) left_.push_back({'m', g, -1});
        for (std::size_t i = 0; i < r_.applications.size(); ++i) {
          left_.push_back({'a', static_cast<int>(i), -1});
          if (singly >> i & 1) left_.push_back({'r', static_cast<int>(i), -1});
        }
        done_.clear();
        sequence();
      }
      return;
    }
    for (int g = 0; g <= groups; ++g) {
      if (g < groups) {
        const auto first = std::ranges::find(group_, g) - group_.begin();
        if (r_.applications[first].bowl != r_.applications[app].bowl) continue;
      }
      group_[app] = g;
      share(app + 1, std::max(groups, g + 1));
      group_[app] = -1;
    }
  }

  bool done(char kind, int what) const {
    return std::ranges::any_of(done_, [&](const Task& t) { return t.kind == kind && (kind == 'p' || t.what == what); });
  }

  bool may_follow(const Task& t) const {
    if (t.kind == 'a' && past_of(t)) return done('p', 0) && done('m', group_[t.what]);
    if (t.kind == 'a') {
      for (std::size_t j = 0; j < later_.size(); ++j)
        if (later_[j][t.what] && !done('a', static_cast<int>(j))) return false;
      return done('p', 0) && done('m', group_[t.what]);
    }
    return t.kind != 'r' || done('a', t.what);
  }

  // What has happened was done by the hands that did it, before all that they still have to do, in the order of its
  // times.
  bool out_of_time(const Task& t) const {
    const auto over = past_of(t);
    if (!over) return false;
    if (over->person != t.person) return true;
    return std::ranges::any_of(done_, [&](const Task& d) {
      const auto before = past_of(d);
      return d.person == t.person && (!before || before->start > over->start);
    });
  }

  bool can(int person, char kind) const {
    const auto& skills = r_.people[person].skills;
    const auto is = [&](Skill s) { return std::ranges::find(skills, s) != skills.end(); };
    if (kind == 'p') return is(Skill::prepare);
    if (kind == 'm') return is(Skill::mix);
    return is(Skill::apply) || (kind == 'r' && is(Skill::basin));
  }

  void sequence() {
    if (left_.empty()) {
      evaluate();
      return;
    }
    for (std::size_t k = 0; k < left_.size(); ++k) {
      Task t = left_[k];
      if (!may_follow(t)) continue;
      left_.erase(left_.begin() + static_cast<long>(k));
      for (t.person = 0; t.person < static_cast<int>(r_.people.size()); ++t.person) {
        if (!can(t.person, t.kind) || out_of_time(t)) continue;
        done_.push_back(t);
        sequence();
        done_.pop_back();
      }
      t.person = -1;
      left_.insert(left_.begin() + static_cast<long>(k), t);
    }
  }

  std::optional<Past> past_of(const Task& t) const {
    std::vector<int> apps;
    for (std::size_t i = 0; i < group_.size(); ++i)
      if (t.kind == 'p' || (t.kind == 'm' ? group_[i] == t.what : static_cast<int>(i) == t.what))
        apps.push_back(static_cast<int>(i));
    return past(t.kind, apps);
  }

  double minutes(const Task& t) const {
    if (const auto over = past_of(t)) return over->minutes;
    if (t.kind == 'p') return r_.policy.prepare.mean;
    if (t.kind == 'r') return r_.policy.remove_packet.mean;
    if (t.kind == 'a') return r_.applications[t.what].apply.mean * r_.people[t.person].pace;
    const auto first = std::ranges::find(group_, t.what) - group_.begin();
    return std::ranges::find(r_.bowls, r_.applications[first].bowl, &ScheduledBowl::id)->mix.mean;
  }

  double life(int group) const {
    const auto first = std::ranges::find(group_, group) - group_.begin();
    return std::ranges::find(r_.bowls, r_.applications[first].bowl, &ScheduledBowl::id)->mix_life;
  }

  int at(char kind, int what) const {
    for (std::size_t k = 0; k < done_.size(); ++k)
      if (done_[k].kind == kind && (kind == 'p' || done_[k].what == what)) return static_cast<int>(k);
    return -1;
  }

  std::vector<Arc> arcs() const {
    std::vector<Arc> out;
    const int basin = static_cast<int>(done_.size());
    for (int k = 0; k < basin; ++k) {
      const auto& t = done_[k];
      out.push_back({k, basin, minutes(t)});
      out.push_back({basin + 1, k, r_.people[t.person].from});
      const auto over = past_of(t);
      out.push_back({basin + 1, k, over ? over->start : now});
      if (over) out.push_back({k, basin + 1, -over->start});
      if (r_.people[t.person].until) out.push_back({k, basin + 1, minutes(t) - *r_.people[t.person].until});
      for (int i = 0; i < k; ++i)
        if (done_[i].person == t.person) out.push_back({i, k, minutes(done_[i])});
      if (t.kind != 'a') continue;
      const auto& a = r_.applications[t.what];
      const int mix = at('m', group_[t.what]);
      const int leaves = singly_ >> t.what & 1 ? at('r', t.what) : basin;
      out.push_back({at('p', 0), k, r_.policy.prepare.mean});
      out.push_back({mix, k, minutes(done_[mix])});
      if (!past_of(t)) out.push_back({k, mix, minutes(t) - life(group_[t.what])});
      out.push_back({k, leaves, minutes(t) + (to_target_ ? a.target : a.min)});
      out.push_back({leaves, k, -a.max});
      for (std::size_t j = 0; j < later_.size(); ++j)
        if (later_[t.what][j] && !past_of(done_[at('a', static_cast<int>(j))]))
          out.push_back({k, at('a', static_cast<int>(j)), 0});
    }
    return out;
  }

  // Longest paths from 0 (Bellman, Ford); a start that still rises after as many rounds as tasks has no
  // solution.
  void evaluate() {
    const auto net = arcs();
    std::vector<double> start(done_.size() + 2, 0);  // the tasks, the basin time, "hands on"
    const auto& basin = start[done_.size()];
    for (std::size_t round = 0; round <= start.size(); ++round) {
      bool changed = false;
      for (const auto& arc : net)
        if (start[arc.from] + arc.minutes > start[arc.to] + 1e-9)
          start[arc.to] = start[arc.from] + arc.minutes, changed = true;
      if (basin >= best_ || start.back() > 0) return;
      if (!changed) {
        best_ = basin;
        return;
      }
    }
  }

  const ScheduleRequest& r_;
  std::vector<std::vector<bool>> later_;
  bool to_target_;
  std::vector<int> group_;
  int groups_ = 0;
  unsigned singly_ = 0;
  std::vector<Task> left_, done_;
  double best_ = 1e9;
};

}  // namespace strandline::brute_force
