#include "strandline/formulate.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <set>
#include <string_view>

#include "formulate/alternatives.h"
#include "formulate/bands.h"
#include "formulate/evenness.h"
#include "formulate/from.h"
#include "formulate/later_on_lengths.h"
#include "formulate/one_bowl.h"
#include "formulate/planned.h"
#include "formulate/reasons.h"
#include "formulate/refine.h"
#include "formulate/share_out.h"
#include "formulate/turns.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/within.h"

namespace strandline {
namespace {

constexpr std::string_view kShared = "shared_for_stock";

void tell(Plan& plan) {
  for (const PlannedBowl& b : plan.bowls) {
    plan.grams += b.grams;
    plan.cost += b.cost;
    if (b.limits.overall == law::Status::unknown_percentage)
      plan.notes.push_back({"percentages_unknown", "", {{"bowl", b.bowl.label}}});
  }
}

// No cover of the head costs less, however its zones share bowls: each pays at least what it costs at best by itself.
double least_apart(BowlSearch& search, const std::vector<SearchZone>& zones, double total) {
  double sum = 0;
  for (size_t z = 0; z < zones.size(); ++z) {
    Wish alone{{static_cast<int>(z)}};
    alone.keep = 1;
    sum += std::min(zones[z].weight / total * zones[z].leave_loss, search.find(alone).bound);
  }
  return sum;
}

// Bowls that were to be kept apart and came out the same are mixed once. The objective stays that of bowls kept apart,
// as the bound is; no other formula is told as nearer, since none was certified for them together.
void mix_once(const ChoiceInput& in, Choice& choice) {
  for (size_t a = 0; a < choice.bowls.size(); ++a)
    for (size_t b = choice.bowls.size(); b-- > a + 1;) {
      const Chosen &one = choice.bowls[a], &other = choice.bowls[b];
      if (!same_recipe(one.best, other.best)) continue;
      Chosen both;
      both.zones = one.zones;
      both.zones.insert(both.zones.end(), other.zones.begin(), other.zones.end());
      std::sort(both.zones.begin(), both.zones.end());
      std::vector<Candidate> known = one.list;
      for (const Candidate& c : other.list)
        if (std::none_of(known.begin(), known.end(), [&](const Candidate& seen) { return same_recipe(c, seen); }))
          known.push_back(c);
      both.list = exact_list(in, std::move(known), both.zones);
      const auto same = std::find_if(both.list.begin(), both.list.end(),
                                     [&](const Candidate& c) { return same_recipe(c, one.best); });
      if (same == both.list.end()) continue;  // the tubes do not hold so much at once
      std::rotate(both.list.begin(), same, same + 1);
      both.best = both.certified = both.list.front();
      both.certified.objective -= one.gap() + other.gap();  // what plainness cost stays what it was
      both.joined = true;
      both.others = other_formulas(in, both.list, both.best);
      choice.bowls[a] = std::move(both);
      choice.bowls.erase(choice.bowls.begin() + static_cast<std::ptrdiff_t>(b));
    }
}

// The chosen zones of each bowl with the best recipe of the same range for minutes that are given; none where the rules
// leave nothing open for so long.
std::optional<Choice> in_given_minutes(const ChoiceInput& in, BowlSearch& search, const Choice& free) {
  Choice choice;
  choice.objective = free.objective;
  choice.bound = free.bound;
  for (const Chosen& bowl : free.bowls) {
    Wish wish = bowl_wish(in, bowl.zones);
    wish.keep = kBestKept;
    wish.allowed.set = bowl.best.set;
    std::vector<Candidate> all = search.best(wish);
    const auto open = [&](const Candidate& c) {
      const Setting& s = in.domain.settings[static_cast<size_t>(c.setting)].setting;
      return std::all_of(bowl.zones.begin(), bowl.zones.end(), [&](int z) {
        const auto given = in.minutes.find(z);
        return given == in.minutes.end() || within_rules(s, given->second, in.zones[static_cast<size_t>(z)]);
      });
    };
    for (const Candidate& c : bowl.list)
      if (c.set == bowl.best.set && open(c) &&
          std::none_of(all.begin(), all.end(), [&](const Candidate& seen) { return same_recipe(c, seen); }))
        all.push_back(c);
    if (all.empty()) return std::nullopt;
    choice.bowls.push_back(plain_bowl(in, wish, exact_list(in, std::move(all), bowl.zones)));
    choice.objective += choice.bowls.back().best.objective - bowl.best.objective;
  }
  return choice;
}

// M20: the search lets every zone leave by itself, which is a bound for every clock. What the clock makes of the times
// found, of the usual ones and of the shortest is searched again in the clock's own minutes; the best of that is taken.
// `in` then holds the minutes.
void keep_the_clock(ChoiceInput& in, BowlSearch& search, Choice& choice, const Clock& clock) {
  constexpr double kMet = 1e-6;
  const Choice free = choice;
  std::map<int, double> best;
  for (const int which : {0, 1, 2}) {
    if (in.cancelled()) break;
    std::vector<PlannedBowl> bowls = planned_bowls(in, free);
    for (size_t b = 0; which > 0 && b < bowls.size(); ++b) {
      const MinuteWindow& own = find_range(in.shelf, bowls[b].bowl.formula.range)->minutes;
      bowls[b].on = on_alike(in.head, bowls[b].bowl, which == 1 ? own.target : own.min);
    }
    const auto timed = clock(std::move(bowls));
    if (!timed) continue;
    ChoiceInput given = in;
    for (size_t z = 0; z < in.zones.size(); ++z)
      for (const PlannedBowl& b : *timed)
        if (const auto own = on(b, in.zones[z].draws->id)) given.minutes[static_cast<int>(z)] = own->minutes;
    auto now = in_given_minutes(given, search, free);
    if (!now || (!best.empty() && now->objective >= choice.objective)) continue;
    choice = std::move(*now);
    best = given.minutes;
    if (choice.objective <= free.objective + kMet) break;
  }
  in.minutes = best;
  choice.bound = std::min(choice.bound,
                          choice.objective - choice.plain_gap());  // minutes between those of the range may cost less
}

Result<Plan> formulate_once(const From& from, const std::vector<Target>& targets, const Shelf& shelf,
                            const FormulaPolicy& policy, const FormulateOptions& options) {
  const Domain all = domain(shelf, policy);
  const Draws& draws = from.now.draws;
  std::vector<SearchZone> zones = search_zones(from.now, targets, policy);
  std::erase_if(zones, [](const SearchZone& z) { return fits(*z.span, *z.target); });
  double total = 0;
  for (const SearchZone& z : zones) total += z.weight;
  if (!(total > 0)) total = 1;

  BowlSearch search(all, zones, draws, total, policy, options);
  ChoiceInput in{
      from.head,
      shelf,
      policy,
      all,
      zones,
      draws,
      total,
      [&](int setting, int zone, double minutes) -> const ZoneTable& { return search.table(setting, zone, minutes); },
      from.now.done,
      from.first_label,
      {},
      options.cancelled,
      [&](const Wish& wish, const BowlSearch::Judged& judge) { return search.plainest(wish, judge); }};
  const std::vector<ZoneGroup> groups = group_zones(zones);
  Chooser chooser(in, groups, [&](const Wish& wish) { return search.find(wish); });
  Plan plan;
  Choice choice = chooser.choose(policy.bowls_max);
  mix_once(in, choice);
  share_bowls(in, choice);
  if (from.clock && !choice.bowls.empty() && !search.counts().cancelled) keep_the_clock(in, search, choice, from.clock);
  even_out(in, choice);
  for (const std::string& id : share_out(in, choice))
    plan.notes.push_back({std::string(kShared),
                          "/shelf",
                          {{"id", id},
                           {"product", find_product(shelf, id)->name},
                           {"grams", figure(find_product(shelf, id)->stock_g, 0)}}});
  plan.bowls = planned_bowls(in, choice);
  plan.report.objective = choice.objective;
  plan.report.uneven = choice.uneven;
  for (const Domain::OneSetting& one : all.settings)
    plan.report.recipes += all.sets[static_cast<size_t>(one.set)].size();
  plan.report.zones = static_cast<int>(zones.size());
  plan.report.groups = static_cast<int>(groups.size());
  plan.report.settings = static_cast<int>(all.settings.size());
  plan.report.scenarios = static_cast<int>(draws.constants.size());
  plan.report.bowls_most = policy.bowls_max;
  plan.report.sets = chooser.sets();
  plan.report.boxes = search.counts().boxes;
  plan.report.bounds = search.counts().bounds;
  plan.report.evaluations = search.counts().evaluations;
  // Groups of like zones are a choice of ours: apart they might do better.
  plan.report.bound =
      groups.size() < zones.size() ? std::min(choice.bound, least_apart(search, zones, total)) : choice.bound;
  plan.report.plain_gap = choice.plain_gap();
  plan.report.gap = plan.report.objective - plan.report.plain_gap - plan.report.bound;
  plan.report.stopped = search.counts().cancelled ? "cancelled" : "exhausted";

  PredictOptions report;
  report.parallel = options.parallel;
  report.covered_contrast_levels = policy.covered_contrast_levels;
  auto after = planned_zones(in, targets, plan.bowls, report);
  if (!after) return tl::unexpected(after.error());
  plan.zones = std::move(*after);
  plan.bands = bands(from.head, targets, plan.zones);
  tell(plan);
  for (Problem& note : told_bands(plan.bands)) plan.notes.push_back(std::move(note));
  if (all.settings.empty() && !zones.empty())
    plan.notes.push_back({"no_range_usable", "/shelf", {}});
  else if (plan.bowls.empty() && plan.report.stopped == "exhausted")
    plan.why.push_back({zones.empty() ? "nothing_wished" : "leave_as_it_is", "", {}});
  plan.currency = shelf.currency;
  if (plan.report.stopped == "cancelled" || !from.other_ways) return plan;
  in.minutes.clear();  // other ways choose their own
  auto others = alternatives(in, targets, chooser, search, choice, plan, report);
  if (!others) return tl::unexpected(others.error());
  plan.alternatives = std::move(*others);
  auto nearer = closer(in, from.now, targets, plan, report);
  if (!nearer) return tl::unexpected(nearer.error());
  if (*nearer) plan.alternatives.push_back(std::move(**nearer));
  auto later = later_on_lengths(in, targets, choice, plan, report);
  if (!later) return tl::unexpected(later.error());
  if (later->offered) plan.alternatives.push_back(std::move(later->way));
  plan.why.insert(plan.why.end(), later->why.begin(), later->why.end());
  for (Alternative& a : plan.alternatives) a.bands = bands(from.head, targets, a.zones);
  std::erase_if(plan.alternatives, [&](const Alternative& a) { return !short_of(a.bowls, shelf).empty(); });
  for (const Alternative& a : plan.alternatives)
    if (a.axis == "fewer_bowls")
      plan.why.push_back(
          {"one_bowl_fewer",
           "",
           {{"bowls", std::to_string(a.bowls.size())}, {"worse", figure(a.objective - plan.report.objective, 2)}}});
  return plan;
}

}  // namespace

Result<Plan> formulate(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                       const FormulaPolicy& policy, const FormulateOptions& options) {
  const Situation now = at_start(head, options.scenarios);
  auto plan = formulate_from({now, head}, targets, shelf, policy, options);
  if (plan && plan->report.stopped == "exhausted")
    add_turns({head, targets, shelf, policy, options.scenarios, options.cancelled}, plan->bowls);
  if (plan && options.cancelled()) plan->report.stopped = "cancelled";
  return plan;
}

Result<Plan> formulate_from(const From& from, const std::vector<Target>& targets, const Shelf& shelf,
                            const FormulaPolicy& policy, const FormulateOptions& options) {
  Shelf left = shelf;
  Problems left_out;
  std::optional<Plan> shared;                              // the best so far of those that share a scarce tube out
  double bound = std::numeric_limits<double>::infinity();  // with every bowl free to use what is there, of all tries
  constexpr int kTriesWithoutStock = 4;
  for (int attempt = 0;; ++attempt) {
    auto plan = formulate_once(from, targets, left, policy, options);
    if (!plan) return plan;
    bound = std::min(bound, plan->report.bound);
    const auto certified = [&](Plan best) {
      best.report.bound = bound;
      best.report.gap = best.report.objective - best.report.plain_gap - bound;
      return best;
    };
    std::set<std::string> scarce;
    for (const std::string& id : short_of(plan->bowls, left)) scarce.insert(id);
    const bool poured = scarce.empty();
    for (const Problem& note : plan->notes)
      if (note.code == kShared) scarce.insert(note.params.at("id"));
    plan->notes.insert(plan->notes.end(), left_out.begin(), left_out.end());
    if (poured && (!shared || plan->report.objective < shared->report.objective)) shared = *plan;
    const bool over = plan->report.stopped == "cancelled";
    if (scarce.empty() || (shared && (attempt > 0 || over))) return certified(std::move(*shared));
    if (attempt == kTriesWithoutStock || over) {
      for (const std::string& id : scarce)
        plan->notes.push_back({"stock_short", "/shelf", {{"product", find_product(left, id)->name}}});
      return certified(std::move(*plan));
    }
    for (Product& p : left.products)
      if (scarce.contains(p.id)) {
        left_out.push_back({"left_out_for_stock", "/shelf", {{"product", p.name}, {"grams", figure(p.stock_g, 0)}}});
        p.stock_g = 0;
      }
  }
}

}  // namespace strandline
