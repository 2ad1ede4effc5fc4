#include "evidence/learned_salon.h"

#include <algorithm>
#include <cmath>

#include "evidence/told.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

double median(std::vector<double> v) {
  if (v.empty()) return 0;
  const auto middle = v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2);
  std::nth_element(v.begin(), middle, v.end());
  return *middle;
}

}  // namespace

learned::Outcome outcome_of(const truth::Record& r) {
  learned::Outcome o;
  o.who = {"person" + std::to_string(r.person), "colourist" + std::to_string(r.colourist)};
  o.head = head_of(r.known);
  const std::string range = "range" + std::to_string(r.range);
  for (const truth::Bowl& bowl : r.known.bowls) {
    Kit kit = kit_of(bowl);
    kit.shelf.ranges[0].id = kit.formula.range = range;
    for (Product& p : kit.shelf.products)
      if (!p.range.empty()) p.range = range;
    o.steps.push_back({kit.formula, {"area/span"}});
    o.shelf = std::move(kit.shelf);
  }
  o.zones = {{"area/span", r.judged, r.measured}};
  return o;
}

LearnedSalon learned_salon(SalonWorld world, const truth::SalonPlan& plan) {
  LearnedSalon out;
  std::vector<std::vector<double>> errors(plan.visits), untaught(plan.visits);
  std::vector<int> within(plan.visits);
  int worse = 0, right = 0, wrong = 0, set_aside = 0, wrong_learned = 0;
  for (const truth::Record& r : simulate_salon(world, plan)) {
    const auto said = out.model.take(outcome_of(r));
    if (!said || said->empty()) continue;
    const learned::Said& s = said->front();
    const double truth = level_of_lightness(r.after.l);
    const double error = std::abs(s.expected - truth), before = std::abs(s.untaught - truth);
    errors[r.visit].push_back(error), untaught[r.visit].push_back(before);
    within[r.visit] += truth >= s.low && truth <= s.high;
    if (r.visit == plan.visits - 1) worse += error > before + 0.5;
    (r.wrong ? wrong : right)++;
    set_aside += !r.wrong && s.set_aside, wrong_learned += r.wrong && !s.set_aside;
  }
  for (int v = 0; v < plan.visits; ++v)
    out.visits.push_back({median(errors[v]), median(untaught[v]),
                          static_cast<double>(within[v]) / static_cast<double>(std::max<size_t>(1, errors[v].size()))});
  out.worse = static_cast<double>(worse) / plan.people;
  out.set_aside = static_cast<double>(set_aside) / std::max(1, right);
  out.wrong_learned = static_cast<double>(wrong_learned) / std::max(1, wrong);
  return out;
}

}  // namespace strandline
