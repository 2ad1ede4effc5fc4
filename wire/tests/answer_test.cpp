#include "strandline/wire/answer.h"

#include <gtest/gtest.h>

#include "strandline/levels.h"

namespace strandline::wire {
namespace {

TEST(UnderLights, DaylightIsTheColourThatWasAsked) {
  const Lab asked{42, 9, 17};
  const Named named = name_colour(asked);
  EXPECT_EQ(under_lights(asked, named.level, named.tone).daylight.hex, rgb(asked).hex);
}

TEST(UnderLights, ALampOfLowColourTemperatureChangesTheWishedColourAsItChangesHair) {
  const Lab asked = colour_of(7, Tone::gold);
  const UnderLights lights = under_lights(asked, 7, Tone::gold);
  EXPECT_NE(lights.lamp.hex, lights.daylight.hex);
  EXPECT_NE(lights.led.hex, lights.daylight.hex);
}

TEST(UnderLights, EverySwatchOfTheScaleIsShownInEveryLight) {
  for (const ToneSwatch& s : levels_answer().swatches) {
    EXPECT_EQ(s.srgb.daylight.hex, rgb(s.lab).hex);
    EXPECT_EQ(s.srgb.lamp.hex.size(), 7u);
  }
}

}  // namespace
}  // namespace strandline::wire
