#include <algorithm>
#include <cctype>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

#include "law/check.h"
#include "law/salts.h"

namespace strandline::law {
namespace {

constexpr int kUnlisted = static_cast<int>(std::size(law_data::kEntries));
constexpr std::string_view kPeroxide = "12";

constexpr std::string_view kUses[] = {
    "oxidative_dye",         "non_oxidative_dye",          "lightener",      "waving_general", "waving_professional",
    "straightening_general", "straightening_professional", "rinse_off_hair", "leave_on_hair",  "skin",
    "nail_hardener"};

// One declaration with the grams of the product that carries it.
struct Amount {
  double grams;
  const Declared* declared;
};

// A row of the answer: the entry, and within group entries (and outside the list) the substance.
using Key = std::pair<int, std::string>;
using Amounts = std::map<Key, std::vector<Amount>>;

bool same_word(std::string_view a, std::string_view b) {
  return std::ranges::equal(a, b, [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

int find_entry(const Declared& declared) {
  for (const auto& row : law_data::kCas)
    if (row.number == declared.cas) return row.entry;
  for (int i = 0; i < kUnlisted; ++i) {
    const auto& row = law_data::kEntries[i];
    if (declared.entry.empty() ? same_word(row.name, declared.name) : row.id == declared.entry) return i;
  }
  return kUnlisted;
}

std::string word_for(const Declared& declared) { return declared.name.empty() ? declared.cas : declared.name; }

Key key_of(const Declared& declared) {
  const int entry = find_entry(declared);
  const bool by_itself = entry == kUnlisted || law_data::kEntries[entry].family;
  return {entry, by_itself ? word_for(declared) : std::string()};
}

bool exceeds(double value, double max) { return value > max * (1 + 1e-9); }

Status judge(Bounds bounds, double max) {
  if (exceeds(bounds.low, max)) return Status::over;
  return exceeds(bounds.high, max) ? Status::unknown_percentage : Status::within;
}

std::optional<double> exact(Bounds bounds) {
  if (std::isfinite(bounds.high) && bounds.high - bounds.low <= 1e-12 * bounds.high) return bounds.low;
  return std::nullopt;
}

// What is on the head of these amounts, counted as `as`.
Bounds on_head(int entry, std::string_view as, const std::vector<Amount>& amounts, double total) {
  Bounds sum;
  for (const auto& amount : amounts) {
    const auto percent = percent_as(entry, as, *amount.declared);
    sum.low += percent.low * amount.grams / total;
    sum.high += percent.high * amount.grams / total;
  }
  return sum;
}

// The limit for this use. Where the list gives one per form, the one of the form declared; else that of the
// reference.
const law_data::Limit* limit_for(int entry, Use use, const std::vector<Amount>& amounts) {
  const law_data::Limit* chosen = nullptr;
  for (const auto& row : law_data::kLimits) {
    if (row.entry != entry || row.use != kUses[static_cast<int>(use)]) continue;
    const bool declared = std::ranges::all_of(amounts, [&](const auto& a) { return form_of(*a.declared) == row.as; });
    if (declared) return &row;
    if (!chosen || row.as == law_data::kEntries[entry].reference) chosen = &row;
  }
  return chosen;
}

LimitResult result_for(const Key& key, const std::vector<Amount>& amounts, double total, Use use) {
  LimitResult result;
  if (key.first == kUnlisted) {
    result.substance = key.second;
    result.status = Status::not_listed;
    return result;
  }
  const auto& entry = law_data::kEntries[key.first];
  const auto* limit = limit_for(key.first, use, amounts);
  result.entry = entry.id;
  result.substance = key.second.empty() ? std::string(entry.name) : key.second;
  result.nitrosamine_conditions = entry.nitrosamine;
  result.as = limit ? limit->as : kAsListed;
  const auto bounds = on_head(key.first, result.as, amounts, total);
  result.at_least = bounds.low;
  result.on_head_percent = exact(bounds);
  result.status = Status::not_permitted_use;
  if (!limit) return result;
  result.cap = limit->max;
  result.status = judge(bounds, limit->max);
  return result;
}

// What one row counts for in a rule over several entries: its ratio to the cap, or its amount as the counted
// substance.
Bounds counted(const law_data::Rule& rule, const law_data::Member& member, const std::vector<Amount>& amounts,
               double total, Use use) {
  const bool ratio = rule.kind == "sum_of_ratios";
  const auto* limit = limit_for(member.entry, use, amounts);
  if (ratio && !limit) return {0, std::numeric_limits<double>::infinity()};
  const auto bounds = on_head(member.entry, limit ? limit->as : kAsListed, amounts, total);
  const double factor = ratio ? 1 / limit->max : member.to_counted;
  return {bounds.low * factor, bounds.high * factor};
}

std::optional<SumResult> sum_for(int number, const Amounts& rows, double total, Use use) {
  const auto& rule = law_data::kRules[number];
  SumResult result{std::string(rule.kind), {}, {}, 0, rule.max, Status::within, false};
  Bounds sum;
  for (const auto& member : law_data::kMembers) {
    if (member.rule != number) continue;
    for (const auto& [key, amounts] : rows) {
      if (key.first != member.entry) continue;
      result.scope_doubtful |= member.doubtful;
      if (member.doubtful) continue;
      const auto part = counted(rule, member, amounts, total, use);
      sum.low += part.low;
      sum.high += part.high;
      const std::string id(law_data::kEntries[key.first].id);
      if (std::ranges::find(result.entries, id) == result.entries.end()) result.entries.push_back(id);
    }
  }
  if (result.entries.empty() || (rule.kind == "total" && result.entries.size() < 2)) return std::nullopt;
  result.at_least = sum.low;
  result.total = exact(sum);
  result.status = judge(sum, rule.max);
  return result;
}

int severity(Status status) {
  if (status == Status::over || status == Status::not_permitted_use) return 2;
  return status == Status::unknown_percentage ? 1 : 0;
}

Problems problems_of(const Composition& composition) {
  Problems out;
  double total = 0;
  for (std::size_t i = 0; i < composition.size(); ++i) {
    const auto& part = composition[i];
    const auto at = "/" + std::to_string(i);
    const auto percentage = [&](const std::optional<double>& percent, const std::string& path) {
      if (percent && (!amount(*percent) || *percent > 100)) out.push_back({"not_a_percentage", path, {}});
    };
    if (!amount(part.grams)) out.push_back({"not_an_amount", at + "/grams", {}});
    total += part.grams;
    percentage(part.peroxide_percent, at + "/peroxide_percent");
    for (std::size_t k = 0; k < part.declared.size(); ++k) {
      const auto& declared = part.declared[k];
      const auto path = at + "/declared/" + std::to_string(k);
      percentage(declared.percent, path + "/percent");
      if (!declared.basis.empty() && !known_form(declared.basis))
        out.push_back({"unknown_basis", path + "/basis", {{"basis", declared.basis}}});
      if (declared.cas.empty() && declared.entry.empty() && declared.name.empty())
        out.push_back({"substance_without_a_name", path, {}});
      const int entry = find_entry(declared);
      if (!declared.entry.empty() && (entry == kUnlisted || law_data::kEntries[entry].id != declared.entry))
        out.push_back({"entry_does_not_match", path + "/entry", {{"entry", declared.entry}}});
    }
  }
  if (out.empty() && !(total > 0)) out.push_back({"nothing_in_the_bowl", "", {}});
  return out;
}

double total_grams(const Composition& composition) {
  return std::accumulate(composition.begin(), composition.end(), 0.0,
                         [](double sum, const Ingredient& p) { return sum + p.grams; });
}

}  // namespace

Result<std::optional<double>> on_head_peroxide(const Composition& composition) {
  if (auto problems = problems_of(composition); !problems.empty()) return tl::unexpected(std::move(problems));
  double active = 0;
  for (const auto& part : composition) {
    if (part.grams == 0) continue;
    if (!part.peroxide_percent) return std::optional<double>();
    active += part.grams * *part.peroxide_percent;
  }
  return std::optional<double>(active / total_grams(composition));
}

Result<LimitReport> check_limits(const Composition& composition, Use use) {
  if (auto problems = problems_of(composition); !problems.empty()) return tl::unexpected(std::move(problems));
  const double total = total_grams(composition);
  LimitReport report;

  // Peroxide is a declaration like the others; parts without any add nothing.
  std::vector<Declared> peroxide;
  peroxide.reserve(composition.size());
  Amounts rows;
  for (const auto& part : composition) {
    if (part.grams == 0) continue;
    if (!part.fully_declared) report.not_fully_declared.push_back(part.id);
    peroxide.push_back({"", std::string(kPeroxide), "", part.peroxide_percent, "H2O2"});
    if (part.peroxide_percent != 0.0) rows[key_of(peroxide.back())].push_back({part.grams, &peroxide.back()});
    for (const auto& declared : part.declared) rows[key_of(declared)].push_back({part.grams, &declared});
  }

  for (const auto& [key, amounts] : rows) report.entries.push_back(result_for(key, amounts, total, use));
  for (int rule = 0; rule < static_cast<int>(std::size(law_data::kRules)); ++rule)
    if (auto sum = sum_for(rule, rows, total, use)) report.sums.push_back(std::move(*sum));

  if (!report.not_fully_declared.empty()) report.overall = Status::unknown_percentage;
  const auto worsen = [&](Status status) {
    if (severity(status) > severity(report.overall)) report.overall = severity(status) == 2 ? Status::over : status;
  };
  for (const auto& result : report.entries) worsen(result.status);
  for (const auto& sum : report.sums) worsen(sum.status);
  return report;
}

}  // namespace strandline::law
