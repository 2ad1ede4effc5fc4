#include <algorithm>
#include <array>

#include "formulate/judge.h"
#include "mix/habits.h"
#include "rules/place.h"

namespace strandline {
namespace {

// Grams of the colour part, and of those products of it that count.
template <class Counts>
std::optional<double> colour_share(const Place& p, Counts&& counts) {
  if (!p.bowl) return std::nullopt;
  double all = 0, some = 0;
  for (const Part& part : p.bowl->formula.parts)
    if (const Product* own = find_product(p.visit.shelf, part.product); own && own->cls != ProductClass::developer) {
      all += part.grams;
      if (counts(*own)) some += part.grams;
    }
  return all > 0 ? std::optional(some / all) : std::nullopt;
}

std::optional<double> levels_apart(const Place& p) {
  if (!p.bowl) return std::nullopt;
  double darkest = kNoLimit, lightest = 0;
  for (const Part& part : p.bowl->formula.parts)
    if (const Product* own = find_product(p.visit.shelf, part.product);
        own && own->cls != ProductClass::developer && part.grams > 0 && counts_for_levels(*own))
      darkest = std::min(darkest, own->level), lightest = std::max(lightest, own->level);
  return darkest == kNoLimit ? std::nullopt : std::optional(lightest - darkest);
}

// Whether the older rules of range and law name one of these for the bowl.
template <size_t N>
std::optional<double> breaks(const Place& p, const std::array<std::string_view, N>& codes) {
  if (!p.bowl) return std::nullopt;
  const Problems broken = broken_rules(p.visit.head, *p.bowl, p.visit.shelf, p.visit.policy.formula);
  return std::any_of(broken.begin(), broken.end(),
                     [&](const Problem& b) { return std::find(codes.begin(), codes.end(), b.code) != codes.end(); });
}

constexpr FactRow kFacts[] = {
    {"corrector",
     [](const Place& p) {
       return colour_share(p, [](const Product& own) { return own.cls == ProductClass::corrector; });
     }},
    {"clear",
     [](const Place& p) {
       const auto share = colour_share(p, [](const Product& own) { return own.cls == ProductClass::clear; });
       return share && *share < 1 ? share : std::nullopt;  // clear alone is a gloss
     }},
    {"levels_apart", [](const Place& p) { return levels_apart(p); }},
    {"off_range",
     [](const Place& p) {
       constexpr std::array<std::string_view, 3> kCodes = {"ratio_not_of_range", "developer_not_of_range",
                                                           "longer_than_range_allows"};
       return breaks(p, kCodes);
     }},
    {"two_ranges",
     [](const Place& p) {
       constexpr std::array<std::string_view, 1> kCodes = {"two_ranges_in_one_bowl"};
       return breaks(p, kCodes);
     }},
    {"over_law",
     [](const Place& p) {
       constexpr std::array<std::string_view, 2> kCodes = {"over_legal_limit", "not_permitted_use"};
       return breaks(p, kCodes);
     }},
    {"bottle",
     [](const Place& p) -> std::optional<double> {
       if (!p.bowl) return std::nullopt;
       double strongest = 0;
       for (const Part& part : p.bowl->formula.parts)
         if (const Product* own = find_product(p.visit.shelf, part.product))
           strongest = std::max(strongest, own->peroxide_percent);
       return strongest;
     }},
};

}  // namespace

std::span<const FactRow> bowl_facts() { return kFacts; }

}  // namespace strandline
