#include <algorithm>
#include <cmath>
#include <set>

#include "formulate/check_table.h"
#include "formulate/first_steps.h"
#include "formulate/from.h"
#include "formulate/habits.h"
#include "formulate/pour.h"
#include "formulate/reasons.h"
#include "strandline/route.h"

namespace strandline {
namespace {

constexpr double kShortBy = 0.5;        // levels: half a level is on (common practice)
constexpr double kLeftForColour = 0.1;  // porosity steps that the last step may still take (prior)
constexpr size_t kGentlest = 6;         // ways that reach, judged by what can follow
constexpr double kLeastGain = 0.3;      // levels that a further visit must bring (prior)

struct Task {
  const Head& head;
  const std::vector<Target>& targets;
  const Shelf& shelf;
  const FormulaPolicy& policy;
  const FormulateOptions& options;
  const Domain& domain;
};

std::vector<std::string> ids(const std::vector<const SearchZone*>& zones) {
  std::vector<std::string> all;
  for (const SearchZone* z : zones) all.push_back(z->draws->id);
  return all;
}

bool among(const std::vector<std::string>& all, const std::string& id) {
  return std::find(all.begin(), all.end(), id) != all.end();
}

double total_weight(const std::vector<SearchZone>& zones) {
  double sum = 0;
  for (const SearchZone& z : zones) sum += z.weight;
  return sum > 0 ? sum : 1;
}

// What one way leaves behind on the zones it touches.
struct Tried {
  FirstStep step;
  Formula formula;
  double furthest_short = 0;  // levels that the darkest pigmented fibres stay below their wish
  double objective = 0;       // of the zones touched, by the rough judgement below
};

// What the touched zones cost at best, each by itself, by bowls of one or two shades in every second scenario: enough
// to rank first steps. The steps that are told are searched in full.
double roughly(const Task& task, const Situation& whole, const std::vector<std::string>& touched) {
  constexpr size_t kEvery = 2;
  std::vector<size_t> some;
  for (size_t s = 0; s < whole.draws.constants.size(); s += kEvery) some.push_back(s);
  const Situation now = with_scenarios(whole, some);
  const std::vector<SearchZone> zones = search_zones(now, task.targets, task.policy);
  const double total = total_weight(zones);
  std::vector<double> best(zones.size(), 0);
  task.options.parallel(static_cast<int>(zones.size()), [&](int begin, int end) {
    std::vector<float> loads;
    for (int i = begin; i < end; ++i) {
      const SearchZone& zone = zones[static_cast<size_t>(i)];
      if (!among(touched, zone.draws->id)) continue;
      double least = zone.leave_loss;
      for (const Domain::OneSetting& one : task.domain.settings) {
        if (!forbidden(one.setting, *zone.span, task.policy).empty() || out_of_place(one.setting, zone)) continue;
        const RecipeSet& set = task.domain.sets[static_cast<size_t>(one.set)];
        const ZoneTable table = zone_table(*zone.draws, bare_chemistry(one.setting), now.draws);
        const std::vector<Shares> few = set.few();
        const int count = static_cast<int>(few.size());
        loads.resize(few.size() * kBands);
        for (size_t r = 0; r < few.size(); ++r) {
          const Spectrum load = set.load(few[r], one.setting.ratio);
          std::copy(load.begin(), load.end(), loads.begin() + static_cast<long>(r * kBands));
        }
        std::vector<float> losses(static_cast<size_t>(count));
        mean_losses(table, zone.price, loads.data(), count, losses.data());
        const double setting = setting_price(one.setting, zone, table.exposure);
        for (size_t r = 0; r < few.size(); ++r)
          least = std::min(least, static_cast<double>(losses[r]) + setting + mixing_price(set, few[r]) +
                                      natural_share_price(zone, set.natural_share(few[r]), one.setting.range->cls));
      }
      best[static_cast<size_t>(i)] = zone.weight / total * least;
    }
  });
  double sum = 0;
  for (double b : best) sum += b;
  return sum;
}

// Every way whose hair stays within its condition, with how far it falls short.
std::vector<Tried> try_ways(const Task& task, const Situation& now, Opening opening,
                            const std::vector<const SearchZone*>& zones) {
  std::vector<Tried> all;
  const std::vector<std::string> names = ids(zones);
  const double grams = mix_grams(task.head, names, task.policy);
  for (const FirstStep& step : ways(opening, task.shelf, task.policy)) {
    if (task.options.cancelled()) break;
    if (std::any_of(zones.begin(), zones.end(),
                    [&](const SearchZone* z) { return !forbidden(step, *z->span, task.policy).empty(); }))
      continue;
    Tried t{step, pour(step, grams, task.shelf, task.policy)};
    const auto then = after(now, {t.formula, names}, task.shelf);
    if (!then) continue;
    bool spent = false;
    for (const SearchZone& z : search_zones(*then, task.targets, task.policy)) {
      if (!among(names, z.draws->id)) continue;
      spent = spent || z.span->porosity.value > task.policy.porosity_max - kLeftForColour;
      t.furthest_short = std::max(t.furthest_short, z.asked);
    }
    if (!spent) all.push_back(std::move(t));
  }
  return all;
}

// Of the ways that bring every zone to its level the gentlest few, each judged by what can follow; where none does, the
// one that comes nearest. None where it would not bring more than it costs.
std::optional<Tried> best_way(const Task& task, const Situation& now, Opening opening,
                              const std::vector<const SearchZone*>& zones) {
  std::vector<Tried> all = try_ways(task, now, opening, zones);
  if (all.empty()) return std::nullopt;
  if (opening == Opening::lighten || opening == Opening::remove) {
    const auto nearest = std::min_element(
        all.begin(), all.end(), [](const Tried& a, const Tried& b) { return a.furthest_short < b.furthest_short; });
    if (nearest->furthest_short > kShortBy)
      all = {*nearest};
    else
      std::erase_if(all, [](const Tried& t) { return t.furthest_short > kShortBy; });
    if (all.size() > kGentlest) all.resize(kGentlest);
  }
  const std::vector<std::string> names = ids(zones);
  const double weakest = all.front().step.developer_percent;
  for (Tried& t : all) {
    const auto then = after(now, {t.formula, names}, task.shelf);
    if (!then) return std::nullopt;
    // No stronger than it needs to be, as for any bowl.
    t.objective =
        roughly(task, *then, names) + Constants{}.price_strength_per_percent * (t.step.developer_percent - weakest);
  }
  const Tried best = *std::min_element(all.begin(), all.end(),
                                       [](const Tried& a, const Tried& b) { return a.objective < b.objective; });
  if (best.objective + Constants{}.price_step >= roughly(task, now, names)) return std::nullopt;
  return best;
}

PlannedBowl first_bowl(const Task& task, const Tried& way, Opening opening, const std::vector<std::string>& zones,
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
  b.why.push_back({"route_" + std::string(code(opening)),
                   "",
                   {{"percent", figure(way.step.developer_percent)}, {"minutes", figure(way.step.minutes, 0)}}});
  return b;
}

// Zones of one span kind share the first step.
std::optional<RouteStep> first_step(const Task& task, Situation& now, Opening opening,
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
    const auto way = best_way(task, now, opening, zones);
    if (!way) continue;
    step.bowls.push_back(first_bowl(task, *way, opening, ids(zones), label++));
  }
  if (step.bowls.empty()) return std::nullopt;
  for (const PlannedBowl& b : step.bowls)
    if (auto then = after(now, {b.bowl.formula, b.bowl.zones}, task.shelf)) now = std::move(*then);
  return step;
}

double price(const Task& task, const RouteStep& step, const std::vector<ZonePlan>& zones) {
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
Result<VisitDone> last_step(const Task& task, const Situation& now, RouteStep first, char label) {
  auto last = formulate_from({now, task.head, label, false}, task.targets, task.shelf, task.policy, task.options);
  if (!last) return tl::unexpected(last.error());
  VisitDone done;
  done.objective = last->report.objective + price(task, first, last->zones);
  done.reachable = std::all_of(last->zones.begin(), last->zones.end(), [](const ZonePlan& z) { return z.reachable; });
  RouteStep second;
  second.kind = first.kind == code(Opening::lighten) ? "tone" : "colour";
  second.bowls = std::move(last->bowls);
  if (first.check_after)
    second.if_check_shows = check_tables({task.head, task.targets, task.shelf, task.policy, task.options, task.domain},
                                         now, first, second.bowls);
  done.visit.steps.push_back(std::move(first));
  if (!second.bowls.empty()) done.visit.steps.push_back(std::move(second));
  done.visit.zones = std::move(last->zones);
  return done;
}

// How far the wishes are off after a visit, in levels, weighted.
double off(const Task& task, const std::vector<ZonePlan>& zones) {
  double sum = 0;
  for (const ZonePlan& z : zones)
    for (const Target& t : task.targets)
      if (t.zone == z.result.zone && !t.leave && z.result.landing)
        sum += t.weight * std::abs(z.result.landing->level_error);
  return sum;
}

Result<std::optional<Route>> route(const Task& task, const Situation& start, Opening opening,
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
    if (visit > 0 && before - left < kLeastGain) break;
    before = left;
    done->visit.weeks_after_last = visit == 0 ? 0 : task.policy.weeks_between_visits;
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
      if (plan == direct.zones.end() || !plan->reachable) wanted.insert(z.draws->id);
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
