// Any order of steps: properties of sequences on the same state.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "engine/tests/support.h"
#include "strandline/predict.h"

namespace strandline {
namespace {

using namespace testing_support;

Lab colour(const Fibre& f) {
  return lab(reflectance(optical_depth(f, pigments(Constants{}))), weights(Light::daylight, Observer::cie_1964_10deg));
}

// A bowl of a class as one fibre away from the scalp feels it.
Treatment bowl(ProductClass cls, double peroxide, double minutes, double depth = 0) {
  BowlChemistry b;
  b.cls = cls;
  b.peroxide_percent = peroxide;
  b.minutes = b.reference_minutes = minutes;
  b.load.fill(depth);
  return treatment(b, 5, 15, Constants{});
}

Fibre after(const Fibre& f, const Treatment& t) { return treated(f, t, selectivity(f, Constants{}), Constants{}); }

const std::vector<ProductClass> kClasses = {
    ProductClass::permanent, ProductClass::high_lift,    ProductClass::demi,   ProductClass::lightener,
    ProductClass::clear,     ProductClass::corrector,    ProductClass::direct, ProductClass::filler,
    ProductClass::remover,   ProductClass::pre_treatment};

RC_GTEST_PROP(Steps, AnyOrderLeavesAStateThatMakesSense, ()) {
  Fibre f = natural_fibre(*rc::gen::inRange(10, 100) / 10.0, Tone::natural);
  f.resistance = *rc::gen::inRange(0, 100) / 100.0;
  for (int step = 0; step < 4; ++step) {
    const Fibre before = f;
    f = after(f, bowl(*rc::gen::elementOf(kClasses), *rc::gen::inRange(0, 60) / 10.0, *rc::gen::inRange(0, 50),
                      *rc::gen::inRange(0, 300) / 1000.0));
    RC_ASSERT(f.eumelanin >= 0 && f.eumelanin <= before.eumelanin);
    RC_ASSERT(f.pheomelanin >= 0 && f.pheomelanin <= before.pheomelanin);
    RC_ASSERT(f.oxidised >= 0 && f.eumelanin + f.oxidised <= before.eumelanin + before.oxidised + 1e-12);
    RC_ASSERT(f.yellow_lost >= before.yellow_lost && f.yellow_lost <= 1);
    RC_ASSERT(f.porosity >= before.porosity && f.porosity <= 3);
    RC_ASSERT(f.resistance >= 0 && f.resistance <= before.resistance);
    for (double d : f.dye) RC_ASSERT(d >= 0 && std::isfinite(d));
  }
}

RC_GTEST_PROP(Steps, WithoutPeroxideNoClassTouchesThePigment, ()) {
  const Fibre f = natural_fibre(*rc::gen::inRange(10, 100) / 10.0, Tone::natural);
  const Fibre g = after(f, bowl(*rc::gen::elementOf(kClasses), 0, 30, 0.2));
  RC_ASSERT(g.eumelanin == f.eumelanin && g.pheomelanin == f.pheomelanin && g.porosity == f.porosity);
}

TEST(Steps, SoftenedResistantWhiteTakesMore) {
  Fibre white;
  white.resistance = 1;
  const Treatment soften = bowl(ProductClass::pre_treatment, 3, 10), tint = bowl(ProductClass::permanent, 3, 35, 0.3);
  EXPECT_LT(colour(after(after(white, soften), tint)).l, colour(after(white, tint)).l - 0.5);
}

TEST(Steps, FillThenTintIsDeeperAndWarmerThanTintAlone) {
  Fibre light = lightened(natural_fibre(5, Tone::natural), Treatment{.exposure = 7}, Constants{});
  light.porosity = 2;
  Treatment fill = bowl(ProductClass::filler, 0, 15);
  for (int b = 0; b < kBands; ++b) fill.load[b] = 0.25 * std::exp(-std::pow((band_nm(b) - 470) / 50, 2) / 2);
  const Treatment tint = bowl(ProductClass::demi, 1, 20, 0.15);
  const Lab with = colour(after(after(light, fill), tint)), without = colour(after(light, tint));
  EXPECT_LT(with.l, without.l);
  EXPECT_GT(with.a, without.a + 1);
}

TEST(Steps, ARemoverTakesTheTintAndLeavesTheHair) {
  const Fibre natural = natural_fibre(6, Tone::natural);
  Fibre tinted = natural;
  for (double& d : tinted.dye) d = 0.3;
  const Fibre undone = after(tinted, bowl(ProductClass::remover, 0, 35));
  EXPECT_EQ(undone.eumelanin, natural.eumelanin);
  EXPECT_LT(undone.dye[10], 0.2 * tinted.dye[10]);
  // Then the next tint lands near what it gives on hair that was never tinted, and far from tint on tint.
  const Treatment tint = bowl(ProductClass::permanent, 3, 35, 0.1);
  const double clean = colour(after(natural, tint)).l, reached = colour(after(undone, tint)).l;
  EXPECT_LT(std::abs(reached - clean), 0.4 * std::abs(colour(after(tinted, tint)).l - clean));
}

// Common practice: colour does not lift colour, lightener does.
TEST(Steps, TintLeavesATintAndLightenerDoesNot) {
  Fibre tinted = natural_fibre(6, Tone::natural);
  for (double& d : tinted.dye) d = 0.3;
  EXPECT_GT(after(tinted, bowl(ProductClass::permanent, 3, 35)).dye[10], 0.9 * 0.3);
  EXPECT_LT(after(tinted, bowl(ProductClass::lightener, 4, 40)).dye[10], 0.3 * 0.3);
}

TEST(Steps, DampHairDilutesTheToner) {
  BowlChemistry toner;
  toner.cls = ProductClass::demi;
  toner.peroxide_percent = 1;
  toner.minutes = toner.reference_minutes = 20;
  toner.load.fill(0.2);
  const Fibre light = lightened(natural_fibre(5, Tone::natural), Treatment{.exposure = 7}, Constants{});
  BowlChemistry damp = toner;
  damp.damp_hair = true;
  const Constants c;
  EXPECT_GT(colour(after(light, treatment(damp, 5, 15, c))).l, colour(after(light, treatment(toner, 5, 15, c))).l);
}

// Warmth of the scalp (common practice: the first 1.3–2.5 cm): highest at the skin, none in the lengths.
TEST(Steps, ScalpHeatFallsAlongTheHair) {
  BowlChemistry b;
  b.peroxide_percent = 3;
  b.minutes = 35;
  const Constants c;
  auto at = [&](double from, double to) { return treatment(b, from, to, c).exposure; };
  EXPECT_GT(at(0, 0.5), at(0.5, 1));
  EXPECT_GT(at(0, 1), at(1, 2));
  EXPECT_NEAR(at(0, 2), (at(0, 1) + at(1, 2)) / 2, 1e-12) << "the mean over a span is that of its halves";
  EXPECT_NEAR(at(4, 5), at(10, 20), 1e-12);
  EXPECT_NEAR(at(0, 1e-9) / at(10, 20), c.scalp_heat_factor, 1e-3);
}

TEST(Steps, DoubtSharesAddUpAndFollowTheReading) {
  Head h = two_areas();
  Formula f;
  f.range = "tint";
  f.parts = {{"shade-2", 30}, {"developer-6", 30}};
  f.minutes = 35;
  PredictOptions how;
  how.attribute_doubt = true;
  auto share = [&](DoubtSource source) {
    const auto p = predict(h, {{f, {"front hairline/regrowth"}}}, small_shelf(), {}, how);
    double sum = 0, found = -1;
    for (const DoubtShare& d : p->zones[0].doubt) {
      sum += d.share;
      if (d.source == source) found = d.share;
    }
    EXPECT_NEAR(sum, 1, 1e-12);
    return found;
  };
  const double as_read = share(DoubtSource::white_share);
  h.areas[0].spans[0].populations[1].share.sd = 0.2;
  EXPECT_GT(share(DoubtSource::white_share), as_read);
  h.areas[0].spans[0].populations[1].share.sd = 0;
  EXPECT_LT(share(DoubtSource::white_share), 1e-9);
}

TEST(Steps, DoubtIsSaidOnlyWhenAskedFor) {
  Formula f;
  f.range = "tint";
  f.parts = {{"shade-2", 30}, {"developer-6", 30}};
  f.minutes = 35;
  const std::vector<Step> steps{{f, {"front hairline/regrowth"}}};
  EXPECT_TRUE(predict(two_areas(), steps, small_shelf())->zones[0].doubt.empty());
  PredictOptions how;
  how.attribute_doubt = true;
  const auto p = predict(two_areas(), steps, small_shelf(), {}, how);
  const auto alone = doubt_of(two_areas(), steps, small_shelf());
  ASSERT_TRUE(p && alone);
  ASSERT_EQ(alone->size(), 2u);
  for (size_t z = 0; z < 2; ++z) {
    EXPECT_EQ((*alone)[z].zone, p->zones[z].zone);
    ASSERT_EQ((*alone)[z].shares.size(), p->zones[z].doubt.size());
    EXPECT_EQ((*alone)[z].shares[0].share, p->zones[z].doubt[0].share);
  }
}

TEST(Steps, DoubtIsSaidTheMostFirst) {
  using enum DoubtSource;
  EXPECT_TRUE(doubt_reasons({}).empty());
  const Problems one = doubt_reasons({{porosity, 0.7}, {uptake, 0.3}});
  ASSERT_EQ(one.size(), 1u);
  EXPECT_EQ(one[0].code, "doubt_from_porosity");
  EXPECT_EQ(one[0].params.at("percent"), "70");
  EXPECT_EQ(doubt_reasons({{white_share, 0.5}, {blend, 0.4}, {uptake, 0.1}}).size(), 2u);
}

TEST(Steps, DoubtOfAnUnknownZoneIsAProblem) {
  Formula f;
  f.range = "tint";
  f.parts = {{"shade-2", 30}};
  const auto d = doubt_of(two_areas(), {{f, {"nowhere"}}}, small_shelf());
  ASSERT_FALSE(d);
  EXPECT_EQ(d.error()[0].path, "/steps/0/zones/0");
}

}  // namespace
}  // namespace strandline
