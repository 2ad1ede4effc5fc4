#include <algorithm>
#include <cmath>
#include <map>

#include "formulate/check_table.h"
#include "formulate/from.h"
#include "formulate/on_hair.h"
#include "formulate/opening_step.h"
#include "formulate/planned.h"
#include "formulate/reasons.h"
#include "strandline/growth.h"
#include "strandline/route.h"

namespace strandline {
namespace {

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
  std::vector<PlannedBowl> coloured;  // bowls of its last search, whatever step they went into
  double objective = 0;               // of the result, with the prices of this visit's steps
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
  done.coloured = last->bowls;
  second.bowls = std::move(last->bowls);
  for (PlannedBowl& b : second.bowls) b.bowl.step = 2;
  move_beside_packets(task.head, first, second);
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

std::string kind_of(const Openings& openings) {
  const Opening first = openings.begin()->second;
  const bool one = std::all_of(openings.begin(), openings.end(), [&](const auto& o) { return o.second == first; });
  return std::string(one ? code(first) : kSeveral);
}

Result<std::optional<Route>> route(const RouteTask& task, const Situation& start, const Openings& openings,
                                   const Plan& direct) {
  Route r;
  r.kind = kind_of(openings);
  const bool lightens =
      std::any_of(openings.begin(), openings.end(), [](const auto& o) { return o.second == Opening::lighten; });
  Situation now = start;
  double before = off(task, direct.zones);
  for (int visit = 0; visit < task.policy.visits_most && !task.options.cancelled(); ++visit) {
    char label = 'A';
    Situation next = now;
    auto first = opening_step(task, next, openings, label);
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
    for (const PlannedBowl& b : done->coloured)
      if (auto then = after(next, step_of(b), task.shelf)) next = std::move(*then);
    r.visits.push_back(std::move(done->visit));
    now = std::move(next);
    if (r.reachable || !lightens) break;
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

// The zones that this opening has a place on, and that their own bowl at once does not bring to their wish.
Openings places_for(Opening opening, const std::vector<SearchZone>& zones, const Plan& direct) {
  Openings all;
  for (const SearchZone& z : zones) {
    if (!has_a_place(opening, z)) continue;
    const auto plan = std::find_if(direct.zones.begin(), direct.zones.end(),
                                   [&](const ZonePlan& p) { return p.result.zone == z.draws->id; });
    // Minerals come off whatever else would do.
    if (plan == direct.zones.end() || !plan->reachable || opening == Opening::chelate) all[z.draws->id] = opening;
  }
  return all;
}

double loss_of(const std::vector<ZonePlan>& zones, const std::string& id) {
  for (const ZonePlan& z : zones)
    if (z.result.zone == id && z.result.landing) return z.result.landing->expected_loss;
  return 0;
}

struct Found {
  Openings openings;
  Route route;
};

// Of the ways found with one opening each, the one that served each zone best; empty where one serves all.
Openings side_by_side(const std::vector<Found>& found, const Plan& direct) {
  Openings all;
  std::map<std::string, double> least;
  for (const auto& [openings, way] : found)
    for (const PlannedBowl& b : way.visits.front().steps.front().bowls)
      for (const std::string& zone : b.bowl.zones) {
        const auto opening = openings.find(zone);
        if (opening == openings.end()) continue;
        const double now = loss_of(way.visits.back().zones, zone);
        const auto best = least.find(zone);
        if (now >= (best == least.end() ? loss_of(direct.zones, zone) : best->second)) continue;
        least[zone] = now;
        all[zone] = opening->second;
      }
  if (!all.empty() && kind_of(all) != kSeveral) all.clear();
  return all;
}

}  // namespace

Result<std::vector<Route>> routes(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                                  const FormulaPolicy& policy, const Plan& direct, const FormulateOptions& options) {
  const Situation start = at_start(head, options.scenarios);
  const std::vector<SearchZone> zones = search_zones(start, targets, policy);
  std::optional<Domain> every;
  std::vector<Found> found;
  const auto add = [&](const Openings& openings) -> Result<bool> {
    if (openings.empty() || options.cancelled()) return false;
    if (!every) every = domain(shelf, policy);
    auto one = route({head, targets, shelf, policy, options, *every}, start, openings, direct);
    if (!one) return tl::unexpected(one.error());
    // One whose searches were stopped is not compared.
    if (*one && !options.cancelled()) found.push_back({openings, std::move(**one)});
    return true;
  };
  for (Opening opening : kOpenings)
    if (auto added = add(places_for(opening, zones, direct)); !added) return tl::unexpected(added.error());
  if (auto added = add(side_by_side(found, direct)); !added) return tl::unexpected(added.error());
  std::vector<Route> all;
  for (Found& f : found) all.push_back(std::move(f.route));
  std::stable_sort(all.begin(), all.end(), [](const Route& a, const Route& b) { return a.objective < b.objective; });
  if (!all.empty()) all.front().recommended = all.front().objective < direct.report.objective;
  return all;
}

}  // namespace strandline
