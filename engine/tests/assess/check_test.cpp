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

TEST(Assess, MoreKindsOfHairThanCanBeWorkedAreRefused) {
  const auto head = [](int areas, int spans, int kinds) {
    Head h = two_areas();
    const Population one = h.areas[0].spans[0].populations[0];
    h.areas.resize(1);
    h.areas[0].spans.clear();
    for (int s = 0; s < spans; ++s) {
      Span next = span("s" + std::to_string(s), s, s + 1, 0, 5);
      next.populations.assign(static_cast<size_t>(kinds), one);
      for (Population& p : next.populations) p.share.value = 1.0 / kinds;
      h.areas[0].spans.push_back(next);
    }
    h.areas.resize(static_cast<size_t>(areas), h.areas[0]);
    for (int a = 0; a < areas; ++a) h.areas[static_cast<size_t>(a)].id = "a" + std::to_string(a);
    return h;
  };
  EXPECT_TRUE(check(head(12, 4, 4)).empty());
  EXPECT_TRUE(check(head(16, 4, 4)).empty());
  const Problems problems = check(head(8, 10, 8));
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].code, "head_too_fine");
  EXPECT_EQ(problems[0].params.at("kinds"), "640");
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
