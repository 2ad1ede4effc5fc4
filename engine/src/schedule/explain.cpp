#include "schedule/explain.h"

#include <algorithm>

namespace strandline {
namespace {

constexpr int kLongest = static_cast<int>(12 * 60 * kTicksPerMinute);

bool feasible(const Instance& instance) { return search(instance).best.has_value(); }

const char* yes_no(bool yes) { return yes ? "yes" : "no"; }

// The same visit with one more pair of hands that can do everything.
bool mended_by_hands(const ScheduleRequest& request, bool to_target) {
  if (request.people.size() >= kMaxPeople) return false;
  auto more = request;
  std::string id = "second";
  while (std::ranges::count(more.people, id, &Person::id)) id += "+";
  more.people.push_back(
      {id, "", {Skill::prepare, Skill::mix, Skill::apply, Skill::check, Skill::basin, Skill::finish}, 1, 0, {}});
  return feasible(make_instance(more, to_target ? 1 : 0));
}

bool mended_by_order(const Instance& instance) {
  auto soft = instance;
  soft.soft = true;
  return !instance.soft && feasible(soft);
}

bool mended_by_packets(const ScheduleRequest& request, bool to_target) {
  auto wrapped = request;
  for (auto& a : wrapped.applications) a.packet = a.packet || !a.touches_scalp;
  return feasible(make_instance(wrapped, to_target ? 1 : 0));
}

}  // namespace

Problems explain(const Instance& instance) {
  // The least by which all maxima must be longer.
  int low = 0, high = kLongest;
  ShortestSearch best = search(stretched(instance, high));
  if (!best.best) return {{"nobody_can", "/people", {{"task", "apply"}}}};
  while (high - low > 1) {
    const int middle = low + (high - low) / 2;
    ShortestSearch found = search(stretched(instance, middle));
    if (found.best) {
      high = middle;
      best = std::move(found);
    } else {
      low = middle;
    }
  }

  const bool to_target = instance.request.policy.develop_to == DevelopTo::target;
  std::map<std::string, std::string> remedies{
      {"second_pair_of_hands", yes_no(mended_by_hands(instance.request, to_target))},
      {"other_order", yes_no(mended_by_order(instance))},
      {"packets", yes_no(mended_by_packets(instance.request, to_target))},
      {"shorter_development", yes_no(to_target && feasible(make_instance(instance.request, 0)))}};
  std::vector<std::pair<int, Problem>> breaking;
  for (const auto& job : best.best->layout.jobs()) {
    if (job.kind != JobKind::apply) continue;
    int leaves = 0;
    for (const auto& other : best.best->layout.jobs())
      if (other.kind == JobKind::remove && other.what == job.what) leaves = other.start();
    const int over = job.start() - leaves - instance.apps[job.what].max;
    if (over <= 0) continue;
    const auto& a = instance.request.applications[job.what];
    auto params = remedies;
    params["application"] = a.id;
    params["zone"] = a.zone;
    params["minutes"] = whole_minutes(minutes_of(over));
    breaking.push_back({over, {"clock_breaks", "/applications", params}});
  }
  std::ranges::stable_sort(breaking, std::ranges::greater{}, &std::pair<int, Problem>::first);
  Problems problems;
  for (auto& [over, problem] : breaking) problems.push_back(std::move(problem));
  return problems;
}

}  // namespace strandline
