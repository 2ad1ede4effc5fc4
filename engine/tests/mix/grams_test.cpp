#include "strandline/grams.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/tests/support.h"
#include "strandline/formulate.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr double kScalp = 550;  // cm², of which "half a head" is half

struct Range2 {
  double low, high;
};

// A head of one stretch of scalp, cut at these distances; "medium" is 200 hairs/cm² of 70 µm.
Head head(std::vector<double> cuts_cm, double scalp = kScalp, Hair hair = {200, 70, Texture::straight, Layers::some}) {
  Head h;
  h.hair = hair;
  std::vector<Span> spans;
  for (size_t i = 1; i < cuts_cm.size(); ++i)
    spans.push_back(span("s" + std::to_string(i), cuts_cm[i - 1], cuts_cm[i], 0, 5));
  h.areas.push_back(area("all", AreaKind::top, scalp, std::move(spans)));
  return h;
}

Head in_packets(double share, double length_cm, double scalp) {
  Head h = head({0, length_cm}, scalp);
  Area packets = h.areas[0];
  packets.id = "packets", packets.woven = Weave{"all", share, 5};
  h.areas.push_back(packets);
  return h;
}

MixGrams of(const Head& h, std::vector<std::string> zones) { return mix_grams(h, zones, FormulaPolicy{}); }

void within(double grams, Range2 r, const char* what) {
  EXPECT_GE(grams, r.low) << what;
  EXPECT_LE(grams, r.high) << what;
}

const Hair kDense{260, 85, Texture::straight, Layers::some};

// Common practice: what is mixed in salons, g. No published table was found.
TEST(Grams, AreWhatIsMixedInSalons) {
  within(of(head({0, 1.5, 30}), {"all/s1"}).cream, {40, 75}, "regrowth up to 2 cm, whole head");
  within(of(head({0, 1.5, 30}, kScalp, kDense), {"all/s1"}).cream, {60, 110}, "the same, dense and coarse");
  within(of(head({0, 8}), {"all/s1"}).cream, {60, 95}, "all over, short");
  within(of(head({0, 18}), {"all/s1"}).cream, {85, 130}, "all over, to the chin");
  within(of(head({0, 28}), {"all/s1"}).cream, {110, 160}, "all over, to the shoulders");
  within(of(head({0, 45}), {"all/s1"}).cream, {150, 240}, "all over, long");
  within(of(head({0, 2, 28}), {"all/s2"}).liquid, {60, 110}, "lengths, liquid, to the shoulders");
  within(of(head({0, 2, 40}), {"all/s2"}).liquid, {90, 150}, "lengths, liquid, long");
  within(of(head({0, 2, 18}), {"all/s1", "all/s2"}).cream, {85, 130}, "regrowth and lengths in one bowl, chin");
  within(of(head({0, 4}, 250), {"all/s1"}).liquid, {20, 40}, "temples and top of short hair, demi");
  within(of(in_packets(0.5, 3, kScalp / 2), {"packets/s1"}).cream, {40, 80}, "packets, 3 cm of new growth");
  within(of(in_packets(0.5, 28, kScalp / 2), {"packets/s1"}).cream, {90, 180}, "packets, full length");
  Head lights = in_packets(0.5, 28, kScalp);
  lights.areas[1].spans = {span("s1", 2, 28, 0, 9)};
  within(of(lights, {"packets/s1"}).liquid, {60, 100}, "toner at the basin over packets");
}

// Common practice as we know it, from memory: kinds of hair that the rows above do not speak of.
TEST(Grams, OfCoilyClippedAndWaistLongHair) {
  within(of(head({0, 20}, kScalp, {220, 65, Texture::coily, Layers::some}), {"all/s1"}).cream, {110, 190}, "coily");
  within(of(head({0, 1.2}), {"all/s1"}).liquid, {30, 60}, "clipped");
  within(of(head({0, 80}), {"all/s1"}).cream, {220, 400}, "to the waist");
}

// Worked heads of common practice: what a good colourist mixed for them.
TEST(Grams, OfWorkedHeads) {
  within(of(head({0, 38, 50}, kScalp, {260, 70, Texture::straight, Layers::some}), {"all/s1", "all/s2"}).liquid,
         {200, 450}, "long and dense, demi");
  within(of(head({0, 32}, kScalp, {200, 55, Texture::straight, Layers::some}), {"all/s1"}).cream, {90, 165},
         "fine, 32 cm, permanent");
  within(of(head({0, 1.5, 20, 34}), {"all/s2", "all/s3"}).liquid, {50, 125}, "lengths of 34 cm, demi");
  within(of(head({0, 18, 38}, kScalp, {200, 55, Texture::straight, Layers::some}), {"all/s2"}).liquid, {35, 100},
         "fine ends alone");
  within(of(head({0, 2, 6, 12, 33}), {"all/s3"}).liquid, {15, 50}, "a band of six centimetres");
}

TEST(Grams, FollowTheirLaws) {
  const double one = of(head({0, 8}), {"all/s1"}).cream;
  EXPECT_NEAR(of(head({0, 3, 8}), {"all/s1", "all/s2"}).cream, one, 1e-9) << "a cut in two takes the same";
  EXPECT_GT(of(head({0, 9}), {"all/s1"}).cream, one) << "longer";
  EXPECT_GT(of(head({0, 8}, kScalp, {250, 70, Texture::straight, Layers::some}), {"all/s1"}).cream, one) << "denser";
  EXPECT_GT(of(head({0, 8}, kScalp, {200, 70, Texture::straight, Layers::none}), {"all/s1"}).cream, one)
      << "one length";
  EXPECT_LT(of(head({0, 8}, kScalp, {200, 70, Texture::straight, Layers::many}), {"all/s1"}).cream, one) << "layered";
  EXPECT_GT(of(head({0, 8}, kScalp, {200, 70, Texture::coily, Layers::some}), {"all/s1"}).cream, one) << "coily";
  EXPECT_EQ(of(head({0, 8}), {"somewhere/else"}).cream, 0);
  const FormulaPolicy usual, none{.waste_share = 0}, less{.head_factor = 0.8};
  const Head h = head({0, 8});
  EXPECT_NEAR(mix_grams(h, {"all/s1"}, usual).cream / mix_grams(h, {"all/s1"}, none).cream, 1 + usual.waste_share,
              1e-12)
      << "waste is added to what the hair takes";
  EXPECT_NEAR(mix_grams(h, {"all/s1"}, less).cream, 0.8 * one, 1e-9);
  // Twice the scalp takes twice the mix.
  EXPECT_NEAR(of(head({0, 8}, 2 * kScalp), {"all/s1"}).cream, 2 * one, 1e-9);
}

TEST(Grams, HairOfAllAgesGrowsThinnerTowardsTheTips) {
  const Hair h{200, 70, Texture::straight, Layers::none};
  const double whole = hair_g_per_scalp_cm2(h, 0, 40, 40);
  // By hand: 1.32 g/cm³, π·(35 µm)², 200 to the cm²; the integral as a sum of a thousand slices.
  double sum = 0;
  for (int i = 0; i < 1000; ++i) sum += 200 * 1.32 * M_PI * 35e-4 * 35e-4 * 0.04 * std::exp(-(i + 0.5) * 0.04 / 60);
  EXPECT_NEAR(whole, sum, 1e-6);
  EXPECT_NEAR(hair_g_per_scalp_cm2(h, 0, 10, 40) + hair_g_per_scalp_cm2(h, 10, 40, 40), whole, 1e-12);
}

TEST(Grams, APacketHasItsLeast) {
  const Head h = in_packets(0.5, 0.8, 100);
  EXPECT_GE(of(h, {"packets/s1"}).cream / packets(h, h.areas[1]), 3);
}

TEST(Grams, ALiquidRunsOverPacketsAndWhatLiesBetween) {
  Head h = in_packets(0.4, 28, 300);
  for (Area& a : h.areas) a.spans = {span("s1", 2, 28, 0, 8)};
  const Head bare = head({0, 2, 28}, 300);
  EXPECT_NEAR(of(h, {"packets/s1"}).liquid, of(bare, {"all/s2"}).liquid, 1e-9);
  EXPECT_NEAR(of(h, {"packets/s1", "all/s1"}).liquid, of(bare, {"all/s2"}).liquid, 1e-9) << "and no hair twice";
}

}  // namespace
}  // namespace strandline
