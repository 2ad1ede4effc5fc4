#include "evidence/truth.h"

#include <gtest/gtest.h>

#include <cmath>

#include "evidence/truth_chemistry.h"
#include "evidence/truth_light.h"

namespace strandline::truth {
namespace {

TEST(Truth, IsTheSameEveryTimeAndDiffersFromCaseToCase) {
  const Case a = simulate(1, Kind::tint, 7), again = simulate(1, Kind::tint, 7), other = simulate(1, Kind::tint, 8);
  EXPECT_EQ(a.after[0].l, again.after[0].l);
  EXPECT_EQ(a.known.level, again.known.level);
  EXPECT_NE(a.after[0].l, other.after[0].l);
}

// A shift moves what comes out and nothing that was known.
TEST(Truth, ShiftsTheWorldAndNotTheReading) {
  for (int kind = 0; kind < kKinds; ++kind) {
    const Case plain = simulate(2, static_cast<Kind>(kind), 3);
    const Case all = simulate(2, static_cast<Kind>(kind), 3, {{1, 1}, {0.5, 1}, {1, 0.5}});
    ASSERT_EQ(all.after.size(), 3u);
    EXPECT_EQ(plain.known.level, all.known.level);
    EXPECT_EQ(plain.after[0].l, all.after[0].l);
    ASSERT_EQ(plain.known.bowls.size(), all.known.bowls.size());
    EXPECT_EQ(plain.known.bowls.back().swatch[10], all.known.bowls.back().swatch[10]);
    const bool deposits = all.known.kind != Kind::lightener && all.known.kind != Kind::remover;
    if (deposits) EXPECT_GT(all.after[1].l, all.after[0].l) << kind;
    EXPECT_NE(all.after[2].l, all.after[0].l) << kind;
  }
}

TEST(Truth, LadderGoesThereAndBack) {
  for (double level = 1; level <= 10; level += 0.5) EXPECT_NEAR(Ladder().level(Ladder().lightness(level)), level, 1e-9);
}

TEST(Truth, BlendLiesBetweenItsPartsAndIsThemAtTheEnds) {
  const Light light = Light::usual();
  const Hair dark = light.natural(22), white;
  const double half = light.blend(dark, white, 0.5).l;
  EXPECT_NEAR(light.blend(dark, white, 0).l, light.colour(dark).l, 1e-6);
  EXPECT_NEAR(light.blend(dark, white, 1).l, light.colour(white).l, 1e-6);
  EXPECT_GT(half, light.colour(dark).l);
  EXPECT_LT(half, (light.colour(dark).l + light.colour(white).l) / 2);
}

// What colourists see is what this truth was set by: over many heads a shade on its own level leaves that level, bare
// mix with 6 % lifts one to two levels, a powder lightener some four.
TEST(Truth, DoesWhatColouristsSee) {
  double same = 0, bare = 0, powder = 0;
  constexpr int kHeads = 60;
  for (int i = 0; i < kHeads; ++i) {
    Random random(17, i);
    const Light light(random);
    const Ladder ladder(random);
    const Chemistry chemistry(random, light, ladder);
    auto level_after = [&](const Bowl& bowl, const Spectrum& load) {
      Hair hair = light.natural(ladder.lightness(5));
      Condition condition;
      chemistry.treat(hair, condition, chemistry.dose(bowl, load, 5), 1, {});
      return ladder.level(light.colour(hair).l);
    };
    Spectrum brown;
    for (int b = 0; b < kBands; ++b) brown[b] = 0.7 * std::exp((550 - band_nm(b)) / 150);
    same += level_after({}, brown) / kHeads;
    bare += level_after({}, {}) / kHeads;
    powder += level_after({BowlClass::lightener, 6, 2, 40, {}}, {}) / kHeads;
  }
  EXPECT_NEAR(same, 5, 0.25);
  EXPECT_NEAR(bare, 6.7, 0.3);
  EXPECT_NEAR(powder, 8.7, 0.3);
}

TEST(Truth, ZeroMinutesLiftNothingAndLongerLiftsMore) {
  Random random(9, 1);
  const Light light(random);
  const Ladder ladder;
  const Chemistry chemistry(random, light, ladder);
  double last = -1;
  for (double minutes : {0.0, 5.0, 15.0, 30.0, 45.0}) {
    Hair hair = light.natural(25);
    const double before = hair.eumelanin;
    Condition condition;
    chemistry.treat(hair, condition, chemistry.dose({BowlClass::lightener, 6, 2, minutes, {}}, {}, 5), 1, {});
    const double gone = before - hair.eumelanin;
    EXPECT_GT(gone, last);
    if (minutes == 0) EXPECT_EQ(gone, 0);
    last = gone;
  }
}

// Readers err both ways.
TEST(Truth, ReadingsScatter) {
  int above = 0, below = 0;
  for (int i = 0; i < 200; ++i) {
    const Case c = simulate(11, Kind::lightener, i);
    if (c.known.white_share > 0) continue;
    (c.known.level > Ladder().level(c.before.l) ? above : below) += 1;
  }
  EXPECT_GT(above, 20);
  EXPECT_GT(below, 20);
}

}  // namespace
}  // namespace strandline::truth
