// An independent judge of a timeline: knows the rules of a visit, nothing of how the plan was found.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "strandline/schedule.h"

namespace strandline::judge {

inline constexpr double kTick = 0.25;  // minutes; plans are laid on quarters
inline constexpr double kEps = 1e-9;

inline double rounded(double minutes) {
  return minutes <= 0 ? 0 : std::max(kTick, std::round(minutes / kTick) * kTick);
}

struct Judge {
  const ScheduleRequest& request;
  const Timeline& timeline;
  std::vector<std::string> faults;

  void must(bool holds, const std::string& what) {
    if (!holds) faults.push_back(what);
  }

  const Person& person(const std::string& id) const { return *std::ranges::find(request.people, id, &Person::id); }
  bool skilled(const std::string& id, Skill skill) const {
    const auto& skills = person(id).skills;
    return std::ranges::find(skills, skill) != skills.end();
  }
  const TimelineTask* task(const std::string& id) const {
    const auto found = std::ranges::find(timeline.tasks, id, &TimelineTask::id);
    return found == timeline.tasks.end() ? nullptr : &*found;
  }

  void hands() {
    for (const auto& a : timeline.tasks) {
      must(std::ranges::count(request.people, a.who, &Person::id) == 1, a.id + " has no hands");
      must(a.start_min >= person(a.who).from - kEps, a.id + " before " + a.who + " is there");
      must(!person(a.who).until || a.end_min <= *person(a.who).until + kEps, a.id + " after " + a.who + " left");
      must(a.earliest <= a.start_min + kEps && a.start_min <= a.latest + kEps, a.id + " outside its slack");
      if (a.kind == TaskKind::check && !a.during.empty()) continue;
      for (const auto& b : timeline.tasks) {
        if (a.id == b.id || a.who != b.who || (b.kind == TaskKind::check && !b.during.empty())) continue;
        must(a.end_min <= b.start_min + kEps || b.end_min <= a.start_min + kEps,
             a.id + " and " + b.id + " share hands");
      }
    }
  }

  void skills() {
    for (const auto& t : timeline.tasks) {
      const bool ok = t.kind == TaskKind::prepare ? skilled(t.who, Skill::prepare)
                      : t.kind == TaskKind::mix   ? skilled(t.who, Skill::mix)
                      : t.kind == TaskKind::apply ? skilled(t.who, Skill::apply)
                      : t.kind == TaskKind::check ? skilled(t.who, Skill::check)
                      : t.kind == TaskKind::remove_packet
                          ? skilled(t.who, Skill::apply) || skilled(t.who, Skill::basin)
                          : skilled(t.who, Skill::basin) || skilled(t.who, Skill::finish);
      must(ok, t.id + " is not a task for " + t.who);
    }
  }

  void clocks() {
    const auto* prepare = task("prepare");
    must(prepare, "nobody prepares");
    must(timeline.developments.size() == request.applications.size(), "an application is missing");
    for (const auto& a : request.applications) {
      const auto* apply = task("apply:" + a.id);
      const auto* removal = task("remove:" + a.id);
      must(apply != nullptr, a.id + " is never applied");
      if (!apply) continue;
      must(std::abs(apply->end_min - apply->start_min - rounded(a.apply.mean * person(apply->who).pace)) < kEps,
           a.id + " takes another time");
      must(apply->start_min >= prepare->end_min - kEps, a.id + " before preparing");
      must(!removal || a.packet, a.id + " leaves alone");
      const double leaves = removal ? removal->start_min : timeline.basin_min;
      must(leaves <= timeline.basin_min + kEps, a.id + " leaves after the basin time");
      const double needed = timeline.developed_to == DevelopTo::target ? a.target : a.min;
      must(leaves >= apply->end_min + needed - kEps, a.id + " too short on the hair");
      must(leaves <= apply->start_min + a.max + kEps, a.id + " too long on the hair");
      mix_of(a, *apply);
    }
  }

  void mix_of(const Application& a, const TimelineTask& apply) {
    const auto& bowl = *std::ranges::find(request.bowls, a.bowl, &ScheduledBowl::id);
    const auto* mix = task("mix:" + a.bowl + ":" + std::to_string(apply.mix));
    must(mix != nullptr, a.id + " from a bowl nobody mixed");
    if (!mix) return;
    must(std::abs(mix->end_min - mix->start_min - rounded(bowl.mix.mean)) < kEps, mix->id + " takes another time");
    must(mix->end_min <= apply.start_min + kEps, a.id + " before its mix");
    must(apply.end_min <= mix->start_min + bowl.mix_life + kEps, a.id + " from a stale mix");
  }

  void basin() {
    double at = timeline.basin_min;
    for (std::size_t i = 0; i < request.tail.size(); ++i) {
      const auto found = std::ranges::find_if(timeline.tasks, [&](const auto& t) {
        return t.kind == request.tail[i].kind && t.id.ends_with(":" + std::to_string(i + 1));
      });
      must(found != timeline.tasks.end(), "a tail task is missing");
      if (found == timeline.tasks.end()) return;
      must(request.tail[i].at_basin ? std::abs(found->start_min - at) < kEps : found->start_min >= at - kEps,
           found->id + " out of line");
      for (const auto& w : request.basin_taken)
        must(!request.tail[i].at_basin || found->end_min <= w.from + kEps || found->start_min >= w.until - kEps,
             found->id + " at a taken basin");
      at = found->end_min;
    }
    must(std::abs(at - timeline.finish_min) < kEps, "finish is not the end of the last task");
    must(!request.leave_by || timeline.finish_min <= *request.leave_by + kEps, "leaves too late");
  }

  // On a lightener: a first look at 15 to 20 minutes, then none sooner than 5 or later than 10 after the one
  // before.
  void looks() {
    double from = 1e9, until = 0;
    for (const auto& a : request.applications) {
      if (!a.lightening) continue;
      const auto d = std::ranges::find(timeline.developments, a.id, &Development::application);
      from = std::min(from, d->first_touch);
      until = std::max(until, d->leaves_at);
    }
    const auto& p = request.policy;
    double least = from + p.first_check, most = least + p.check_every_min;
    for (const auto& t : timeline.tasks) {
      if (t.kind != TaskKind::check) continue;
      must(t.start_min >= least - kEps && t.start_min <= most + kEps, t.id + " at the wrong time");
      least = t.start_min + p.check_every_min;
      most = t.start_min + p.check_every_max;
    }
    must(from > 1e8 || most + p.check_minutes >= until - kEps, "a lightener is left without a look");
  }
};

inline std::vector<std::string> faults(const ScheduleRequest& request, const Timeline& timeline) {
  Judge judge{request, timeline, {}};
  judge.hands();
  judge.skills();
  judge.clocks();
  judge.basin();
  judge.looks();
  return judge.faults;
}

}  // namespace strandline::judge
