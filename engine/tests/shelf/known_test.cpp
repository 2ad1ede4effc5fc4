#include <gtest/gtest.h>

#include <cmath>

#include "engine/tests/support.h"
#include "predict/steps.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

using namespace testing_support;

Lab colour(const Fibre& f) {
  return lab(reflectance(optical_depth(f, pigments(Constants{}))), weights(Light::daylight, Observer::cie_1964_10deg));
}

Fibre after(const Fibre& f, const Spectrum& load, double percent) {
  BowlChemistry bowl;
  bowl.peroxide_percent = percent / 2;
  bowl.minutes = bowl.reference_minutes = 35;
  bowl.load = load;
  const Constants c;
  return treated(f, treatment(bowl, 5, 6, c), selectivity(f, c), c);
}

Shelf named_shelf(Tone tone = Tone::natural) {
  Shelf s = small_shelf();
  for (Product& p : s.products) p.swatch.reset(), p.tone = tone;
  return s;
}

// The rule of the trade that a name is kept on hair of its own level: level and tone, not by a swatch on white.
TEST(KnownBy, ANameIsKeptOnNaturalHairOfItsOwnLevel) {
  for (const Tone tone : {Tone::natural, Tone::ash, Tone::gold, Tone::copper, Tone::red})
    for (double level : {5.0, 6.0, 7.0}) {
      const Spectrum load = promised_load(ProductClass::permanent, level, tone, Constants{});
      const Lab got = colour(after(natural_fibre(level, Tone::natural), load, 6)), said = colour_of(level, tone);
      EXPECT_NEAR(level_of_lightness(got.l), level, 0.25) << level << ' ' << word(tone);
      EXPECT_LT(std::hypot(got.a - said.a, got.b - said.b), 3) << level << ' ' << word(tone);
      // On white it is a check: not far from its name, and never darker by a level.
      EXPECT_NEAR(level_of_lightness(colour(after(white_fibre(), load, 6)).l), level + 1, 1.5)
          << level << ' ' << word(tone);
    }
}

TEST(KnownBy, AWishForANamedShadeIsTheSameInWords) {
  const Shelf s = named_shelf(Tone::copper);
  ZoneAim shade, words;
  shade.zone = words.zone = "*";
  shade.shade = s.products[3].id;
  words.level = 7, words.tone = Tone::copper;
  const auto by_shade = aim(two_areas(), {shade}, s), in_words = aim(two_areas(), {words}, s);
  ASSERT_TRUE(by_shade && in_words);
  EXPECT_EQ(by_shade->front().lab.l, in_words->front().lab.l);
  EXPECT_EQ(by_shade->front().lab.a, in_words->front().lab.a);
  EXPECT_EQ(by_shade->front().lab.b, in_words->front().lab.b);
}

// A swatch made on brown hair tells the same load as the swatch of the same shade on white.
TEST(KnownBy, ASwatchOnStatedHairTellsTheSameShade) {
  Shelf s = small_shelf();
  const Range& range = s.ranges[0];
  for (double level : {6.0, 8.0}) {
    Product p = s.products[0];
    const Spectrum truth = offered(p, range);
    p.swatch = reflectance(
        optical_depth(after(natural_fibre(level, Tone::natural), saturated(truth), 6), pigments(Constants{})));
    p.swatch_on = SwatchHair{};
    p.swatch_on->level = level;
    EXPECT_EQ(known_by(p), KnownBy::stated_hair);
    const Spectrum found = offered(p, range);
    for (int b = 0; b < kBands; ++b) EXPECT_NEAR(found[b], truth[b], 0.03 * truth[b] + 1e-3) << level << ' ' << b;
  }
}

// Common practice: a demi is mixed 1 : 2 with 1.5 to 2 % for 20 minutes and hardly lifts; nobody types that into a
// shelf.
TEST(KnownBy, ARangeThatTellsNoProcessHasTheUsualOneOfItsClass) {
  Range demi;
  demi.cls = ProductClass::demi;
  EXPECT_NEAR(reference(demi).developer_percent, 1.75, 0.25);
  EXPECT_EQ(reference(demi).ratio, 2);
  EXPECT_EQ(reference(demi).minutes, 20);
  EXPECT_LT(alkaline_lift(demi), 0.4);
  EXPECT_EQ(alkaline_lift(Range{}), 1);
  demi.reference = ReferenceProcess{3, 1, 10};
  demi.alkaline_lift = 0.02;
  EXPECT_EQ(reference(demi).minutes, 10);
  EXPECT_EQ(alkaline_lift(demi), 0.02);
}

TEST(KnownBy, WhatIsLearnedIsWhatIsOffered) {
  Shelf s = named_shelf();
  const Spectrum before = offered(s.products[1], s.ranges[0]);
  learn(s);
  ASSERT_TRUE(s.products[1].offer);
  EXPECT_EQ(*s.products[1].offer, before);
}

TEST(KnownBy, ContradictionsAreToldWithTheirPlace) {
  const auto problem = [](auto change) {
    Shelf s = small_shelf();
    change(s.products[1]);
    const Problems all = check(s);
    return all.size() == 1 ? all[0].code + " " + all[0].path : std::to_string(all.size()) + " problems";
  };
  const std::string at = "/shelf/products/1";
  EXPECT_EQ(problem([](Product& p) { p.known_by = KnownBy::name; }), "swatch_besides_name " + at + "/swatch");
  EXPECT_EQ(problem([](Product& p) { p.known_by = KnownBy::white_hair, p.swatch.reset(); }),
            "swatch_missing " + at + "/known_by");
  EXPECT_EQ(problem([](Product& p) { p.known_by = KnownBy::stated_hair; }), "swatch_hair_missing " + at + "/known_by");
  EXPECT_EQ(problem([](Product& p) { p.known_by = KnownBy::white_hair, p.swatch_on = SwatchHair{.level = 6}; }),
            "swatch_hair_besides_white " + at + "/swatch_on");
  EXPECT_EQ(problem([](Product& p) { p.swatch.reset(), p.level = 0; }), "name_is_no_colour " + at + "/level");
  EXPECT_EQ(problem([](Product& p) { p.swatch_on = SwatchHair{.level = 14}; }),
            "level_out_of_range " + at + "/swatch_on/level");
  EXPECT_EQ(problem([](Product& p) { p.swatch->fill(0.9), p.swatch_on = SwatchHair{.level = 3}; }),
            "swatch_lighter_than_its_hair " + at + "/swatch");
  Shelf s = small_shelf();
  s.products[5].known_by = KnownBy::name;
  ASSERT_EQ(check(s).size(), 1u);
  EXPECT_EQ(check(s)[0].code, "known_by_without_colour");
}

// The same load, once measured and once by its name: the name leaves more open, in the prediction alone.
TEST(KnownBy, ANameLeavesMoreOpenThanASwatch) {
  const auto spread = [](bool named) {
    Shelf s = small_shelf();
    Product& p = s.products[2];
    p.offer = offered(p, s.ranges[0]);
    if (named) p.swatch.reset();
    const Formula f{"tint", {{p.id, 30}, {"developer-6", 30}}, 35, false};
    Draws draws = draw(two_areas(), 256);
    const auto bowl = chemistry(f, s);
    apply(*bowl, draws.zones[0], draws);
    double mean = 0, sum = 0;
    for (const ZoneState& z : draws.zones[0].scenarios) mean += colour(z.fibres[0]).l / 256;
    for (const ZoneState& z : draws.zones[0].scenarios) sum += std::pow(colour(z.fibres[0]).l - mean, 2) / 256;
    return std::sqrt(sum);
  };
  EXPECT_GT(spread(true), 1.05 * spread(false));
}

}  // namespace
}  // namespace strandline
