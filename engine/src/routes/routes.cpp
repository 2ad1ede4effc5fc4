#include <algorithm>
#include <cmath>
#include <map>

#include "formulate/from.h"
#include "formulate/planned.h"
#include "formulate/reasons.h"
#include "mix/on_hair.h"
#include "routes/check_table.h"
#include "routes/opening_step.h"
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

// Where the last step of a visit begins: the hair, the steps before, and the next free label.
struct Begun {
  Situation now;
  std::vector<RouteStep> before;
  char label = 'A';
};

std::vector<PlannedBowl> bowls_of(const std::vector<RouteStep>& steps) {
  std::vector<PlannedBowl> all;
  for (const RouteStep& s : steps) all.insert(all.end(), s.bowls.begin(), s.bowls.end());
  return all;
}

Result<VisitDone> last_step(const RouteTask& task, Begun begun) {
  const Shelf left = left_after(task.shelf, bowls_of(begun.before));
  auto last = formulate_from({begun.now, task.head, begun.label, false}, task.targets, left, task.policy, task.options);
  if (!last) return tl::unexpected(last.error());
  VisitDone done;
  done.objective = last->report.objective;
  for (const RouteStep& s : begun.before) done.objective += price(task, s, last->zones);
  done.reachable = std::all_of(last->zones.begin(), last->zones.end(), [](const ZonePlan& z) { return z.reachable; });
  RouteStep second;
  RouteStep& first = begun.before.back();
  second.kind = first.kind == code(Opening::lighten) ? "tone" : "colour";
  done.coloured = last->bowls;
  second.bowls = std::move(last->bowls);
  for (PlannedBowl& b : second.bowls) b.bowl.step = static_cast<int>(begun.before.size()) + 1;
  if (begun.before.size() == 1) move_beside_packets(task.head, first, second);
  if (first.check_after) second.if_check_shows = check_tables(task, begun.now, first, second.bowls);
  done.visit.steps = std::move(begun.before);
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

// With the next step of a visit done; none where there is no place or no product for it.
std::optional<Begun> opened(const RouteTask& task, Begun begun, const Openings& openings) {
  const Shelf left = left_after(task.shelf, bowls_of(begun.before));
  const RouteTask here{task.head, task.targets, left, task.policy, task.options, task.domain};
  auto step = opening_step(here, begun.now, openings, begun.label);
  if (!step) return std::nullopt;
  for (PlannedBowl& b : step->bowls) b.bowl.step = static_cast<int>(begun.before.size()) + 1;
  begun.before.push_back(std::move(*step));
  return begun;
}

// From where the first visit begins; no openings: what is there is coloured.
Result<std::optional<Route>> route(const RouteTask& task, const Begun& start, const Openings& openings,
                                   const Plan& direct) {
  Route r;
  r.kind = start.before.empty() ? kind_of(openings) : start.before.front().kind;
  r.standard = !start.before.empty() ||
               std::any_of(openings.begin(), openings.end(), [](const auto& o) { return required(o.second); });
  const bool lightens =
      std::any_of(openings.begin(), openings.end(), [](const auto& o) { return o.second == Opening::lighten; });
  Begun now = start;
  double before = off(task, direct.zones);
  for (int visit = 0; visit < task.policy.visits_most && !task.options.cancelled(); ++visit) {
    auto next = openings.empty() ? std::optional(now) : opened(task, now, openings);
    if (!next) break;
    auto done = last_step(task, *next);
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
      if (auto then = after(next->now, step_of(b), task.shelf)) next->now = std::move(*then);
    if (task.options.rules) next->now.head = task.options.rules(std::move(next->now.head));
    r.visits.push_back(std::move(done->visit));
    now = {std::move(next->now), {}, 'A'};
    if (r.reachable || !lightens) break;
  }
  if (r.visits.empty() || (!r.standard && r.objective >= direct.report.objective)) return std::nullopt;
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
    if (plan == direct.zones.end() || !plan->reachable || required(opening)) all[z.draws->id] = opening;
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
  Begun start{at_start(head, options.scenarios), {}, 'A'};
  std::optional<Domain> every;
  std::vector<Found> found;
  const auto task = [&]() -> RouteTask {
    if (!every) every = domain(shelf, policy);
    return {head, targets, shelf, policy, options, *every};
  };
  const auto add = [&](const Openings& openings, const Plan& before) -> Result<bool> {
    if ((openings.empty() && start.before.empty()) || options.cancelled()) return false;
    auto one = route(task(), start, openings, before);
    if (!one) return tl::unexpected(one.error());
    // One whose searches were stopped is not compared.
    if (*one && !options.cancelled()) found.push_back({openings, std::move(**one)});
    return true;
  };
  // Minerals come off whatever else is done; every other way begins with clean hair.
  std::optional<Plan> clean;
  const Openings minerals = places_for(Opening::chelate, search_zones(start.now, targets, policy), direct);
  if (!minerals.empty() && !options.cancelled())
    if (auto after_it = opened(task(), start, minerals)) {
      start = std::move(*after_it);
      const Shelf left = left_after(shelf, bowls_of(start.before));
      auto plan = formulate_from({start.now, head, start.label, false}, targets, left, policy, options);
      if (!plan) return tl::unexpected(plan.error());
      clean = std::move(*plan);
      if (auto added = add({}, direct); !added) return tl::unexpected(added.error());
    }
  const Plan& base = clean ? *clean : direct;
  const std::vector<SearchZone> zones = search_zones(start.now, targets, policy);
  for (Opening opening : kOpenings)
    if (const Openings places = places_for(opening, zones, base); !places.empty() && opening != Opening::chelate)
      if (auto added = add(places, base); !added) return tl::unexpected(added.error());
  if (const Openings mixed = side_by_side(found, base); !mixed.empty())
    if (auto added = add(mixed, base); !added) return tl::unexpected(added.error());
  // What the trade always does, as much of it as has a place here, stands before what only comes nearer.
  const auto rank = [&](const Found& f) {
    const bool also =
        std::any_of(f.openings.begin(), f.openings.end(), [](const auto& o) { return required(o.second); });
    return std::pair(also ? 0 : 1, f.route.objective);
  };
  std::stable_sort(found.begin(), found.end(), [&](const Found& a, const Found& b) { return rank(a) < rank(b); });
  std::vector<Route> all;
  for (Found& f : found) all.push_back(std::move(f.route));
  if (!all.empty()) all.front().recommended = all.front().standard || all.front().objective < direct.report.objective;
  return all;
}

}  // namespace strandline
