#include <gtest/gtest.h>

#include "engine/tests/support.h"
#include "strandline/assess.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Assess, WhiteShareIsSeenAsContrast) {
  const Assessment a = assess(two_areas());
  ASSERT_EQ(a.zones.size(), 2u);
  EXPECT_GT(a.zones[0].contrast_levels, 3);
  EXPECT_GT(a.zones[0].lab.l, a.zones[1].lab.l);  // 80 % white is lighter than 20 %
}

TEST(Assess, SpansMustNotOverlap) {
  Head h = two_areas();
  h.areas[0].spans.push_back(span("lengths", 1, 20, 0, 6));
  EXPECT_EQ(check(h).at(0).code, "spans_overlap");
}

TEST(Assess, EmptyHead) { EXPECT_EQ(check(Head{}).at(0).code, "head_has_no_areas"); }

// Common practice: wet hair should stretch 40–50 % and return.
TEST(Assess, WetStretch) {
  Span s = span("a", 0, 1, 0, 5);
  EXPECT_TRUE(stretch_passed(s));
  s.wet_stretch_percent = 30;
  EXPECT_FALSE(stretch_passed(s));
  s.wet_stretch_percent = 45;
  EXPECT_TRUE(stretch_passed(s));
  s.stretch_returns = false;
  EXPECT_FALSE(stretch_passed(s));
}

}  // namespace
}  // namespace strandline
