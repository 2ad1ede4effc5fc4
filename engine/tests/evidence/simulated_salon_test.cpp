// The simulators that measuring and learning are tried against, before either.
#include "evidence/simulated_salon.h"

#include <gtest/gtest.h>

#include <cmath>

#include "evidence/truth_camera.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

TEST(SimulatedSalon, IsTheSameEveryTimeInEveryWorld) {
  const truth::SalonPlan plan{.seed = 3, .people = 6, .visits = 2};
  for (int w = 0; w < kSalonWorlds; ++w) {
    const auto a = simulate_salon(static_cast<SalonWorld>(w), plan),
               b = simulate_salon(static_cast<SalonWorld>(w), plan);
    ASSERT_EQ(a.size(), 12u);
    for (size_t i = 0; i < a.size(); ++i) {
      EXPECT_EQ(a[i].after.l, b[i].after.l) << w << ' ' << i;
      EXPECT_EQ(a[i].judged, b[i].judged);
      EXPECT_GT(a[i].after.l, 10);
      EXPECT_LT(a[i].after.l, 85);
      EXPECT_FALSE(a[i].wrong);
    }
    EXPECT_EQ(a[7].person, 1);
    EXPECT_EQ(a[7].visit, 1);
  }
}

// What is written down is what happened, within an eye and half a level, but for the records said to be wrong.
TEST(SimulatedSalon, WritesDownWhatHappened) {
  const truth::SalonPlan plan{.seed = 5, .people = 60, .visits = 3, .wrong_share = 0.1};
  for (int w = 0; w < kSalonWorlds; ++w) {
    int wrong = 0, measured = 0, far = 0;
    const auto all = simulate_salon(static_cast<SalonWorld>(w), plan);
    for (const auto& r : all) {
      wrong += r.wrong, measured += r.measured.has_value();
      if (r.wrong) continue;
      far += std::abs(r.judged - std::clamp(level_of_lightness(r.after.l), 1.0, 10.0)) > 1.5;
      if (r.measured) EXPECT_LT(delta_e_ab(*r.measured, r.after), 3);
    }
    EXPECT_NEAR(wrong / 180.0, 0.1, 0.06) << w;
    EXPECT_NEAR(measured / 180.0, 0.3, 0.12) << w;
    EXPECT_LE(far, 4) << w;
  }
}

// More dye leaves the same person darker: what differs from range to range shows.
TEST(SimulatedSalon, WhatBelongsToAPersonStays) {
  const truth::SalonPlan plan{.seed = 9, .people = 10, .visits = 4};
  EXPECT_EQ(nature_of_person(plan, {}, 4).dye, nature_of_person(plan, {}, 4).dye);
  EXPECT_NE(nature_of_person(plan, {}, 4).dye, nature_of_person(plan, {}, 5).dye);
  EXPECT_NE(nature_of_range(plan, {}, 1).rate, nature_of_person(plan, {}, 1).rate);
  EXPECT_EQ(nature_of_person(plan, {}, 4).eye, 0);
}

TEST(SimulatedCamera, SeesWhiteBrighterThanGreyThanBlackUnderEveryLamp) {
  for (int lamp = 0; lamp < truth::kLamps; ++lamp) {
    truth::Random random(11, lamp);
    const truth::Printer printer(random);
    const truth::Camera camera(random, static_cast<truth::Lamp>(lamp));
    std::vector<truth::Spot> spots;
    for (const double grey : {1.0, 0.6, 0.3, 0.05}) spots.push_back({0.5, 0.5, printer.printed({grey, grey, grey})});
    spots.push_back({0.5, 0.5, printer.printed({0.8, 0.3, 0.2})});
    const auto codes = camera.photo(spots, random);
    for (int i = 0; i < 3; ++i)
      for (int k = 0; k < 3; ++k) EXPECT_GT(codes[k][i], codes[k + 1][i] + 5) << lamp << ' ' << k << ' ' << i;
    EXPECT_GT(codes[4][0], codes[4][2] + 40) << lamp;
  }
}

// Light falls off to a side, and the same paper looks darker there.
TEST(SimulatedCamera, LightFallsOff) {
  truth::Random random(12, 0);
  const truth::Camera camera(random, truth::Lamp::daylight);
  Spectrum grey;
  grey.fill(0.3);
  const auto codes = camera.photo({{0, 0, grey, 1000000}, {1, 1, grey, 1000000}}, random);
  EXPECT_GT(std::abs(codes[0][1] - codes[1][1]), 0.5);
}

}  // namespace
}  // namespace strandline
