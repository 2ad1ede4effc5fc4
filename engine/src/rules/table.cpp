#include <algorithm>

#include "generated/rules_table.h"
#include "rules/evaluate.h"

namespace strandline {

const std::vector<Rule>& rules() {
  static const std::vector<Rule> all = rule_table();
  return all;
}

int rules_version() { return rule_table_version; }

namespace {

const RuleFigure* find_figure(const std::vector<RuleFigure>& all, std::string_view name) {
  const auto own = std::find_if(all.begin(), all.end(), [&](const RuleFigure& f) { return f.name == name; });
  return own == all.end() ? nullptr : &*own;
}

const Rule* find_rule(std::string_view id) {
  const auto own = std::find_if(rules().begin(), rules().end(), [&](const Rule& r) { return r.id == id; });
  return own == rules().end() ? nullptr : &*own;
}

void check_value(const RuleValue& v, const std::string& path, Problems& problems) {
  bool known = false;
  for (const Rule& r : rules()) {
    const RuleFigure* figure = r.id == v.rule ? find_figure(r.figures, v.figure) : nullptr;
    if (!figure) continue;
    known = true;
    const RuleFigure* least = find_figure(r.least, v.figure);
    if (r.standing == Standing::law || (r.standing == Standing::floor && !least)) {
      problems.push_back({"rule_not_of_the_house", path, {{"id", v.rule}}});
      return;
    }
    const double from = least ? least->value : 0;
    constexpr double kMost = 10000;
    if (!(v.value >= from && v.value <= kMost)) {
      problems.push_back({"rule_value_out_of_range",
                          path + "/value",
                          {{"id", v.rule}, {"min", figure_text(from)}, {"max", figure_text(kMost)}}});
      return;
    }
  }
  if (!known) problems.push_back({"unknown_rule_figure", path, {{"id", v.rule}, {"figure", v.figure}}});
}

}  // namespace

Problems check(const RulePolicy& policy, const std::string& path) {
  Problems problems;
  for (size_t i = 0; i < policy.off.size(); ++i) {
    const std::string here = path + "/off/" + std::to_string(i);
    if (!find_rule(policy.off[i]))
      problems.push_back({"unknown_rule", here, {{"id", policy.off[i]}}});
    else if (std::any_of(rules().begin(), rules().end(),
                         [&](const Rule& r) { return r.id == policy.off[i] && r.standing != Standing::house; }))
      problems.push_back({"rule_not_of_the_house", here, {{"id", policy.off[i]}}});
  }
  for (size_t i = 0; i < policy.values.size(); ++i)
    check_value(policy.values[i], path + "/values/" + std::to_string(i), problems);
  return problems;
}

double figure_of(const Rule& rule, std::string_view name, const RulePolicy& policy) {
  const RuleFigure* own = find_figure(rule.figures, name);
  const bool fixed =
      rule.standing == Standing::law || (rule.standing == Standing::floor && !find_figure(rule.least, name));
  if (!fixed)
    for (const RuleValue& v : policy.values)
      if (v.rule == rule.id && v.figure == name) return v.value;
  return own ? own->value : kNoLimit;
}

std::string figure_text(double value) {
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace strandline
