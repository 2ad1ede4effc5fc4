// Laws of mixing that hold for any bowl.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <numeric>

#include "strandline/law.h"

namespace strandline::law {
namespace {

rc::Gen<double> tenths(int from, int to) {
  return rc::gen::map(rc::gen::inRange(from * 10, to * 10 + 1), [](int n) { return n / 10.0; });
}

rc::Gen<Declared> any_dye() {
  return rc::gen::exec([] {
    const auto cas =
        *rc::gen::elementOf(std::vector<std::string>{"95-70-5", "615-50-9", "106-50-3", "16245-77-5", "108-46-3",
                                                     "155601-30-2", "7469-77-4", "5697-02-9", "123-30-8"});
    const bool known = *rc::gen::inRange(0, 8) > 0;
    return Declared{cas, "", "", known ? std::optional<double>(*tenths(0, 6)) : std::nullopt, ""};
  });
}

rc::Gen<Composition> any_mix() {
  return rc::gen::exec([] {
    Composition mix;
    const int parts = *rc::gen::inRange(1, 6);
    for (int i = 0; i < parts; ++i) {
      const bool known = *rc::gen::inRange(0, 8) > 0;
      const auto dyes = *rc::gen::container<std::vector<Declared>>(*rc::gen::inRange<std::size_t>(0, 4), any_dye());
      mix.push_back({"part " + std::to_string(i), *tenths(1, 80),
                     known ? std::optional<double>(*tenths(0, 12)) : std::nullopt, dyes, true});
    }
    return mix;
  });
}

// Grams are sums in another order: equal up to rounding, and the verdict may only flip when it sits on the
// cap itself.
void same(const LimitReport& a, const LimitReport& b) {
  RC_ASSERT(a.entries.size() == b.entries.size());
  for (std::size_t i = 0; i < a.entries.size(); ++i) {
    RC_ASSERT(a.entries[i].entry == b.entries[i].entry);
    RC_ASSERT(std::abs(a.entries[i].at_least - b.entries[i].at_least) < 1e-9);
    RC_ASSERT(a.entries[i].status == b.entries[i].status);
  }
  RC_ASSERT(a.sums.size() == b.sums.size());
  for (std::size_t i = 0; i < a.sums.size(); ++i) {
    RC_ASSERT(std::abs(a.sums[i].at_least - b.sums[i].at_least) < 1e-9);
    RC_ASSERT(a.sums[i].status == b.sums[i].status);
  }
  RC_ASSERT(a.overall == b.overall);
}

LimitReport checked(const Composition& mix) { return check_limits(mix, Use::oxidative_dye).value(); }

RC_GTEST_PROP(LawLaws, MixingOrderDoesNotMatter, ()) {
  const auto mix = *any_mix();
  auto other = mix;
  std::ranges::reverse(other);
  std::rotate(other.begin(), other.begin() + *rc::gen::inRange<std::size_t>(0, other.size()), other.end());
  same(checked(mix), checked(other));
}

RC_GTEST_PROP(LawLaws, SplittingAPartInTwoChangesNothing, ()) {
  const auto mix = *any_mix();
  auto split = mix;
  const auto which = *rc::gen::inRange<std::size_t>(0, split.size());
  auto half = split[which];
  half.grams *= 0.25;
  split[which].grams -= half.grams;
  split.push_back(half);
  same(checked(mix), checked(split));
}

RC_GTEST_PROP(LawLaws, DilutionNeverRaises, ()) {
  const auto mix = *any_mix();
  auto diluted = mix;
  diluted.push_back({"water", *tenths(0, 50), 0.0, {}, true});
  const auto before = checked(mix), after = checked(diluted);
  RC_ASSERT(before.entries.size() == after.entries.size());
  for (std::size_t i = 0; i < before.entries.size(); ++i)
    RC_ASSERT(after.entries[i].at_least <= before.entries[i].at_least + 1e-12);
  for (std::size_t i = 0; i < before.sums.size(); ++i)
    RC_ASSERT(after.sums[i].at_least <= before.sums[i].at_least + 1e-12);
  const auto peroxide = on_head_peroxide(mix).value();
  if (peroxide) RC_ASSERT(*on_head_peroxide(diluted).value() <= *peroxide + 1e-12);
}

RC_GTEST_PROP(LawLaws, SumRuleRisesWithEveryMember, ()) {
  const double a = *tenths(0, 3), more = *tenths(0, 3);
  const auto total = [](double percent) {
    return checked(
               {{"ready",
                 5,
                 3.0,
                 {{"95-70-5", "", "", percent, ""}, {"", "8", "x", 1.0, "free_base"}, {"", "9", "y", 1.0, "free_base"}},
                 true}})
        .sums.at(0)
        .total.value();
  };
  RC_ASSERT(total(a + more) >= total(a));
  if (more > 0) RC_ASSERT(total(a + more) > total(a));
}

RC_GTEST_PROP(LawLaws, BlendLiesBetweenItsPortionsAndAlligationFindsItsParts, ()) {
  const double weaker = *tenths(0, 20), stronger = weaker + *tenths(1, 20);
  const double wanted = weaker + (stronger - weaker) * *tenths(0, 1);
  const auto parts = alligate(weaker, stronger, wanted).value();
  const double back = blend({{parts.weaker_parts, weaker}, {parts.stronger_parts, stronger}}).value();
  RC_ASSERT(std::abs(back - wanted) < 1e-9);
  RC_ASSERT(back >= weaker - 1e-9 && back <= stronger + 1e-9);
}

RC_GTEST_PROP(LawLaws, ScalingKeepsTheRatio, ()) {
  const auto ratio = *rc::gen::container<std::vector<double>>(3, tenths(1, 5));
  const auto grams = split_by_ratio(*tenths(1, 200), ratio).value();
  const auto scaled = scale_to_weighed(grams, 1, *tenths(1, 100)).value();
  for (std::size_t i = 0; i < grams.size(); ++i)
    RC_ASSERT(std::abs(scaled[i] * grams[0] - grams[i] * scaled[0]) < 1e-9 * (1 + grams[0] * scaled[i]));
}

}  // namespace
}  // namespace strandline::law
