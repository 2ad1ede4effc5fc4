#include "law/salts.h"

#include <algorithm>
#include <iterator>
#include <limits>

namespace strandline::law {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

}  // namespace

std::optional<double> reference_per_gram(int entry, std::string_view form) {
  if (form.empty()) return std::nullopt;
  if (form == law_data::kEntries[entry].reference) return 1.0;
  for (const auto& row : law_data::kConversions)
    if (row.entry == entry && row.form == form) return row.to_reference;
  return std::nullopt;
}

std::optional<double> reference_per_gram(std::string_view entry, std::string_view form) {
  for (int i = 0; i < static_cast<int>(std::size(law_data::kEntries)); ++i)
    if (law_data::kEntries[i].id == entry) return reference_per_gram(i, form);
  return std::nullopt;
}

bool known_form(std::string_view form) {
  const auto is = [&](const auto&... lists) {
    return (std::ranges::any_of(lists, [&](std::string_view known) { return known == form; }) || ...);
  };
  std::vector<std::string_view> words{kAsListed, "free_base"};
  for (const auto& row : law_data::kEntries) words.push_back(row.reference), words.push_back(row.listed_form);
  for (const auto& row : law_data::kCas) words.push_back(row.form);
  for (const auto& row : law_data::kLimits) words.push_back(row.as);
  for (const auto& row : law_data::kConversions) words.push_back(row.form);
  return !form.empty() && is(words);
}

std::string_view form_of(const Declared& declared) {
  if (!declared.basis.empty()) return declared.basis;
  for (const auto& row : law_data::kCas)
    if (row.number == declared.cas) return row.form;
  return {};
}

Bounds percent_as(int entry, std::string_view as, const Declared& declared) {
  if (!declared.percent) return {0, kInfinity};
  const double percent = *declared.percent;
  const auto form = form_of(declared);
  const auto& row = law_data::kEntries[entry];
  const bool plain = form.empty() || form == kAsListed;

  // No basis printed: the percentage as it stands, unless it is counted in another form than the one listed.
  auto target = as;
  if (as == kAsListed) {
    if (plain || row.listed_form.empty() || form == row.listed_form) return {percent, percent};
    target = row.listed_form;
  }
  if (form == target || percent == 0) return {percent, percent};

  const auto from = plain ? std::nullopt : reference_per_gram(entry, form);
  const auto to = reference_per_gram(entry, target);
  if (from && to) return {percent * *from / *to, percent * *from / *to};
  // Any form holds at most its own weight of the reference.
  if (target == row.reference) return {0, percent};
  return {0, kInfinity};
}

}  // namespace strandline::law
