#include "assess/strands.h"

#include <gtest/gtest.h>

#include "engine/tests/rules/visit.h"

namespace strandline {
namespace {

using namespace testing_support;

const std::string kLengths = "top/lengths", kPackets = "lights/packets";

// The lengths' strand reached this level in half an hour of lightener.
Visit tried(double level, const std::string& range = "bleach") {
  Visit v = quiet_visit();
  lengths(v).strand = StrandTest{range, 30, level, StrandCondition::kept};
  return v;
}

ZoneResult lightened(const Visit& v, const std::string& zone) {
  const Head head = known_by_strands(v.head, v.shelf);
  Formula f;
  f.range = "bleach";
  f.parts = {{"bleach6", 30}, {"dev60", 60}};
  f.minutes = 30;
  const auto p = predict(head, {{f, {zone}}}, v.shelf);
  for (const ZoneResult& z : p->zones)
    if (z.zone == zone) return z;
  return {};
}

TEST(Strands, MoveTheForecastOfTheirOwnZoneAndNarrowIt) {
  const Visit untried = quiet_visit();
  const ZoneResult usual = lightened(untried, kLengths);
  const ZoneResult fast = lightened(tried(usual.planned.named.level + 1), kLengths);
  const ZoneResult slow = lightened(tried(usual.planned.named.level - 1), kLengths);
  EXPECT_GT(fast.planned.named.level, usual.planned.named.level + 0.5);
  EXPECT_LT(slow.planned.named.level, usual.planned.named.level - 0.5);
  const ZoneResult same = lightened(tried(usual.planned.named.level), kLengths);
  EXPECT_LT(same.planned.level.p90 - same.planned.level.p10, usual.planned.level.p90 - usual.planned.level.p10);
  // Another zone of the head is as it was.
  EXPECT_EQ(lightened(tried(9), kPackets).planned.named.level, lightened(untried, kPackets).planned.named.level);
}

TEST(Strands, OfWhatDoesNotLightenTellNothingOfSpeed) {
  for (const char* range : {"tint", "direct", "no such range"})
    EXPECT_FALSE(known_by_strands(tried(7, range).head, every_class()).areas[0].spans[1].strand_known) << range;
  EXPECT_TRUE(known_by_strands(tried(7).head, every_class()).areas[0].spans[1].strand_known);
}

TEST(Strands, AreKnownToWhateverKeepsToTheRules) {
  Visit v = limited(tried(9));
  const double told = known_by_strands(tried(9).head, tried(9).shelf).areas[0].spans[1].strand_speed;
  EXPECT_TRUE(lengths(v).strand_known);
  EXPECT_EQ(lengths(v).strand_speed, told);
  EXPECT_NE(told, 1);
  // Hair that has been lightened since is the same hair.
  lengths(v).populations[0].level.value = 9;
  EXPECT_EQ(lengths(v = limited(v)).strand_speed, told);
}

TEST(Readings, ByALampOrOnDampHairAreDoubtedMore) {
  Visit v = quiet_visit();
  for (Area& a : v.head.areas)
    for (Span& s : a.spans) s.populations[0].level.sd = 0.35;
  const auto spread = [&] {
    const ZoneColour z = assess(v.head).zones[1];
    return z.level.p90 - z.level.p10;
  };
  const double usual = spread();
  lengths(v).read_in = ReadIn::window;
  EXPECT_EQ(spread(), usual);
  lengths(v).read_in = ReadIn::lamp;
  const double by_lamp = spread();
  EXPECT_GT(by_lamp, 1.2 * usual);
  lengths(v).read_damp = true;
  EXPECT_GT(spread(), 1.2 * by_lamp);
}

}  // namespace
}  // namespace strandline
