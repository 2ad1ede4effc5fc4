#include "strandline/loss.h"

#include <gtest/gtest.h>

namespace strandline {
namespace {

Target brown() {
  Target t;
  t.level = 6, t.lab = colour_of(6, Tone::natural);
  return t;
}

// Common practice: dark needs a remover, light ten minutes; green and flat cost more than red and warm; white that
// shows beside coloured hair costs what a level does.
TEST(Loss, IsLopsidedAsTheTradeIs) {
  const ZoneLoss z = zone_loss(brown(), 1);
  const double level = lightness_of_level(6.5) - lightness_of_level(5.5);
  const auto at = [&](double dl, double along, double across) {
    const Lab& t = z.target;
    return loss(z, {t.l + dl, t.a + along * z.axis.a + across * z.axis.b, t.b + along * z.axis.b - across * z.axis.a},
                0);
  };
  EXPECT_NEAR(at(0, 0, 0), 0, 1e-12);
  EXPECT_GT(at(-level, 0, 0), 1.3 * at(level, 0, 0)) << "too dark against too light";
  EXPECT_NEAR(at(level, 0, 0), 1, 0.05) << "a level too light is a level";
  EXPECT_GT(at(0, -5, 0), 1.2 * at(0, 5, 0)) << "flat against warm";
  EXPECT_GT(at(0, 0, -5), 1.3 * at(0, 0, 5)) << "green against red";
  EXPECT_GT(loss(z, z.target, 2 * level), 0.7);
  EXPECT_EQ(loss(z, z.target, 0.9 * level), 0) << "within a level it is covered";
}

}  // namespace
}  // namespace strandline
