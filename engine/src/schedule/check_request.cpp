#include <algorithm>
#include <cmath>
#include <set>

#include "schedule/instance.h"

namespace strandline {
namespace {

class Checker {
 public:
  void minutes(double value, const std::string& path) {
    if (!std::isfinite(value) || value < 0)
      problems.push_back({"not_minutes", path, {}});
    else if (value > 24 * 60)
      problems.push_back({"longer_than_a_day", path, {}});
  }
  void duration(const Duration& d, const std::string& path) {
    minutes(d.mean, path + "/mean");
    minutes(d.sd, path + "/sd");
  }
  void within(double value, double low, double high, const std::string& path) {
    if (!(value >= low && value <= high)) problems.push_back({"out_of_range", path, {}});
  }
  void need(bool holds, std::string code, std::string path, std::map<std::string, std::string> params = {}) {
    if (!holds) problems.push_back({std::move(code), std::move(path), std::move(params)});
  }
  template <class T>
  void unique_ids(const std::vector<T>& list, const std::string& path) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto at = path + "/" + std::to_string(i) + "/id";
      need(!list[i].id.empty(), "id_missing", at);
      need(seen.insert(list[i].id).second, "id_twice", at, {{"id", list[i].id}});
    }
  }
  Problems problems;
};

void check_bowls(Checker& c, const ScheduleRequest& r) {
  for (std::size_t i = 0; i < r.bowls.size(); ++i) {
    const auto at = "/bowls/" + std::to_string(i);
    c.duration(r.bowls[i].mix, at + "/mix");
    c.minutes(r.bowls[i].mix_life, at + "/mix_life");
  }
}

void check_applications(Checker& c, const ScheduleRequest& r) {
  c.need(!r.applications.empty(), "nothing_to_apply", "/applications");
  c.need(r.applications.size() <= kMaxApplications, "too_many_applications", "/applications",
         {{"most", std::to_string(kMaxApplications)}});
  for (std::size_t i = 0; i < r.applications.size(); ++i) {
    const auto& a = r.applications[i];
    const auto at = "/applications/" + std::to_string(i);
    c.duration(a.apply, at + "/apply");
    c.minutes(a.min, at + "/min");
    c.minutes(a.target, at + "/target");
    c.minutes(a.max, at + "/max");
    c.need(a.target >= a.min, "target_below_minimum", at + "/target");
    c.within(a.white_share, 0, 1, at + "/white_share");
    c.within(a.resistance, 0, 1, at + "/resistance");
    c.within(a.porosity, 0, 3, at + "/porosity");
    c.need(std::ranges::count(r.bowls, a.bowl, &ScheduledBowl::id) == 1, "unknown_bowl", at + "/bowl",
           {{"bowl", a.bowl}});
  }
}

void check_people(Checker& c, const ScheduleRequest& r) {
  c.need(r.people.size() <= kMaxPeople, "too_many_people", "/people", {{"most", std::to_string(kMaxPeople)}});
  const auto someone = [&](Skill skill) {
    return std::ranges::any_of(r.people, [&](const Person& p) { return has(p, skill); });
  };
  const auto need = [&](bool asked, Skill skill, const char* task) {
    c.need(!asked || someone(skill), "nobody_can", "/people", {{"task", task}});
  };
  need(true, Skill::prepare, "prepare");
  need(true, Skill::mix, "mix");
  need(true, Skill::apply, "apply");
  need(std::ranges::any_of(r.applications, &Application::lightening), Skill::check, "check");
  need(std::ranges::any_of(r.tail, &TailTask::at_basin), Skill::basin, "basin");
  need(std::ranges::any_of(r.tail, [](const TailTask& t) { return !t.at_basin; }), Skill::finish, "finish");
  for (std::size_t i = 0; i < r.people.size(); ++i) {
    const auto& p = r.people[i];
    const auto at = "/people/" + std::to_string(i);
    c.need(p.pace > 0 && p.pace <= 10, "out_of_range", at + "/pace");
    c.minutes(p.from, at + "/from");
    if (!p.until) continue;
    c.minutes(*p.until, at + "/until");
    c.need(*p.until > p.from, "window_backwards", at + "/until");
  }
}

void check_policy(Checker& c, const ScheduleRequest& r) {
  const auto& p = r.policy;
  c.duration(p.prepare, "/policy/prepare");
  c.duration(p.remove_packet, "/policy/remove_packet");
  c.minutes(p.soft_order_minutes, "/policy/soft_order_minutes");
  c.minutes(p.late_tolerance, "/policy/late_tolerance");
  c.within(p.resistant_from, 0, 1, "/policy/resistant_from");
  c.within(p.porous_from, 0, 3, "/policy/porous_from");
  c.need(p.sample_points > 0 && p.sample_points <= 100000, "out_of_range", "/policy/sample_points");
  c.need(p.node_limit > 0, "out_of_range", "/policy/node_limit");
  if (std::ranges::none_of(r.applications, &Application::lightening)) return;
  c.minutes(p.first_check, "/policy/first_check");
  c.minutes(p.check_minutes, "/policy/check_minutes");
  c.need(p.first_check > 0, "out_of_range", "/policy/first_check");
  c.need(p.check_every_min >= 1 && p.check_every_min <= p.check_every_max, "out_of_range", "/policy/check_every_min");
  c.minutes(p.check_every_max, "/policy/check_every_max");
}

// What no order and no pair of hands can mend.
void check_clocks(Checker& c, const ScheduleRequest& r) {
  double pace = 1e9;
  for (const auto& p : r.people)
    if (has(p, Skill::apply)) pace = std::min(pace, p.pace);
  for (std::size_t i = 0; i < r.applications.size(); ++i) {
    const auto& a = r.applications[i];
    const auto at = "/applications/" + std::to_string(i);
    const int apply = nearest_ticks(a.apply.mean * pace);
    const int over = apply + ticks_up(a.min) - ticks_down(a.max);
    c.need(over <= 0, "development_window_too_short", at + "/max",
           {{"application", a.id}, {"minutes", std::to_string(minutes_of(over))}});
    const auto bowl = std::ranges::find(r.bowls, a.bowl, &ScheduledBowl::id);
    const int stale = nearest_ticks(bowl->mix.mean) + apply - ticks_down(bowl->mix_life);
    c.need(stale <= 0, "mix_life_too_short", at + "/apply",
           {{"application", a.id}, {"bowl", a.bowl}, {"minutes", std::to_string(minutes_of(stale))}});
  }
}

}  // namespace

Problems check_request(const ScheduleRequest& request) {
  Checker c;
  c.unique_ids(request.bowls, "/bowls");
  c.unique_ids(request.applications, "/applications");
  c.unique_ids(request.people, "/people");
  check_bowls(c, request);
  check_applications(c, request);
  check_people(c, request);
  check_policy(c, request);
  for (std::size_t i = 0; i < request.tail.size(); ++i)
    c.duration(request.tail[i].minutes, "/tail/" + std::to_string(i) + "/minutes");
  for (std::size_t i = 0; i < request.basin_taken.size(); ++i) {
    const auto at = "/basin_taken/" + std::to_string(i);
    c.minutes(request.basin_taken[i].from, at + "/from");
    c.minutes(request.basin_taken[i].until, at + "/until");
    c.need(request.basin_taken[i].until >= request.basin_taken[i].from, "window_backwards", at + "/until");
  }
  if (request.leave_by) c.minutes(*request.leave_by, "/leave_by");
  if (c.problems.empty()) check_clocks(c, request);
  return std::move(c.problems);
}

}  // namespace strandline
