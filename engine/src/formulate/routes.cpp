#include <algorithm>
#include <cmath>
#include <set>

#include "formulate/best_way.h"
#include "formulate/check_table.h"
#include "formulate/from.h"
#include "formulate/habits.h"
#include "formulate/planned.h"
#include "formulate/pour.h"
#include "formulate/reasons.h"
#include "strandline/growth.h"
#include "strandline/route.h"

namespace strandline {
namespace {

PlannedBowl first_bowl(const RouteTask& task, const Tried& way, Opening opening, const std::vector<std::string>& zones,
                       char label) {
  PlannedBowl b;
  b.bowl = {std::string(1, label), way.formula, zones};
  b.recipe = {way.step.range->id, {}, way.step.developer_percent, way.step.ratio, way.step.minutes};
  const int each = kEighths / static_cast<int>(way.step.products.size());
  for (const Product* p : way.step.products) b.recipe.shares.push_back({p->id, each});
  b.grams = grams(way.formula);
  b.cost = cost(way.formula, task.shelf);
  if (const auto real = chemistry(way.formula, task.shelf)) b.on_head_peroxide_percent = real->peroxide_percent;
  if (auto limits = law::check_limits(composition(way.formula, task.shelf), use_of(way.step.range->cls)))
    b.limits = *limits;
  // "Up to", from the first touch, where looking decides; else from the last.
  const double minutes = opening == Opening::lighten ? way.step.range->minutes.max : way.step.minutes;
  b.why.push_back({"route_" + std::string(code(opening)),
                   "",
                   {{"percent", figure(way.step.developer_percent)}, {"minutes", figure(minutes, 0)}}});
  return b;
}

// Zones of one span kind share the first step; the second kind finds what the first left on the shelf.
std::optional<RouteStep> first_step(const RouteTask& task, Situation& now, Opening opening,
                                    const std::set<std::string>& wanted, char& label) {
  RouteStep step;
  step.kind = code(opening);
  step.check_after = opening == Opening::lighten || opening == Opening::remove;
  for (const bool scalp : {true, false}) {
    const std::vector<SearchZone> all = search_zones(now, task.targets, task.policy);
    std::vector<const SearchZone*> zones;
    for (const SearchZone& z : all)
      if (touches_scalp(*z.span) == scalp && wanted.contains(z.draws->id) && has_a_place(opening, z))
        zones.push_back(&z);
    if (zones.empty()) continue;
    const Shelf left = left_after(task.shelf, step.bowls);
    const auto way =
        best_way({task.head, task.targets, left, task.policy, task.options, task.domain}, now, opening, zones);
    if (!way) continue;
    step.bowls.push_back(first_bowl(task, *way, opening, ids(zones), label++));
  }
  if (step.bowls.empty()) return std::nullopt;
  for (const PlannedBowl& b : step.bowls)
    if (auto then = after(now, {b.bowl.formula, b.bowl.zones}, task.shelf)) now = std::move(*then);
  return step;
}

double price(const RouteTask& task, const RouteStep& step, const std::vector<ZonePlan>& zones) {
  const Constants c;
  double sum = c.price_step, exposure = 0;
  for (const PlannedBowl& b : step.bowls) {
    sum += c.price_bowl + c.price_money * b.cost;
    for (const ZonePlan& z : zones)
      if (among(b.bowl.zones, z.result.zone))
        for (const Target& t : task.targets)
          if (t.zone == z.result.zone) exposure += t.weight * z.result.exposure;
  }
  double total = 0;
  for (const Target& t : task.targets)
    if (!t.leave) total += t.weight;
  return sum + c.price_exposure * exposure / std::max(total, 1e-9);
}

struct VisitDone {
  RouteVisit visit;
  double objective = 0;  // of the result, with the prices of this visit's steps
  bool reachable = false;
};

// The last step of a visit, from where the first left the hair.
Result<VisitDone> last_step(const RouteTask& task, const Situation& now, RouteStep first, char label) {
  const Shelf left = left_after(task.shelf, first.bowls);
  auto last = formulate_from({now, task.head, label, false}, task.targets, left, task.policy, task.options);
  if (!last) return tl::unexpected(last.error());
  VisitDone done;
  done.objective = last->report.objective + price(task, first, last->zones);
  done.reachable = std::all_of(last->zones.begin(), last->zones.end(), [](const ZonePlan& z) { return z.reachable; });
  RouteStep second;
  second.kind = first.kind == code(Opening::lighten) ? "tone" : "colour";
  second.bowls = std::move(last->bowls);
  for (PlannedBowl& b : second.bowls) b.bowl.step = 2;
  if (first.check_after) second.if_check_shows = check_tables(task, now, first, second.bowls);
  done.visit.steps.push_back(std::move(first));
  if (!second.bowls.empty()) done.visit.steps.push_back(std::move(second));
  done.visit.zones = std::move(last->zones);
  return done;
}

// How far the wishes are off after a visit, in levels, weighted.
double off(const RouteTask& task, const std::vector<ZonePlan>& zones) {
  double sum = 0;
  for (const ZonePlan& z : zones)
    for (const Target& t : task.targets)
      if (t.zone == z.result.zone && !t.leave && z.result.landing)
        sum += t.weight * std::abs(z.result.landing->level_error);
  return sum;
}

Result<std::optional<Route>> route(const RouteTask& task, const Situation& start, Opening opening,
                                   const std::set<std::string>& wanted, const Plan& direct) {
  Route r;
  r.kind = code(opening);
  Situation now = start;
  double before = off(task, direct.zones);
  for (int visit = 0; visit < task.policy.visits_most && !task.options.cancelled(); ++visit) {
    char label = 'A';
    Situation next = now;
    auto first = first_step(task, next, opening, wanted, label);
    if (!first) break;
    auto done = last_step(task, next, std::move(*first), label);
    if (!done) return tl::unexpected(done.error());
    const double left = off(task, done->visit.zones);
    if (visit > 0 && before - left < Constants{}.visit_least_gain) break;
    before = left;
    if (visit > 0) {
      // "Today" of a later visit is what the one before left.
      const std::vector<ZonePlan>& last = r.visits.back().zones;
      for (size_t z = 0; z < last.size(); ++z) done->visit.zones[z].result.today = last[z].result.planned;
      done->visit.weeks_after_last = task.policy.weeks_between_visits;
      done->visit.regrowth_cm = regrowth_cm(task.policy.weeks_between_visits);
    }
    r.objective = done->objective + visit * Constants{}.price_visit;
    if (visit == 0) r.after_first_visit = r.objective;
    r.reachable = done->reachable;
    for (const RouteStep& step : done->visit.steps)
      for (const PlannedBowl& b : step.bowls) r.grams += b.grams, r.cost += b.cost;
    if (done->visit.steps.size() > 1)
      for (const PlannedBowl& b : done->visit.steps.back().bowls)
        if (auto then = after(next, {b.bowl.formula, b.bowl.zones}, task.shelf)) next = std::move(*then);
    r.visits.push_back(std::move(done->visit));
    now = std::move(next);
    if (r.reachable || opening != Opening::lighten) break;
  }
  if (r.visits.empty() || r.objective >= direct.report.objective) return std::nullopt;
  if (r.visits.size() > 1)
    r.why.push_back(
        {"route_needs_visits",
         "",
         {{"visits", std::to_string(r.visits.size())}, {"weeks", figure(task.policy.weeks_between_visits, 0)}}});
  if (!r.reachable) r.why.push_back({"route_stays_short", "", {}});
  r.notes.push_back({"route_strand_first", "", {}});
  return r;
}

}  // namespace

Result<std::vector<Route>> routes(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                                  const FormulaPolicy& policy, const Plan& direct, const FormulateOptions& options) {
  const Situation start = at_start(head, options.scenarios);
  const std::vector<SearchZone> zones = search_zones(start, targets, policy);
  std::optional<Domain> all;
  std::vector<Route> found;
  for (Opening opening : kOpenings) {
    std::set<std::string> wanted;
    for (const SearchZone& z : zones) {
      if (!has_a_place(opening, z)) continue;
      const auto plan = std::find_if(direct.zones.begin(), direct.zones.end(),
                                     [&](const ZonePlan& p) { return p.result.zone == z.draws->id; });
      // Minerals come off whatever else would do.
      if (plan == direct.zones.end() || !plan->reachable || opening == Opening::chelate) wanted.insert(z.draws->id);
    }
    if (wanted.empty() || options.cancelled()) continue;
    if (!all) all = domain(shelf, policy);
    auto one = route({head, targets, shelf, policy, options, *all}, start, opening, wanted, direct);
    if (!one) return tl::unexpected(one.error());
    if (*one) found.push_back(std::move(**one));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Route& a, const Route& b) { return a.objective < b.objective; });
  if (!found.empty()) found.front().recommended = found.front().objective < direct.report.objective;
  return found;
}

}  // namespace strandline
