#include <gtest/gtest.h>

#include <cmath>

#include "evidence/learned_salon.h"
#include "learned/response.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/levels.h"
#include "strandline/predict.h"

namespace strandline::learned {
namespace {

std::vector<truth::Record> records(int people, int visits, double wrong = 0) {
  return simulate_salon(SalonWorld::own_family, {.seed = 77, .people = people, .visits = visits, .wrong_share = wrong});
}

Outcome first_of(int range) {
  for (const auto& r : records(80, 1))
    if (r.range == range) return outcome_of(r);
  return {};
}

// What is compared with results is what predict() says, while nothing was learned.
TEST(Learned, ExpectsWhatPredictSays) {
  for (const int range : {0, 2, 3}) {
    const Outcome o = first_of(range);
    const auto response = Response::of(o);
    ASSERT_TRUE(response);
    const Lab ours = response->after(response->read({}), {})[0];
    const auto theirs = predict(o.head, o.steps, o.shelf, {}, {.scenarios = 1});
    ASSERT_TRUE(theirs);
    EXPECT_LT(delta_e_ab(ours, theirs->zones[0].planned.lab), 1e-9) << range;
  }
}

// Every direction of an effect does what its name says.
TEST(Learned, EffectsDoWhatTheyAreCalled) {
  const Outcome o = first_of(0);
  const auto response = Response::of(o);
  ASSERT_TRUE(response);
  const auto zones = response->read({});
  const std::string range = response->ranges()[0];
  const Lab plain = response->after(zones, {})[0];
  EXPECT_GT(response->after(zones, {{range, {.lift = 0.3}}})[0].l, plain.l);
  EXPECT_LT(response->after(zones, {{range, {.depth = 0.3}}})[0].l, plain.l);
  EXPECT_GT(response->after(zones, {{range, {.warmth = 0.3}}})[0].b, plain.b);
  EXPECT_LT(response->after(response->read({.eye = 1}), {})[0].l, plain.l);
}

// The same result again and again: what is expected comes to it, and each time it is surer.
TEST(Learned, ComesToWhatIsSeen) {
  Outcome o = first_of(0);
  Model model;
  double before = 10, width = 100;
  double seen = 0;
  for (int i = 0; i < 8; ++i) {
    const auto expected = model.expected(o);
    ASSERT_TRUE(expected);
    const Said& s = expected->front();
    if (i == 0) seen = s.expected - 0.8;
    o.zones[0].level = seen, o.zones[0].measured.reset();
    EXPECT_LE(std::abs(s.expected - seen), before + 1e-9) << i;
    EXPECT_LE(s.high - s.low, width + 1e-9) << i;
    before = std::abs(s.expected - seen), width = s.high - s.low;
    const auto said = model.take(o);
    ASSERT_TRUE(said);
    EXPECT_FALSE(said->front().set_aside);
  }
  EXPECT_LT(before, 0.35);
  EXPECT_EQ(model.results(range_key(o.shelf, o.steps[0].formula.range)), 8);
}

// "As predicted" makes surer and moves nothing, whatever half level the prediction is named by and whoever's eye it is.
TEST(Learned, AsPredictedTeachesNoOffset) {
  for (const double named_off : {0.0, -0.2, 0.24}) {
    Outcome o = first_of(0);
    Model model;
    o.zones[0].measured.reset();
    o.zones[0].level = model.expected(o)->front().expected + 0.5;  // an eye and a range that are off
    ASSERT_TRUE(model.take(o));
    const Said before = model.expected(o)->front();
    o.zones[0].as_predicted = true;
    for (int i = 0; i < 10; ++i) {
      o.zones[0].level = before.expected + named_off;
      const auto said = model.take(o);
      ASSERT_TRUE(said);
      EXPECT_FALSE(said->front().set_aside);
    }
    const Said after = model.expected(o)->front();
    EXPECT_NEAR(after.expected, before.expected, 0.02) << named_off;
    EXPECT_LT(after.high - after.low, before.high - before.low);
  }
}

// Held against a prediction that is no longer made, it teaches what that one said.
TEST(Learned, AsPredictedOfAnotherPredictionTeachesIt) {
  Outcome o = first_of(0);
  Model model;
  o.zones[0].measured.reset(), o.zones[0].as_predicted = true;
  const double before = model.expected(o)->front().expected;
  o.zones[0].level = before - 0.8;
  for (int i = 0; i < 4; ++i) ASSERT_TRUE(model.take(o));
  EXPECT_LT(model.expected(o)->front().expected, before - 0.25);
}

// A record far off what can be is told and teaches nothing.
TEST(Learned, SetsAsideWhatCannotBe) {
  Outcome o = first_of(0);
  Model model;
  o.zones[0].measured.reset();
  o.zones[0].level = std::min(10.0, model.expected(o)->front().expected + 4);
  const auto said = model.take(o);
  ASSERT_TRUE(said);
  EXPECT_TRUE(said->front().set_aside);
  for (const Factor& f : model.factors()) EXPECT_NEAR(f.mean, 0, 0.2);
  EXPECT_EQ(model.results(range_key(o.shelf, o.steps[0].formula.range)), 0);
}

// People do not teach each other beyond what they share, and the order of others changes nothing of what one told.
TEST(Learned, WhatOnePersonTeachesIsTheirs) {
  Outcome o = first_of(3);
  Model model;
  o.zones[0].measured.reset();
  for (int i = 0; i < 4; ++i) {
    o.zones[0].level = model.expected(o)->front().expected + 0.8;
    ASSERT_TRUE(model.take(o));
  }
  const auto own = model.factors(o.who.person);
  ASSERT_FALSE(own.empty());
  EXPECT_GT(own[0].mean, 0.05);
  EXPECT_TRUE(model.factors("somebody else").empty());
  const std::string range = range_key(o.shelf, o.steps[0].formula.range);
  EXPECT_GT(model.effect(range, o.who.person).lift, model.effect(range, "somebody else").lift);
  EXPECT_GT(model.effect(range, "somebody else").lift, 0);
}

// Two models that took the same results in the same order are the same: undo is doing it again without one.
TEST(Learned, ReplayGivesTheSame) {
  Model one, two;
  for (const auto& r : records(15, 2)) ASSERT_TRUE(one.take(outcome_of(r)));
  for (const auto& r : records(15, 2)) ASSERT_TRUE(two.take(outcome_of(r)));
  const auto a = one.factors(), b = two.factors();
  ASSERT_EQ(a.size(), b.size());
  for (size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i].mean, b[i].mean);
}

// The whole campaign is in evidence; a small salon in the same worlds here.
TEST(Learned, SmallSalonsAreForeseenBetterInEveryWorld) {
  for (int w = 0; w < kSalonWorlds; ++w) {
    const LearnedSalon s =
        learned_salon(static_cast<SalonWorld>(w), {.seed = 5, .people = 30, .visits = 4, .wrong_share = 0.1});
    EXPECT_LT(s.visits[3].median_error, 0.8 * s.visits[3].median_untaught) << w;
    EXPECT_LE(s.worse, 0.1) << w;
    EXPECT_GT(s.visits[3].within, 0.75) << w;
  }
}

// What cannot be read says so.
TEST(Learned, UnknownTubeIsAProblem) {
  Outcome o = first_of(0);
  o.steps[0].formula.parts[0].product = "gone";
  Model model;
  const auto said = model.take(o);
  ASSERT_FALSE(said);
  EXPECT_EQ(said.error()[0].code, "unknown_product");
}

TEST(Learned, ShelfIsAsKnown) {
  Outcome o = first_of(0);
  Model model;
  o.zones[0].measured.reset();
  for (int i = 0; i < 6; ++i) {
    o.zones[0].level = model.expected(o)->front().expected - 0.7;
    ASSERT_TRUE(model.take(o));
  }
  const Shelf known = as_known(o.shelf, model, o.who.person);
  const auto before = predict(o.head, o.steps, o.shelf, {}, {.scenarios = 1});
  const auto after = predict(o.head, o.steps, known, {}, {.scenarios = 1});
  ASSERT_TRUE(before && after);
  EXPECT_LT(after->zones[0].planned.lab.l, before->zones[0].planned.lab.l - 1);
}

TEST(LearnedWords, SaysTheLargestFirstAndNothingOfNothing) {
  const std::vector<Factor> factors = {{Whose::range, "shelf/range", What::depth, 0.35, 0.1, 0.2},
                                       {Whose::person, "p", What::lift, -0.5, 0.1, 0.3},
                                       {Whose::colourist, "c", What::eye, 0.05, 0.1, 0.3},
                                       {Whose::salon, "", What::depth, 0.3, 0.4, 0.1}};
  const Problems words = in_words(factors);
  ASSERT_EQ(words.size(), 2u);
  EXPECT_EQ(words[0].code, "learned_lifts_less");
  EXPECT_EQ(words[0].params.at("whose"), "person");
  EXPECT_EQ(words[1].code, "learned_deeper");
}

}  // namespace
}  // namespace strandline::learned
