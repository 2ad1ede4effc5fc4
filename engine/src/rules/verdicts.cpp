#include <algorithm>
#include <array>
#include <set>
#include <tuple>

#include "assess/strands.h"
#include "mix/habits.h"
#include "review/remake.h"
#include "rules/evaluate.h"
#include "rules/own_bowl.h"
#include "strandline/pipeline.h"

namespace strandline {
namespace {

void add_once(std::vector<std::string>& all, std::string_view word) {
  if (std::find(all.begin(), all.end(), word) == all.end()) all.emplace_back(word);
}

std::vector<std::string> texts(const std::vector<std::string_view>& words) { return {words.begin(), words.end()}; }

// Law, floors, what stops or asks, what limits, words.
int rank(const Verdict& v) {
  constexpr std::array<int, 5> by_says = {0, 2, 3, 1, 4};  // stop, ceiling, restrict, ask, say
  constexpr int kPerStanding = 5;
  const bool words = v.says == Says::say;
  return (words ? 3 : static_cast<int>(v.standing)) * kPerStanding + by_says[static_cast<size_t>(v.says)];
}

// Whether this range could serve the wish at all: a colour, or a lightener where lighter is wished.
bool serves_wish(const Place& p) {
  if (p.range.cls != ProductClass::lightener) return formulated(p.range.cls);
  return p.target && asked_lift(p.span, *p.target) > Constants{}.level_tolerance;
}

}  // namespace

Verdict verdict_of(const Rule& r, const Because& because, const Place& p, const std::string& zone) {
  Verdict v;
  v.rule = r.id;
  v.topic = r.topic;
  v.standing = r.standing;
  v.says = r.says;
  v.source = r.source;
  v.classes = {std::string(p.cls)};
  v.zones = {zone};
  if (p.bowl) v.bowl = p.bowl->label;
  v.fact = because.fact;
  for (const RuleFigure& f : r.figures) v.figures[std::string(f.name)] = figure_of(r, f.name, p.visit.policy.rules);
  if (because.found) v.figures["found"] = *because.found;
  v.change = texts(r.change);
  v.today = texts(r.today);
  return v;
}

void gather(std::vector<Verdict>& list, Verdict v) {
  const auto same = std::find_if(list.begin(), list.end(), [&](const Verdict& own) {
    return std::tie(own.rule, own.says, own.bowl, own.fact) == std::tie(v.rule, v.says, v.bowl, v.fact);
  });
  if (same == list.end()) return list.push_back(std::move(v));
  for (const std::string& cls : v.classes) add_once(same->classes, cls);
  for (const std::string& zone : v.zones) add_once(same->zones, zone);
  for (const std::string& word : v.today) add_once(same->today, word);
}

void in_order(std::vector<Verdict>& list) {
  std::stable_sort(list.begin(), list.end(), [](const Verdict& a, const Verdict& b) { return rank(a) < rank(b); });
}

Verdicts verdicts(const Visit& visit) {
  const Survey s = survey(visit);
  Verdicts all;
  bool any = false, open = false, limits = false;
  for (const ZoneRef& z : s.refs) {
    if (!counts(s, z.id)) continue;
    for (const Range& range : visit.shelf.ranges) {
      const Place p{visit,   *z.area,      *z.span, range, class_in_rules(range, *z.area, *z.span), wish_for(s, z.id),
                    nullptr, s.white_apart};
      bool closed = false;
      for (const Rule& r : rules()) {
        const auto because = speaks(r, p);
        if (!because) continue;
        const bool closes = r.says == Says::stop || r.says == Says::ask;
        closed = closed || (closes && !r.of_wish);
        if (of_class_alone(r)) continue;
        limits = limits || (r.says != Says::say && r.topic != "wish");
        gather(all.list, verdict_of(r, *because, p, z.id));
      }
      if (!serves_wish(p)) continue;
      any = true;
      open = open || !closed;
    }
  }
  in_order(all.list);
  all.go = any && !open ? Go::stopped : limits ? Go::restricted : Go::go;
  return all;
}

Verdicts with_bowls(const Visit& visit) {
  Verdicts all = verdicts(visit);
  std::vector<Verdict> passed = passed_by_bowls(visit);
  if (passed.empty()) {
    // What is asked of own bowls is whether they may be mixed, not whether a colour could be found.
    if (all.go == Go::stopped && !visit.bowls.empty()) all.go = Go::restricted;
    return all;
  }
  all.go = Go::stopped;
  all.list.insert(all.list.begin(), std::make_move_iterator(passed.begin()), std::make_move_iterator(passed.end()));
  return all;
}

bool may_be_mixed(const Verdicts& all) {
  return std::all_of(all.list.begin(), all.list.end(), [](const Verdict& v) { return v.bowl.empty(); });
}

Visit limited(Visit visit) {
  const Visit as_read = visit;
  visit.head = known_by_strands(std::move(visit.head), as_read.shelf);
  for (const Rule& r : rules()) {
    const RulePolicy& policy = as_read.policy.rules;
    if (left_out(r, policy)) continue;
    double& clear = visit.policy.formula.clear_max_share;
    clear = std::min(clear, figure_of(r, "clear_max", policy));
    for (Range& range : visit.shelf.ranges)
      range.corrector_max_share = std::min(range.corrector_max_share, figure_of(r, "corrector_max", policy));
  }
  const Survey s = survey(as_read);
  size_t index = 0;
  for (Area& area : visit.head.areas)
    for (Span& span : area.spans) {
      const ZoneRef& z = s.refs[index++];
      span.limits.clear();
      for (const Range& range : as_read.shelf.ranges) {
        const std::string_view cls = class_in_rules(range, *z.area, *z.span);
        if (!cls.empty())
          span.limits.push_back(
              limits_of({as_read, *z.area, *z.span, range, cls, wish_for(s, z.id), nullptr, s.white_apart}));
      }
    }
  return visit;
}

std::vector<Verdict> passed_by_bowls(const Visit& visit) {
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, 1);
  if (!found) return {};
  std::vector<Verdict> all;
  for (size_t i = 0; i < bowls.size(); ++i) {
    const Range* range = find_range(visit.shelf, bowls[i].formula.range);
    if (!range) continue;
    Visit then = visit;  // on the hair as the steps before have left it
    then.head = (*found)[i].now.head;
    const Survey s = survey(then);
    for (const ZoneRef& z : s.refs) {
      if (std::find(bowls[i].zones.begin(), bowls[i].zones.end(), z.id) == bowls[i].zones.end()) continue;
      const Place p{then,    *z.area,   *z.span,      *range, class_in_rules(*range, *z.area, *z.span),
                    nullptr, &bowls[i], s.white_apart};
      for (Verdict& v : passed(p, z.id)) gather(all, std::move(v));
    }
  }
  in_order(all);
  return all;
}

}  // namespace strandline
