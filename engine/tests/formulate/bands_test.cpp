// Evenness is part of the wish: nobody gets a band unsaid, and white decides who shares a bowl.
#include "formulate/bands.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

ZonePlan looks(const std::string& zone, double level, double today) {
  ZonePlan p;
  p.result.zone = zone;
  p.result.planned.named.level = level;
  p.result.today.named.level = today;
  return p;
}

Head bands_head() {
  Head h;
  h.areas.push_back(area("top", AreaKind::top, 150, {span("regrowth", 0, 2, 0, 5), span("lengths", 2, 20, 0, 6)}));
  h.areas.push_back(area("crown", AreaKind::crown, 150, {span("regrowth", 0, 2, 0, 5), span("lengths", 2, 20, 0, 6)}));
  h.areas.push_back(area("hairline", AreaKind::front_hairline, 50, {span("regrowth", 0, 2, 0, 5)}));
  return h;
}

TEST(Bands, EveryHalfLevelBetweenNeighboursIsNamed) {
  const Head head = bands_head();
  const std::vector<ZonePlan> zones = {looks("top/regrowth", 6.6, 5), looks("top/lengths", 6, 6),
                                       looks("crown/regrowth", 6.3, 5), looks("crown/lengths", 6, 6),
                                       looks("hairline/regrowth", 5, 5)};
  const std::vector<Band> all = bands(head, {}, zones);
  ASSERT_EQ(all.size(), 2u);  // top regrowth on its lengths, and beside the hairline; the crown does not meet that
  EXPECT_EQ(all[0].lighter, "top/regrowth");
  EXPECT_EQ(all[0].darker, "hairline/regrowth");
  EXPECT_NEAR(all[0].levels, 1.6, 1e-9);
  EXPECT_EQ(all[1].darker, "top/lengths");
  EXPECT_NEAR(all[1].today, -1, 1e-9);
  EXPECT_EQ(told_bands(all).size(), all.size());
}

TEST(Bands, AShadowBesideHairThatStaysIsToldAsWished) {
  const Head head = bands_head();
  const std::vector<ZonePlan> zones = {looks("top/regrowth", 5, 5), looks("top/lengths", 6.4, 6.4)};
  std::vector<Target> wishes(2);
  wishes[0].zone = "top/regrowth", wishes[0].level = 5;
  wishes[1].zone = "top/lengths", wishes[1].leave = true;
  EXPECT_EQ(told_bands(bands(head, wishes, zones))[0].code, "band");
  wishes[0].shadow = 1.4;
  EXPECT_EQ(told_bands(bands(head, wishes, zones))[0].code, "band_wished");
}

TEST(Bands, WhatWasWishedIsToldAsWished) {
  const Head head = bands_head();
  std::vector<Target> wishes(2);
  wishes[0].zone = "top/regrowth", wishes[0].level = 5;
  wishes[1].zone = "top/lengths", wishes[1].level = 8;
  const std::vector<ZonePlan> zones = {looks("top/regrowth", 5, 5), looks("top/lengths", 8, 6),
                                       looks("crown/regrowth", 5, 5), looks("crown/lengths", 8, 6),
                                       looks("hairline/regrowth", 5, 5)};
  const std::vector<Band> all = bands(head, wishes, zones);
  ASSERT_EQ(all.size(), 2u);
  const Problems told = told_bands(all);
  EXPECT_EQ(std::count_if(told.begin(), told.end(), [](const Problem& p) { return p.code == "band_wished"; }), 1);
  EXPECT_EQ(std::count_if(told.begin(), told.end(), [](const Problem& p) { return p.code == "band"; }), 1);
}

TEST(Bands, PacketsAreContrastOnPurpose) {
  Head head = bands_head();
  head.areas[0].woven = Weave{};
  const std::vector<ZonePlan> zones = {looks("top/regrowth", 9, 5), looks("top/lengths", 9, 6),
                                       looks("crown/regrowth", 5, 5), looks("crown/lengths", 5, 6),
                                       looks("hairline/regrowth", 5, 5)};
  EXPECT_TRUE(bands(head, {}, zones).empty());
}

// No plan with a visible difference between neighbours keeps it to itself.
TEST(Bands, NoPlanKeepsOneToItself) {
  for (const double wish : {4.0, 6.0, 7.0}) {
    Head head = bands_head();
    for (Area& a : head.areas)
      if (a.spans.size() > 1)
        for (Population& p : a.spans[1].populations) p.origin = ColourOrigin::tinted;
    ZoneAim own;
    own.zone = "*", own.level = wish;
    FormulateOptions quick;
    quick.scenarios = 8;
    const auto plan = formulate(head, *aim(head, {own}, small_shelf(7)), small_shelf(7), {}, quick);
    ASSERT_TRUE(plan);
    const auto told = std::count_if(plan->notes.begin(), plan->notes.end(),
                                    [](const Problem& p) { return p.code == "band" || p.code == "band_wished"; });
    EXPECT_EQ(static_cast<size_t>(told), plan->bands.size()) << wish;
    const auto& zones = plan->zones;
    for (size_t z : {0u, 2u})
      if (std::abs(zones[z].result.planned.named.level - zones[z + 1].result.planned.named.level) >= 0.5)
        EXPECT_TRUE(std::any_of(plan->bands.begin(), plan->bands.end(), [&](const Band& b) {
          return (b.lighter == zones[z].result.zone && b.darker == zones[z + 1].result.zone) ||
                 (b.darker == zones[z].result.zone && b.lighter == zones[z + 1].result.zone);
        })) << wish;
  }
}

Plan plan_of(const Head& head, const FormulaPolicy& policy = {}) {
  ZoneAim wish;
  wish.zone = "*", wish.level = 5;
  FormulateOptions quick;
  quick.scenarios = 16;
  return *formulate(head, *aim(head, {wish}, small_shelf(7)), small_shelf(7), policy, quick);
}

Head three(double a, double b, double c) {
  Head h;
  h.areas.push_back(area("top", AreaKind::top, 150, {span("regrowth", 0, 2, a, 4)}));
  h.areas.push_back(area("crown", AreaKind::crown, 140, {span("regrowth", 0, 2, b, 4)}));
  h.areas.push_back(area("nape", AreaKind::nape, 120, {span("regrowth", 0, 2, c, 4)}));
  return h;
}

const PlannedBowl* bowl_on(const Plan& plan, const std::string& zone) {
  for (const PlannedBowl& b : plan.bowls)
    if (std::find(b.bowl.zones.begin(), b.bowl.zones.end(), zone) != b.bowl.zones.end()) return &b;
  return nullptr;
}

TEST(White, FarApartItHasBowlsOfItsOwn) {
  const Plan apart = plan_of(three(0.7, 0.65, 0.1)), alike = plan_of(three(0.5, 0.45, 0.4));
  ASSERT_TRUE(bowl_on(apart, "top/regrowth") && bowl_on(apart, "nape/regrowth"));
  EXPECT_EQ(bowl_on(apart, "top/regrowth"), bowl_on(apart, "crown/regrowth"));
  EXPECT_NE(bowl_on(apart, "top/regrowth"), bowl_on(apart, "nape/regrowth"));
  EXPECT_EQ(bowl_on(alike, "top/regrowth"), bowl_on(alike, "nape/regrowth"));
  FormulaPolicy one;
  one.bowls_max = 1;  // a house that mixes one bowl gets one, and no zone is forgotten for it
  EXPECT_EQ(plan_of(three(0.7, 0.65, 0.1), one).bowls.size(), 1u);
}

std::string recipe_text(const PlannedBowl& b) {
  std::string text = b.recipe.range + " " + std::to_string(b.recipe.developer_percent);
  for (const Share& s : b.recipe.shares) text += " " + std::to_string(s.eighths) + s.product;
  return text;
}

// What comes out the same for zones that were kept apart is mixed once.
TEST(White, TheSameFormulaIsMixedOnce) {
  for (double top : {0.9, 0.7, 0.5, 0.35})
    for (double nape : {0.0, 0.05, 0.15}) {
      const Plan plan = plan_of(three(top, top, nape));
      for (size_t a = 0; a < plan.bowls.size(); ++a)
        for (size_t b = 0; b < a; ++b)
          EXPECT_NE(recipe_text(plan.bowls[a]), recipe_text(plan.bowls[b])) << top << ' ' << nape;
      EXPECT_GE(plan.report.gap, -1e-9);
    }
}

// In which order areas are told changes no recipe; nor does an area that nobody asks for.
TEST(White, OrderAndUntouchedAreasChangeNoRecipe) {
  const Head head = three(0.7, 0.65, 0.1);
  Head turned = head;
  std::swap(turned.areas[0], turned.areas[2]);
  Head more = head;
  more.areas.push_back(area("sides", AreaKind::sides, 150, {span("regrowth", 0, 2, 0, 9)}));
  const Shelf shelf = small_shelf(7);
  auto plan = [&](const Head& h) {
    std::vector<ZoneAim> wishes;
    for (const char* a : {"top", "crown", "nape"}) {
      ZoneAim w;
      w.zone = std::string(a) + "/regrowth", w.level = 5;
      wishes.push_back(w);
    }
    FormulateOptions quick;
    quick.scenarios = 1;  // the nominal hair: readings of another head are drawn otherwise
    FormulaPolicy policy;
    return *formulate(h, *aim(h, wishes, shelf), shelf, policy, quick);
  };
  const Plan first = plan(head), second = plan(turned), third = plan(more);
  for (const char* zone : {"top/regrowth", "crown/regrowth", "nape/regrowth"}) {
    ASSERT_TRUE(bowl_on(first, zone) && bowl_on(second, zone) && bowl_on(third, zone)) << zone;
    EXPECT_EQ(recipe_text(*bowl_on(first, zone)), recipe_text(*bowl_on(second, zone))) << zone;
    EXPECT_EQ(recipe_text(*bowl_on(first, zone)), recipe_text(*bowl_on(third, zone))) << zone;
  }
  EXPECT_EQ(bowl_on(third, "sides/regrowth"), nullptr);
}

}  // namespace
}  // namespace strandline
