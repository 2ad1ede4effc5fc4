#include <algorithm>
#include <cmath>
#include <set>

#include "strandline/pipeline.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

void check_bowls(const Visit& visit, Problems& problems) {
  const std::vector<ZoneRef> all = zones(visit.head);
  std::set<std::string> labels;
  std::set<std::pair<int, std::string>> served;  // by step
  for (size_t i = 0; i < visit.bowls.size(); ++i) {
    const Bowl& b = visit.bowls[i];
    const std::string path = "/bowls/" + std::to_string(i);
    if (!labels.insert(b.label).second) problems.push_back({"name_used_twice", path + "/label", {{"name", b.label}}});
    constexpr double kMinutesMost = 240;
    if (!(b.formula.minutes >= 0 && b.formula.minutes <= kMinutesMost))
      problems.push_back({"minutes_out_of_range",
                          path + "/formula/minutes",
                          {{"value", std::to_string(b.formula.minutes)}, {"min", "0"}, {"max", "240"}}});
    for (size_t j = 0; j < b.zones.size(); ++j) {
      const std::string here = path + "/zones/" + std::to_string(j);
      if (std::none_of(all.begin(), all.end(), [&](const ZoneRef& z) { return z.id == b.zones[j]; }))
        problems.push_back({"unknown_zone", here, {{"zone", b.zones[j]}}});
      else if (!served.insert({b.step, b.zones[j]}).second)
        problems.push_back({"zone_in_two_bowls", here, {{"zone", b.zones[j]}}});
    }
    if (auto made = chemistry(b.formula, visit.shelf); !made)
      for (Problem p : made.error()) {
        p.path = path + "/formula" + p.path;
        problems.push_back(std::move(p));
      }
  }
}

}  // namespace

Problems check(const Visit& visit) {
  Problems problems = check(visit.head);
  const Problems shelf = check(visit.shelf);
  problems.insert(problems.end(), shelf.begin(), shelf.end());
  if (problems.empty() && !visit.aims.empty())
    if (const auto targets = aim(visit.head, visit.aims, visit.shelf); !targets)
      problems.insert(problems.end(), targets.error().begin(), targets.error().end());
  check_bowls(visit, problems);
  const Problems rules = check(visit.policy.rules);
  problems.insert(problems.end(), rules.begin(), rules.end());
  return problems;
}

}  // namespace strandline
