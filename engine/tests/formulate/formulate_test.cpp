#include "strandline/formulate.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/oracle/enumerate.h"
#include "engine/tests/support.h"
#include "formulate/choose.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/situation.h"

namespace strandline {
namespace {

using namespace testing_support;

std::vector<Target> all_to(const Head& h, double level, Tone tone = Tone::natural) {
  ZoneAim wish;
  wish.zone = "*";
  wish.level = level;
  wish.tone = tone;
  return *aim(h, {wish}, small_shelf());
}

FormulateOptions quick() {
  FormulateOptions o;
  o.scenarios = 8;
  return o;
}

TEST(Formulate, EveryBowlIsWeighable) {
  const Shelf s = small_shelf();
  const auto plan = formulate(two_areas(), all_to(two_areas(), 6), s, {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_FALSE(plan->bowls.empty());
  for (const PlannedBowl& b : plan->bowls) {
    double colour = 0, developer = 0;
    for (const Part& p : b.bowl.formula.parts) {
      EXPECT_GE(p.grams, 3);
      EXPECT_NEAR(std::remainder(p.grams, 0.5), 0, 1e-9);
      (find_product(s, p.product)->cls == ProductClass::developer ? developer : colour) += p.grams;
    }
    EXPECT_NEAR(developer, colour, 0.5);  // the range's own ratio
    EXPECT_LE(b.on_head_peroxide_percent, 12);
  }
  EXPECT_EQ(plan->report.stopped, "exhausted");
  EXPECT_GT(plan->report.recipes, 0);
}

TEST(Formulate, NobodyDoesBetterByHand) {
  // The plan's objective is at most that of every single shade of the shelf, worked out the slow way.
  const Head h = two_areas();
  const Shelf s = small_shelf();
  const FormulaPolicy policy;
  const std::vector<Target> targets = all_to(h, 6);
  const auto plan = formulate(h, targets, s, policy, quick());
  ASSERT_TRUE(plan);
  const Draws draws = draw(h, 8);
  const Constants c;
  for (const Product& p : s.products) {
    if (!p.swatch) continue;
    for (double percent : {3.0, 6.0}) {
      Formula f;
      f.range = "tint";
      f.parts = {{p.id, 30}, {"developer-" + std::to_string(static_cast<int>(percent)), 30}};
      double sum = 0, weight = 0;
      for (size_t z = 0; z < targets.size(); ++z) {
        f.minutes = 35 + half_touch(h, h.areas[z], h.areas[z].spans[0]);
        const auto bowl = chemistry(f, s);
        const ZoneTable t = zone_table(draws.zones[z], *bowl, draws);
        const Span& span = h.areas[z].spans[0];
        const double beyond = std::max(0.0, percent - needed_developer_percent(span, asked_lift(span, targets[z])));
        sum += targets[z].weight * (exact_mean_loss(t, zone_loss(targets[z], 1), bowl->load) +
                                    c.price_exposure * t.exposure + c.price_strength_per_percent * beyond);
        weight += targets[z].weight;
      }
      constexpr double kAround = 0.15;  // one bowl, its money, half grams
      // A plainer formula may cost what the report says it does.
      EXPECT_LE(plan->report.objective - plan->report.plain_gap, sum / weight + kAround) << p.id << " " << percent;
    }
  }
}

// Two independent routes: the enumeration's best recipe against a plain loop in double precision.
TEST(Formulate, AgreesWithAPlainLoop) {
  const Head h = two_areas();
  const Shelf s = small_shelf(3);
  const FormulaPolicy policy;
  const Domain d = domain(s, policy);
  const Draws draws = draw(h, 8);
  const std::vector<Target> targets = all_to(h, 5.5);
  std::vector<SearchZone> zs;
  const auto refs = zones(h);
  for (size_t i = 0; i < refs.size(); ++i) {
    SearchZone z;
    z.area = refs[i].area, z.span = refs[i].span, z.draws = &draws.zones[i], z.target = &targets[i];
    z.price = zone_loss(targets[i], 1);
    zs.push_back(z);
  }
  const std::vector<ZoneGroup> groups = group_zones(zs);
  const Enumeration found = enumerate(d, zs, groups, draws, 2, policy, quick());
  BowlSearch tables(d, zs, draws, 2, policy, quick());
  ChoiceInput in{h, s, policy, d, zs, draws, 2, [&](int setting, int zone, double minutes) -> const ZoneTable& {
                   return tables.table(setting, zone, minutes);
                 }};
  for (size_t mask = 1; mask < found.best.size(); ++mask) {
    std::vector<int> served;
    for (size_t g = 0; g < groups.size(); ++g)
      if (mask >> g & 1) served.insert(served.end(), groups[g].zones.begin(), groups[g].zones.end());
    double best = 1e9;
    for (size_t k = 0; k < d.settings.size(); ++k)
      for (const Shares& shares : d.sets[0].shares())
        best = std::min(best, exact_objective(in, {0, 0, static_cast<int>(k), shares}, served));
    ASSERT_FALSE(found.best[mask].empty());
    double kept = 1e9;
    for (const Candidate& c : found.best[mask]) kept = std::min(kept, exact_objective(in, c, served));
    EXPECT_NEAR(kept, best, 1e-12);
  }
}

TEST(Formulate, ThreadsDoNotChangeThePlan) {
  FormulateOptions backwards = quick();
  backwards.parallel = [](int count, const std::function<void(int, int)>& body) {
    for (int i = count; i-- > 0;) body(i, i + 1);
  };
  const auto a = formulate(two_areas(), all_to(two_areas(), 6), small_shelf(), {}, quick());
  const auto b = formulate(two_areas(), all_to(two_areas(), 6), small_shelf(), {}, backwards);
  ASSERT_TRUE(a && b);
  ASSERT_EQ(a->bowls.size(), b->bowls.size());
  for (size_t i = 0; i < a->bowls.size(); ++i) EXPECT_EQ(a->bowls[i].objective, b->bowls[i].objective);
}

TEST(Formulate, CancelledSaysSo) {
  FormulateOptions o = quick();
  int asked = 0;
  o.cancelled = [&] { return ++asked > 1; };
  const auto plan = formulate(two_areas(), all_to(two_areas(), 6), small_shelf(), {}, o);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->report.stopped, "cancelled");
}

TEST(Formulate, ColourDoesNotLiftColour) {
  Head h = two_areas();
  for (Area& a : h.areas) {
    Span lengths = span("lengths", 5, 20, 0, 4);
    lengths.populations[0].origin = ColourOrigin::tinted;
    a.spans = {lengths};
  }
  const auto plan = formulate(h, all_to(h, 7), small_shelf(), {}, quick());
  ASSERT_TRUE(plan);
  for (const ZonePlan& z : plan->zones) {
    EXPECT_FALSE(z.reachable);
    EXPECT_TRUE(std::any_of(z.why_not.begin(), z.why_not.end(),
                            [](const Problem& p) { return p.code == "colour_does_not_lift_colour"; }));
  }
}

TEST(Formulate, FailedWetStretchKeepsStrongDeveloperAway) {
  Head h = two_areas();
  for (Area& a : h.areas) a.spans[0].wet_stretch_percent = 20;
  const auto plan = formulate(h, all_to(h, 7), small_shelf(), {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_FALSE(plan->bowls.empty());
  for (const PlannedBowl& b : plan->bowls) EXPECT_LT(b.recipe.developer_percent, 6);
}

TEST(Formulate, StockIsNeverOverspent) {
  Shelf s = small_shelf();
  for (Product& p : s.products)
    if (p.swatch) p.stock_g = 14;
  const auto plan = formulate(two_areas(), all_to(two_areas(), 6), s, {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_FALSE(plan->bowls.empty());
  std::map<std::string, double> used;
  for (const PlannedBowl& b : plan->bowls)
    for (const Part& p : b.bowl.formula.parts) used[p.product] += p.grams;
  for (const auto& [id, g] : used) EXPECT_LE(g, find_product(s, id)->stock_g);
}

TEST(Formulate, ShelfWithoutDevelopersSaysSo) {
  Shelf s = small_shelf();
  std::erase_if(s.products, [](const Product& p) { return p.cls == ProductClass::developer; });
  const auto plan = formulate(two_areas(), all_to(two_areas(), 6), s, {}, quick());
  ASSERT_TRUE(plan);
  EXPECT_TRUE(plan->bowls.empty());
  ASSERT_FALSE(plan->notes.empty());
  EXPECT_EQ(plan->notes[0].code, "no_range_usable");
  EXPECT_EQ(plan->zones.size(), 2u) << "the head is shown all the same";
}

// What a corrector is said to do is what it does: without one that warms, the result is cooler.
TEST(Formulate, ACorrectorIsSaidToWarmWhereItDoes) {
  Shelf shelf = small_shelf(7);
  for (Product& p : shelf.products)
    if (p.swatch) p.swatch = dyed_white(p.level, Tone::natural);  // so that only a corrector makes ash
  for (const bool yellow : {true, false}) {
    Product p = shelf.products[0];
    p.id = p.name = yellow ? "corrector yellow" : "corrector blue";
    p.cls = ProductClass::corrector, p.level = 0;
    Fibre f;
    for (int b = 0; b < kBands; ++b) {
      const double from = band_nm(b) - (yellow ? 430 : 600);
      f.dye[b] = 0.4 * std::exp(-from * from / 5000);
    }
    p.swatch = reflectance(optical_depth(f, pigments(Constants{})));
    shelf.products.push_back(p);
  }
  int warming = 0, countering = 0;
  for (double level : {4.0, 5.0, 6.0, 7.0, 8.0})
    for (Tone tone : {Tone::gold, Tone::ash}) {
      ZoneAim wish;
      wish.zone = "*", wish.level = level, wish.tone = tone;
      const auto plan = formulate(two_areas(), *aim(two_areas(), {wish}, shelf), shelf, {}, quick());
      ASSERT_TRUE(plan);
      for (const PlannedBowl& b : plan->bowls)
        for (const Problem& why : b.why) {
          if (why.code != "warming_tone" && why.code != "counter_tone") continue;
          const bool warms = why.code == "warming_tone";
          ++(warms ? warming : countering);
          EXPECT_EQ(warms, why.params.at("product") == "corrector yellow");
        }
    }
  EXPECT_GT(warming, 0);
  EXPECT_GT(countering, 0);
}

// Where the bowls together need more of a tube than there is, what is proven still holds for every way of sharing it.
TEST(Formulate, ATubeSharedByTwoBowlsLeavesAnHonestGap) {
  Head h = two_areas();
  for (Area& a : h.areas) {
    Span lengths = span("lengths", a.spans[0].to_cm, a.spans[0].to_cm + 6, 0, 5);
    a.spans.push_back(lengths);
  }
  Shelf ample = small_shelf();
  for (Product& p : ample.products) p.stock_g = 5000;
  // The first wish for which two bowls take of one tube; then there is enough of it for one of them.
  Result<Plan> free;
  Shelf scarce = ample;
  bool shared = false;
  double wish = 4.5;
  for (; wish <= 7.5; wish += 0.5) {
    free = formulate(h, all_to(h, wish), ample, {}, quick());
    ASSERT_TRUE(free);
    std::map<std::string, double> most, sum;
    for (const PlannedBowl& b : free->bowls)
      for (const Part& p : b.bowl.formula.parts)
        sum[p.product] += p.grams, most[p.product] = std::max(most[p.product], p.grams);
    for (Product& p : scarce.products)
      if (p.swatch && sum[p.id] > most[p.id]) p.stock_g = most[p.id], shared = true;
    if (shared) break;
  }
  ASSERT_TRUE(shared);
  const auto plan = formulate(h, all_to(h, wish), scarce, {}, quick());
  ASSERT_TRUE(plan);
  EXPECT_TRUE(std::any_of(plan->notes.begin(), plan->notes.end(), [](const Problem& p) {
    return p.code == "left_out_for_stock" || p.code == "shared_for_stock";
  }));
  EXPECT_GE(plan->report.bound, free->report.bound - 1e-6) << "less to choose from";
  EXPECT_LE(plan->report.bound, plan->report.objective + 1e-9);
  EXPECT_NEAR(plan->report.gap, plan->report.objective - plan->report.plain_gap - plan->report.bound, 1e-12);
  EXPECT_GT(plan->report.gap, 0);
}

// More zones than are searched apart: those of another history stay apart, and what is proven counts every way to
// share.
TEST(Formulate, ManyZonesAreGroupedByHistoryAndTheBoundStaysTrue) {
  Head h;
  for (int i = 0; i < 8; ++i) {
    Span s = span("regrowth", 0, 2, 0, 5);
    s.history_unknown = i == 0;
    h.areas.push_back(area("area " + std::to_string(i), AreaKind::other, 80, {s}));
  }
  const auto targets = all_to(h, 6);
  const Situation now = at_start(h, 8);
  const std::vector<SearchZone> zones = search_zones(now, targets, {});
  const std::vector<ZoneGroup> groups = group_zones(zones);
  EXPECT_EQ(groups.size(), static_cast<size_t>(kGroupsMost));
  for (const ZoneGroup& g : groups)
    if (std::find(g.zones.begin(), g.zones.end(), 0) != g.zones.end()) EXPECT_EQ(g.zones.size(), 1u);
  const auto plan = formulate(h, targets, small_shelf(), {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_FALSE(plan->bowls.empty());
  for (const PlannedBowl& b : plan->bowls)
    EXPECT_EQ(std::count(b.bowl.zones.begin(), b.bowl.zones.end(), "area 0/regrowth"), 0) << "no peroxide there";
  EXPECT_LT(plan->report.bound, plan->report.objective);
}

TEST(Formulate, WhatIsLeftAloneIsNotTouched) {
  const Head h = two_areas();
  ZoneAim leave, wish;
  leave.zone = "crown/regrowth", leave.leave = true;
  wish.zone = "*", wish.level = 6;
  const auto targets = aim(h, {leave, wish}, small_shelf());
  ASSERT_TRUE(targets);
  const auto plan = formulate(h, *targets, small_shelf(), {}, quick());
  ASSERT_TRUE(plan);
  ASSERT_FALSE(plan->bowls.empty());
  for (const PlannedBowl& b : plan->bowls)
    EXPECT_EQ(std::count(b.bowl.zones.begin(), b.bowl.zones.end(), "crown/regrowth"), 0);
}

RC_GTEST_PROP(Formulate, BlendedBottlesMakeTheStrength, ()) {
  Shelf s = small_shelf();
  const double percent = *rc::gen::element(3.0, 4.5, 6.0), grams = *rc::gen::inRange(20, 200) / 2.0;
  const std::vector<Part> parts = bottles(s, percent, grams, 0.5);
  double sum = 0, peroxide = 0;
  for (const Part& p : parts) sum += p.grams, peroxide += p.grams * find_product(s, p.product)->peroxide_percent;
  RC_ASSERT(std::abs(sum - grams) < 1e-9);
  RC_ASSERT(std::abs(peroxide / sum - percent) <= 3 * 0.25 / grams + 1e-9);
}

}  // namespace
}  // namespace strandline
