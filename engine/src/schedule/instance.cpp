#include "schedule/instance.h"

#include <algorithm>
#include <cmath>

namespace strandline {
namespace {

constexpr double kRounding = 1e-6;  // ticks; swallows what arithmetic on minutes leaves behind

bool twins(const Instance::App& a, const Instance::App& b) {
  return a.bowl == b.bowl && a.apply == b.apply && a.develop == b.develop && a.max == b.max && a.packet == b.packet &&
         a.later == b.later;
}

// Two packets whose removals may be exchanged without breaking a clock: the one that starts first also ends
// first.
bool exchangeable(const Instance::App& a, const Instance::App& b, bool one_applier) {
  return a.packet && b.packet && a.develop == b.develop && a.max == b.max && (one_applier || a.apply == b.apply);
}

// Hands that apply all take the same time for it.
bool one_pace(const ScheduleRequest& request) {
  double pace = 0;
  for (const auto& p : request.people) {
    if (!has(p, Skill::apply)) continue;
    if (pace > 0 && p.pace != pace) return false;
    pace = p.pace;
  }
  return true;
}

void set_queues(Instance& instance) {
  const auto& people = instance.request.people;
  const bool one_applier = std::ranges::count_if(people, [](const Person& p) { return has(p, Skill::apply); }) == 1;
  if (instance.soft || (!one_applier && !one_pace(instance.request))) return;
  for (auto& a : instance.apps)
    for (std::size_t j = 0; j < instance.apps.size(); ++j)
      if ((a.later >> j & 1) && exchangeable(a, instance.apps[j], one_applier)) a.queue |= 1u << j;
}

// Whether every other application treats both alike.
bool seen_alike(const Instance& instance, std::size_t i, std::size_t j) {
  return std::ranges::all_of(instance.apps, [&](const auto& a) { return (a.later >> i & 1) == (a.later >> j & 1); });
}

Instance::App make_app(const Application& a, const ScheduleRequest& request, double part) {
  Instance::App app;
  app.bowl = static_cast<int>(std::ranges::find(request.bowls, a.bowl, &ScheduledBowl::id) - request.bowls.begin());
  app.apply.fill(kNever);
  app.fastest = kNever;
  for (std::size_t p = 0; p < request.people.size(); ++p) {
    if (!has(request.people[p], Skill::apply)) continue;
    app.apply[p] = nearest_ticks(a.apply.mean * request.people[p].pace);
    app.fastest = std::min(app.fastest, app.apply[p]);
  }
  app.develop = ticks_up(a.min + part * std::max(0.0, a.target - a.min));
  app.max = ticks_down(a.max);
  app.packet = a.packet;
  return app;
}

}  // namespace

int nearest_ticks(double minutes) {
  if (minutes <= 0) return 0;
  return std::max(1, static_cast<int>(std::lround(minutes * kTicksPerMinute)));
}

int ticks_up(double minutes) { return static_cast<int>(std::ceil(minutes * kTicksPerMinute - kRounding)); }
int ticks_down(double minutes) { return static_cast<int>(std::floor(minutes * kTicksPerMinute + kRounding)); }

bool has(const Person& person, Skill skill) { return std::ranges::find(person.skills, skill) != person.skills.end(); }

Instance make_instance(const ScheduleRequest& request, double part) {
  Instance instance;
  instance.request = request;
  auto& sorted = instance.request;
  std::ranges::sort(sorted.bowls, {}, &ScheduledBowl::id);
  std::ranges::sort(sorted.applications, {}, &Application::id);
  std::ranges::sort(sorted.people, {}, &Person::id);
  std::ranges::sort(sorted.basin_taken, {}, &Window::from);

  instance.rules = order_rules(sorted.applications, sorted.policy);
  for (const auto& bowl : sorted.bowls)
    instance.bowls.push_back({nearest_ticks(bowl.mix.mean), ticks_down(bowl.mix_life)});
  for (const auto& p : sorted.people)
    instance.people.push_back({has(p, Skill::prepare), has(p, Skill::mix), has(p, Skill::apply),
                               has(p, Skill::apply) || has(p, Skill::basin), ticks_up(p.from),
                               p.until ? ticks_down(*p.until) : kNever});
  for (const auto& a : sorted.applications) instance.apps.push_back(make_app(a, sorted, part));
  for (std::size_t i = 0; i < instance.apps.size(); ++i) instance.apps[i].later = instance.rules[i].later;
  for (std::size_t i = 0; i < instance.apps.size(); ++i)
    for (std::size_t j = i + 1; j < instance.apps.size() && instance.apps[i].twin < 0; ++j)
      if (twins(instance.apps[i], instance.apps[j]) && seen_alike(instance, i, j))
        instance.apps[i].twin = static_cast<int>(j);

  instance.soft = sorted.policy.order == OrderForce::soft;
  set_queues(instance);
  instance.prepare = nearest_ticks(sorted.policy.prepare.mean);
  instance.remove = nearest_ticks(sorted.policy.remove_packet.mean);
  instance.soft_cost = ticks_up(sorted.policy.soft_order_minutes);
  instance.node_limit = sorted.policy.node_limit;
  return instance;
}

Instance stretched(Instance instance, int ticks) {
  for (auto& app : instance.apps) app.max += ticks;
  return instance;
}

Instance in_sequence(Instance instance, bool lightening_first) {
  const auto& applications = instance.request.applications;
  const auto before = [&](std::size_t i, std::size_t j) {
    if (instance.rules[i].later >> j & 1) return true;
    if (instance.rules[j].later >> i & 1) return false;
    if (applications[i].lightening != applications[j].lightening) return applications[i].lightening == lightening_first;
    return i < j;
  };
  for (std::size_t i = 0; i < instance.apps.size(); ++i) {
    instance.apps[i].twin = -1;
    instance.apps[i].later = instance.apps[i].queue = 0;
    for (std::size_t j = 0; j < instance.apps.size(); ++j)
      if (i != j && before(i, j)) instance.apps[i].later |= 1u << j;
  }
  instance.soft = false;
  set_queues(instance);
  return instance;
}

Instance applied_by(Instance instance, int person) {
  for (int p = 0; p < static_cast<int>(instance.people.size()); ++p) {
    if (p == person) continue;
    instance.people[p].apply = false;
    std::erase(instance.request.people[p].skills, Skill::apply);
    for (auto& app : instance.apps) app.apply[p] = kNever;
  }
  for (auto& app : instance.apps) app.fastest = app.apply[person];
  return instance;
}

}  // namespace strandline
