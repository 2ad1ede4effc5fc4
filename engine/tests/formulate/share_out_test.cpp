#include "formulate/share_out.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <map>

#include "engine/tests/formulate/two_bowls.h"

namespace strandline {
namespace {

using namespace testing_support;

double needed(const ChoiceInput& in, const Chosen& bowl, const Candidate& c, const std::string& product) {
  const Setting& setting = in.domain.settings[static_cast<size_t>(c.setting)].setting;
  const Formula f = pour(in.domain.sets[static_cast<size_t>(c.set)], c.shares, setting,
                         bowl_wish(in, bowl.zones).grams.of(*setting.range), in.shelf, in.policy);
  double sum = 0;
  for (const Part& p : f.parts)
    if (p.product == product) sum += p.grams;
  return sum;
}

bool pourable(const ChoiceInput& in, const Choice& choice, const Candidate& a, const Candidate& b) {
  return std::all_of(in.shelf.products.begin(), in.shelf.products.end(), [&](const Product& p) {
    return needed(in, choice.bowls[0], a, p.id) + needed(in, choice.bowls[1], b, p.id) <= p.stock_g + 1e-9;
  });
}

// Wishes for two bowls whose bests hold one tube in common, which has less than both need.
struct Scarce {
  double at_scalp = 0, below = 0;
  std::string product;
  double grams = 0;
  Scarce() {
    for (double regrowth : {5.3, 4.5, 5.0, 5.8})
      for (double lengths : {5.6, 5.2, 4.8, 4.5})
        if (product.empty()) look(regrowth, lengths);
  }
  void look(double regrowth, double lengths) {
    TwoBowls roomy(two_spans(), regrowth, lengths);
    const Choice c = roomy.best();
    if (c.bowls.size() != 2) return;
    at_scalp = regrowth, below = lengths;
    for (const Product& p : roomy.in.shelf.products) {
      const double a = needed(roomy.in, c.bowls[0], c.bowls[0].best, p.id),
                   b = needed(roomy.in, c.bowls[1], c.bowls[1].best, p.id);
      if (p.cls != ProductClass::developer && a > 0 && b > 0) product = p.id, grams = a + b - 1;
    }
  }
};

TEST(ShareOut, TheCheapestCombinationThatCanBePoured) {
  const Scarce scarce;
  ASSERT_FALSE(scarce.product.empty()) << "both bests are to hold one tube in common";
  TwoBowls t(two_spans(), scarce.at_scalp, scarce.below, [&](Shelf& s) {
    for (Product& p : s.products)
      if (p.id == scarce.product) p.stock_g = scarce.grams;
  });
  const Choice apart = t.best();
  ASSERT_EQ(apart.bowls.size(), 2u);
  ASSERT_FALSE(pourable(t.in, apart, apart.bowls[0].best, apart.bowls[1].best));
  double least = std::numeric_limits<double>::infinity();
  for (const Candidate& a : apart.bowls[0].list)
    for (const Candidate& b : apart.bowls[1].list)
      if (pourable(t.in, apart, a, b)) least = std::min(least, a.objective + b.objective);
  Choice shared = apart;
  const auto told = share_out(t.in, shared);
  ASSERT_EQ(told.size(), 1u);
  EXPECT_EQ(told[0], scarce.product);
  EXPECT_TRUE(pourable(t.in, shared, shared.bowls[0].best, shared.bowls[1].best));
  EXPECT_NEAR(shared.bowls[0].best.objective + shared.bowls[1].best.objective, least, 1e-9);
}

TEST(ShareOut, NothingChangesWhereNothingRunsShort) {
  TwoBowls t(two_spans(), 5.3, 5.6);
  const Choice apart = t.best();
  Choice shared = apart;
  EXPECT_TRUE(share_out(t.in, shared).empty());
  EXPECT_EQ(shared.objective, apart.objective);
}

TEST(ShareOut, APlanPoursWhatTheShelfHoldsAndSaysSo) {
  const Scarce scarce;
  Shelf shelf = small_shelf(7);
  for (Product& p : shelf.products)
    if (p.id == scarce.product) p.stock_g = scarce.grams;
  const Head head = two_spans();
  ZoneAim one, other;
  one.zone = "crown/regrowth", one.level = scarce.at_scalp;
  other.zone = "crown/lengths", other.level = scarce.below;
  const auto plan = formulate(head, *aim(head, {one, other}, shelf), shelf, {});
  ASSERT_TRUE(plan);
  std::map<std::string, double> poured;
  for (const PlannedBowl& b : plan->bowls)
    for (const Part& p : b.bowl.formula.parts) poured[p.product] += p.grams;
  for (const auto& [id, grams] : poured) EXPECT_LE(grams, find_product(shelf, id)->stock_g + 1e-9) << id;
  EXPECT_TRUE(std::any_of(plan->notes.begin(), plan->notes.end(), [](const Problem& p) {
    return p.code == "shared_for_stock" || p.code == "left_out_for_stock";
  }));
  EXPECT_LE(plan->report.bound, plan->report.objective + 1e-9);
}

}  // namespace
}  // namespace strandline
