#include "evidence/truth.h"

#include <gtest/gtest.h>

#include <cmath>

#include "evidence/truth_bed.h"
#include "evidence/truth_chemistry.h"
#include "generated/tables.h"

namespace strandline::truth {
namespace {

TEST(Truth, IsTheSameEveryTimeAndDiffersFromCaseToCase) {
  const Case a = simulate(1, 7), again = simulate(1, 7), other = simulate(1, 8);
  EXPECT_EQ(a.after.l, again.after.l);
  EXPECT_EQ(a.known.level, again.known.level);
  EXPECT_NE(a.after.l, other.after.l);
}

TEST(Truth, BedsSpanTheTransportedPackings) {
  double least = 1, most = 0;
  for (int i = 0; i < 200; ++i) {
    Random random(3, i);
    Spectrum depth;
    depth.fill(0.2);
    const double r = Bed(random).reflectance(depth)[0];
    least = std::min(least, r), most = std::max(most, r);
  }
  const auto& rows = tables::reflectance_curve;
  size_t i = 1;
  while (rows[i][0] < 0.2) ++i;
  EXPECT_GT(most - least, 0.3 * std::abs(rows[i][4] - rows[i][5]));
  EXPECT_GT(least, 0.8 * std::min(rows[i][4], rows[i][5]));
}

TEST(Truth, ZeroMinutesChangeNothing) {
  Random random(5, 0);
  const Nature nature(random);
  const Bed bed(random);
  Hair hair = nature.hair(bed, 30);
  const double before = hair.eumelanin;
  Known bowl;
  bowl.minutes = 0, bowl.to_cm = 2;
  Spectrum dye;
  dye.fill(0.3);
  Chemistry(random, bowl).treat(hair, dye, 1);
  EXPECT_EQ(hair.eumelanin, before);
  EXPECT_EQ(hair.dye[3], 0);
}

TEST(Truth, LongerIsNeverLessPigmentGone) {
  double last = 1e9;
  for (double minutes : {5.0, 15.0, 30.0, 45.0}) {
    Random random(9, 1);
    const Nature nature(random);
    const Bed bed(random);
    Hair hair = nature.hair(bed, 25);
    Known bowl;
    bowl.kind = Kind::lightener, bowl.minutes = minutes, bowl.to_cm = 2;
    Chemistry(random, bowl).treat(hair, {}, 1);
    EXPECT_LT(hair.eumelanin, last);
    EXPECT_GE(hair.eumelanin, 0);
    last = hair.eumelanin;
  }
}

// Readers err both ways, within half a level and their own scatter.
TEST(Truth, ReadingsScatter) {
  int above = 0, below = 0;
  for (int i = 0; i < 300; ++i) {
    const Case c = simulate(11, i);
    if (c.known.white_share > 0) continue;
    const auto& rows = tables::level_anchors;
    size_t k = 1;
    while (k + 1 < rows.size() && c.before.l > rows[k][1]) ++k;
    const double level = rows[k - 1][0] + (c.before.l - rows[k - 1][1]) / (rows[k][1] - rows[k - 1][1]);
    EXPECT_LT(std::abs(c.known.level - level), 0.5 + 5 * 0.2);
    (c.known.level > level ? above : below) += 1;
  }
  EXPECT_GT(above, 20);
  EXPECT_GT(below, 20);
}

}  // namespace
}  // namespace strandline::truth
