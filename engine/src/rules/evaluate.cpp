#include "rules/evaluate.h"

#include <algorithm>
#include <array>

namespace strandline {
namespace {

bool among(const std::vector<std::string_view>& all, std::string_view word) {
  return std::find(all.begin(), all.end(), word) != all.end();
}

bool in_scope(const Rule& r, const Place& p) {
  const RulePolicy& policy = p.visit.policy.rules;
  if (p.cls.empty() || left_out(r, policy)) return false;
  if (!among(r.places, "all") && !among(r.places, policy.country)) return false;
  if (!among(r.classes, "any") && !among(r.classes, p.cls)) return false;
  if (r.skin != "any" && (r.skin == "yes") != touches_skin(p.area, p.span)) return false;
  if (r.span == "packets") return p.area.woven.has_value();
  if (r.span == "new_growth") return touches_scalp(p.span);
  return r.span != "lengths" || !touches_scalp(p.span);
}

struct Word {
  std::string_view fact, op, figure;
  FactValue value = nullptr;
};
using Condition = std::vector<Word>;

Word parsed(std::string_view text) {
  const size_t at = text.find_first_of("<>");
  const std::string_view fact = text.substr(0, at);
  if (at == std::string_view::npos) return {fact, "", "", find_fact(fact)};
  const size_t end = at + (text.substr(at).starts_with(">=") ? 2 : 1);
  return {fact, text.substr(at, end - at), text.substr(end), find_fact(fact)};
}

std::vector<Condition> conditions_of(const Rule& r) {
  std::vector<Condition> all;
  for (std::string_view text : r.when) {
    Condition& words = all.emplace_back();
    for (size_t space = 0; space != std::string_view::npos; text = text.substr(space + 1)) {
      space = text.find(' ');
      words.push_back(parsed(text.substr(0, space)));
      if (space == std::string_view::npos) break;
    }
  }
  return all;
}

// Of rules(), in its order, read once.
const std::vector<Condition>& conditions(const Rule& r) {
  static const std::vector<std::vector<Condition>> all = [] {
    std::vector<std::vector<Condition>> read;
    for (const Rule& own : rules()) read.push_back(conditions_of(own));
    return read;
  }();
  return all[static_cast<size_t>(&r - rules().data())];
}

bool holds(const Word& w, double value, double limit) {
  constexpr double kSame = 1e-9;
  if (w.op == "<") return value < limit - kSame;
  if (w.op == ">") return value > limit + kSame;
  if (w.op == ">=") return value >= limit - kSame;
  return value != 0;
}

// All words of one condition; the number told is that of the first that has one.
std::optional<Because> all_hold(const Rule& r, const Condition& condition, const Place& p) {
  std::optional<Because> because;
  for (const Word& w : condition) {
    const auto value = w.value ? w.value(p) : std::nullopt;
    if (!value || !holds(w, *value, w.figure.empty() ? 0 : figure_of(r, w.figure, p.visit.policy.rules)))
      return std::nullopt;
    if (!because) because = Because{w.fact, {}};
    if (!w.op.empty() && !because->found) because = Because{w.fact, value};
  }
  return because;
}

// How many levels the strongest bottle that is left may lift, by the rules that say so (lift_3, lift_6 …).
void keep_to_strength(RangeLimits& limits, const Place& p, const RulePolicy& policy) {
  double strongest = 0;
  for (const double percent : p.range.developer_percents)
    if (percent <= limits.developer_max && percent < limits.developer_below) strongest = std::max(strongest, percent);
  constexpr std::array<std::pair<double, std::string_view>, 4> by_bottle = {
      {{3, "lift_3"}, {6, "lift_6"}, {9, "lift_9"}, {12, "lift_12"}}};
  for (const Rule& r : rules()) {
    if (r.says != Says::stop || left_out(r, policy) || !among(r.classes, p.cls)) continue;
    for (const auto& [percent, name] : by_bottle) {
      const double lift = figure_of(r, name, policy);
      if (strongest <= percent && lift != kNoLimit) {
        limits.lift_max = std::min(limits.lift_max, lift);
        break;
      }
    }
  }
}

}  // namespace

bool left_out(const Rule& r, const RulePolicy& policy) {
  return r.standing == Standing::house && std::find(policy.off.begin(), policy.off.end(), r.id) != policy.off.end();
}

std::optional<Because> speaks(const Rule& r, const Place& p) {
  if (!in_scope(r, p)) return std::nullopt;
  for (const Condition& condition : conditions(r))
    if (auto because = all_hold(r, condition, p)) return because;
  return std::nullopt;
}

bool of_class_alone(const Rule& r) {
  static constexpr std::array<std::string_view, 10> of_the_class = {
      "always",   "peroxide", "strongest_bottle", "in_the_open",     "packets",
      "not_calm", "deposits", "refreshes",        "permed_deposits", "porous_deposits"};
  for (const Condition& condition : conditions(r))
    for (const Word& w : condition)
      if (std::find(of_the_class.begin(), of_the_class.end(), w.fact) == of_the_class.end()) return false;
  return true;
}

RangeLimits limits_of(const Place& p) {
  RangeLimits all;
  all.range = p.range.id;
  const RulePolicy& policy = p.visit.policy.rules;
  for (const Rule& r : rules()) {
    if (r.of_wish || !speaks(r, p)) continue;
    if ((r.says == Says::stop || r.says == Says::ask) && all.closed_by.empty()) all.closed_by = r.id;
    const auto lower = [&](double& limit, std::string_view name) {
      limit = std::min(limit, figure_of(r, name, policy));
    };
    lower(all.developer_max, "developer_max");
    lower(all.developer_below, "developer_below");
    lower(all.on_head_max, "on_head_max");
    lower(all.minutes_max, "minutes_max");
    lower(all.first_touch_max, "first_touch_max");
    // By eye: as long as the range's shortest time at least.
    if (const double about = figure_of(r, "minutes_about", policy); about != kNoLimit)
      all.minutes_max = std::min(all.minutes_max, std::max(about, p.range.minutes.min));
    if (const double least = figure_of(r, "minutes_min", policy); least != kNoLimit)
      all.minutes_min = std::max(all.minutes_min, least);
    lower(all.porosity_after_max, "porosity_after_max");
    lower(all.lift_max, "lift_max");
    const bool crossed = p.range.minutes.min > all.minutes_max || p.range.minutes.max < all.minutes_min ||
                         all.minutes_min > all.minutes_max;
    if (crossed && all.closed_by.empty()) all.closed_by = r.id;
  }
  keep_to_strength(all, p, policy);
  return all;
}

Survey survey(const Visit& visit) {
  Survey s;
  s.refs = zones(visit.head);
  if (!visit.aims.empty())
    if (auto targets = aim(visit.head, visit.aims, visit.shelf)) s.targets = std::move(*targets);
  double least = 1, most = 0;
  for (const ZoneRef& z : s.refs) {
    if (!counts(s, z.id) || !touches_scalp(*z.span)) continue;
    double white = 0;
    for (const Population& p : z.span->populations)
      if (p.kind == FibreKind::white) white += p.share.value;
    least = std::min(least, white);
    most = std::max(most, white);
  }
  s.white_apart = std::max(0.0, most - least);
  return s;
}

const Target* wish_for(const Survey& s, const std::string& zone) {
  const auto own = std::find_if(s.targets.begin(), s.targets.end(), [&](const Target& t) { return t.zone == zone; });
  return own == s.targets.end() ? nullptr : &*own;
}

bool counts(const Survey& s, const std::string& zone) {
  if (s.targets.empty()) return true;
  const Target* own = wish_for(s, zone);
  return own && !own->leave;
}

}  // namespace strandline
