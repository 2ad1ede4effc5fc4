// Where the fibres are, and which one a ray meets first.
#include "packing.h"

#include <gtest/gtest.h>

#include <numbers>
#include <stdexcept>

#include "random.h"

namespace strandline::fibre_bed {
namespace {

double gap(double a, double b, double side) {
  const double d = std::abs(a - b);
  return std::min(d, side - d);
}

TEST(Packing, DiscsFillTheWantedShareAndDoNotOverlap) {
  for (double fraction : {0.2, 0.5, 0.54}) {
    const Packing p({.fraction = fraction, .seed = 3});
    EXPECT_NEAR(static_cast<double>(p.centres().size()) * std::numbers::pi / 4 / (20 * 20), fraction, 0.001);
    for (size_t i = 0; i < p.centres().size(); ++i)
      for (size_t j = 0; j < i; ++j)
        ASSERT_GE(std::hypot(gap(p.centres()[i].y, p.centres()[j].y, 20), gap(p.centres()[i].z, p.centres()[j].z, 20)),
                  1 - 1e-12);
  }
}

TEST(Packing, RowTouchesThePlane) {
  const Packing p({.fraction = 0.5, .row = true, .seed = 3});
  int in_row = 0;
  for (const Point& c : p.centres()) in_row += c.z == 0.5;
  EXPECT_GT(in_row, 12);  // Renyi's car parking fills 0.7476 of the line
  EXPECT_LT(in_row, 18);
}

TEST(Packing, RefusesWhatCannotBe) {
  EXPECT_THROW(Packing({.fraction = 0.95}), std::invalid_argument);
  EXPECT_THROW(Packing({.fraction = 0}), std::invalid_argument);
  EXPECT_THROW(Packing({.fraction = 0.5, .side = 2}), std::invalid_argument);
}

TEST(Packing, FirstHitIsTheNearestDiscOfAll) {
  const Packing p({.fraction = 0.3, .seed = 5});
  Random random(5, 0);
  for (int i = 0; i < 2000; ++i) {
    const Point origin{random.uniform() * 60 - 20, random.uniform() * 60 - 20};
    const double turn = random.uniform() * 2 * std::numbers::pi;
    const Point along{std::cos(turn), std::sin(turn)};
    double nearest = 30;
    bool in_disc = false;
    for (const Point& c : p.centres())
      for (int ty = -5; ty <= 5; ++ty)
        for (int tz = -5; tz <= 5; ++tz) {
          const double y = c.y + 20 * ty - origin.y, z = c.z + 20 * tz - origin.z;
          const double b = y * along.y + z * along.z, off = y * along.z - z * along.y;
          if (y * y + z * z < 0.25) in_disc = true;
          if (b > 0 && off * off < 0.25) nearest = std::min(nearest, b - std::sqrt(0.25 - off * off));
        }
    if (in_disc || nearest > 29) continue;
    const auto hit = p.first_hit(origin, along, ~0ULL, -1e9, 1e9, [](Point, uint64_t) { return true; });
    ASSERT_TRUE(hit);
    ASSERT_NEAR(hit->distance, nearest, 1e-9);
  }
}

TEST(Packing, MeanFlightIsThatOfStereology) {
  // Mean chord of the gaps between discs of diameter 1: pi (1 - f)/(4 f), for rays that start where a fibre
  // is left (Cauchy).
  const double fraction = 0.4;
  double sum = 0;
  int flights = 0;
  for (uint64_t seed = 1; seed <= 10; ++seed) {
    const Packing p({.fraction = fraction, .seed = seed});
    Random random(seed, 9);
    for (int i = 0; i < 5000; ++i) {
      const auto disc = static_cast<size_t>(random.uniform() * double(p.centres().size()));
      const double around = random.uniform() * 2 * std::numbers::pi, sine = 2 * random.uniform() - 1;
      const double turn = around + std::asin(sine);  // leaves as light of equal brightness does
      const Point c = p.centres()[disc], start{c.y + 0.5 * std::cos(around), c.z + 0.5 * std::sin(around)};
      const auto hit = p.first_hit(start, {std::cos(turn), std::sin(turn)}, fibre_id(0, 0, static_cast<int>(disc)),
                                   -1e9, 1e9, [](Point, uint64_t) { return true; });
      ASSERT_TRUE(hit);
      sum += hit->distance;
      ++flights;
    }
  }
  const double expected = std::numbers::pi * (1 - fraction) / (4 * fraction);
  EXPECT_NEAR(sum / flights, expected, 0.02 * expected);
}

}  // namespace
}  // namespace strandline::fibre_bed
