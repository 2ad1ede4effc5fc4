// The bed as physics has it: no light is made or lost, ways can be reversed, thick is thick, black has a
// floor.
#include <gtest/gtest.h>

#include "experiment.h"
#include "lightness.h"

namespace strandline::fibre_bed {
namespace {

Tally::Estimate estimate(const Tally& t, int i) { return {t.mean(i), t.standard_error(i)}; }

// R for each depth in `tau`.
Tally reflectances(Experiment r, const std::vector<double>& tau) {
  return run(r, static_cast<int>(tau.size()), [&](const Photon& p, std::span<double> sums) {
    if (p.end != Photon::End::returned) return;
    for (size_t i = 0; i < tau.size(); ++i) sums[i] += p.weight * std::exp(-tau[i] * p.path_total());
  });
}

void expect_same(const Tally::Estimate& a, const Tally::Estimate& b, const char* what) {
  const double error = std::hypot(a.standard_error, b.standard_error);
  EXPECT_GT(error, 0) << what;
  EXPECT_NEAR(a.value, b.value, 4 * error) << what;
}

TEST(Bed, WhiteFurnaceWithoutAbsorptionAllLightComesBack) {
  Experiment r{.blocks = 16, .photons = 1000};
  r.bed.depth = 6;
  r.bed.mirror_below = true;
  const Tally t = run(r, 3, [](const Photon& p, std::span<double> sums) {
    if (p.end == Photon::End::returned) sums[0] += p.weight;
    if (p.end == Photon::End::passed) sums[1] += p.weight;
    if (p.end == Photon::End::lost) sums[2] += p.weight;
  });
  EXPECT_NEAR(t.mean(0), 1, 4 * t.standard_error(0));
  EXPECT_LT(t.standard_error(0), 0.02);
  EXPECT_EQ(t.mean(1), 0);
  EXPECT_EQ(t.mean(2), 0);
}

TEST(Bed, EnergyIsConservedInAThinBed) {
  for (double scatter : {0.0, 3.0}) {
    Experiment r{.blocks = 16, .photons = 500};
    r.bed.depth = 3;
    r.bed.scatter = {.coefficient = scatter, .core = 0.5, .anisotropy = 0.3, .share = 1};
    const Tally t = run(r, 2, [](const Photon& p, std::span<double> sums) {
      if (p.end == Photon::End::returned) sums[0] += p.weight;
      if (p.end == Photon::End::passed) sums[1] += p.weight;
    });
    const auto sum = t.derived([](std::span<const double> m) { return m[0] + m[1]; });
    EXPECT_NEAR(sum.value, 1, 4 * sum.standard_error) << scatter;
    EXPECT_LT(sum.standard_error, 0.02);
    EXPECT_GT(t.mean(1), 0.05);
  }
}

TEST(Bed, LightMayBeSentEitherWay) {
  // From cone A to cone B as from B to A, by share of a perfect diffuser's light.
  struct Cone {
    double low, high;
    double solid() const { return std::pow(std::sin(high), 2) - std::pow(std::sin(low), 2); }
    bool holds(Vector3 d) const {
      const double polar = std::acos(std::min(1.0, -d.z));
      return polar >= low && polar < high;
    }
  };
  const Cone a{0, 25 * kDegree}, b{55 * kDegree, 75 * kDegree};
  auto send = [](const Cone& from, const Cone& to, uint64_t seed) {
    const Experiment r{
        .launch = {from.low, from.high, {}}, .longest = 400, .blocks = 32, .photons = 3000, .seed = seed};
    return run(r, 2, [&](const Photon& p, std::span<double> sums) {
      if (p.end != Photon::End::returned || !to.holds(p.direction)) return;
      sums[0] += p.weight * std::exp(-0.08 * p.path_total()) / to.solid();
      sums[1] += p.weight * std::exp(-1.0 * p.path_total()) / to.solid();
    });
  };
  const Tally there = send(a, b, 3), back = send(b, a, 4);
  expect_same(estimate(there, 0), estimate(back, 0), "light");
  expect_same(estimate(there, 1), estimate(back, 1), "dark");
}

TEST(Bed, ThickBedHasALimit) {
  Experiment r{.longest = 400, .blocks = 16, .photons = 1500};
  const std::vector<double> tau{0.08};
  const auto endless = estimate(reflectances(r, tau), 0);
  r.bed.depth = 40;
  r.seed = 2;
  expect_same(estimate(reflectances(r, tau), 0), endless, "40 diameters over black");
  r.bed.depth = 2;
  EXPECT_LT(estimate(reflectances(r, tau), 0).value, endless.value - 0.05);
}

TEST(Bed, BlackHasTheFloorThatIsMeasured) {
  // Black hair by sphere, specular included: L* 17.3 (J Soc Cosmet Chem 46(4), 1995), 18.4 (Scanavez et al.
  // 2000).
  const Experiment r{.longest = 10, .blocks = 32, .photons = 6000};
  const auto floor = estimate(reflectances(r, {20}), 0);
  EXPECT_GT(lightness(floor.value + 3 * floor.standard_error), 17.0);
  EXPECT_LT(lightness(floor.value - 3 * floor.standard_error), 18.4);
  EXPECT_LT(floor.standard_error / floor.value, 0.03);
}

TEST(Bed, SeedsAgreeWithinTheStandardErrorAndThreadsBitForBit) {
  Experiment r{.longest = 200, .blocks = 16, .photons = 800};
  const std::vector<double> tau{0.05, 0.3, 2};
  const Tally one = reflectances(r, tau);
  r.threads = 3;
  const Tally three = reflectances(r, tau);
  for (int b = 0; b < one.blocks(); ++b)
    for (int i = 0; i < one.outputs(); ++i) ASSERT_EQ(one.block(b)[i], three.block(b)[i]);
  r.seed = 99;
  const Tally other = reflectances(r, tau);
  for (int i = 0; i < one.outputs(); ++i) {
    EXPECT_NE(one.mean(i), other.mean(i));
    expect_same(estimate(one, i), estimate(other, i), "seed");
  }
}

TEST(Bed, PoresMakeWhiteHairLighterAtTheSameAbsorption) {
  Experiment r{.longest = 500, .blocks = 16, .photons = 600};
  const double clear = reflectances(r, {0.02}).mean(0);
  r.bed.scatter = {.coefficient = 3, .core = 1, .anisotropy = 0, .share = 1};
  const Tally t = reflectances(r, {0.02});
  EXPECT_GT(t.mean(0) - 3 * t.standard_error(0), clear);
}

TEST(Bed, FibresOfOneShareHoldThatShareOfThePath) {
  for (double packet : {0.0, 3.0}) {
    Experiment r{.longest = 200, .blocks = 16, .photons = 600};
    r.bed.packet = packet;
    const Tally t = run(r, 2, [](const Photon& p, std::span<double> sums) {
      sums[0] += p.path_below(6);
      sums[1] += p.path_total();
    });
    const auto share = t.derived([](std::span<const double> m) { return m[0] / m[1]; });
    EXPECT_NEAR(share.value, 0.3, 4 * share.standard_error);
    EXPECT_LT(share.standard_error, 0.03);
  }
}

TEST(Bed, GlossLiesAcrossTheFibresNotAlong) {
  // Black fibres lit from the normal: the light is seen at 45 degrees across the fibres and not along them.
  const Experiment r{.launch = {0, 10 * kDegree, {}}, .longest = 10, .blocks = 16, .photons = 6000};
  const Tally t = run(r, 2, [](const Photon& p, std::span<double> sums) {
    if (p.end != Photon::End::returned || std::abs(std::acos(-p.direction.z) - 45 * kDegree) > 5 * kDegree) return;
    const double turn = std::atan2(std::abs(p.direction.y), std::abs(p.direction.x));
    const double light = p.weight * std::exp(-20 * p.path_total());
    sums[turn < 10 * kDegree ? 0 : 1] += turn < 10 * kDegree || turn > 80 * kDegree ? light : 0;
  });
  EXPECT_GT(t.mean(1), 20 * (t.mean(0) + t.standard_error(0)));
}

}  // namespace
}  // namespace strandline::fibre_bed
