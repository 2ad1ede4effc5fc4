#include "mix/settings.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/support.h"
#include "mix/situation.h"
#include "mix/within.h"

namespace strandline {
namespace {

// 6 % mixed 1 : 1 is 3 % on the head: a house that allows 2 % keeps it away, one that allows 3 % does not.
TEST(Settings, KeepTheHousesCeilingOnTheHead) {
  const Shelf shelf = testing_support::small_shelf();
  const auto strongest = [&](double ceiling) {
    FormulaPolicy policy;
    policy.on_head_peroxide_max_percent = ceiling;
    double most = 0;
    for (const Setting& s : settings(shelf.ranges[0], shelf, policy)) most = std::max(most, s.developer_percent);
    return most;
  };
  EXPECT_EQ(strongest(1), 0);
  EXPECT_EQ(strongest(2), 3);
  EXPECT_EQ(strongest(3), 6);
}

// Common practice: what is worked out in new growth is given its full time there; lengths may be shorter.
TEST(Settings, ColourAtTheScalpIsGivenItsFullTime) {
  Shelf shelf = testing_support::small_shelf();
  Range& tint = shelf.ranges[0];
  tint.minutes = {25, 35, 45};
  const Setting s{&tint, 6, 1, 35};
  Head head;
  head.areas.push_back(testing_support::area(
      "crown", AreaKind::crown, 250,
      {testing_support::span("regrowth", 0, 2, 0, 5), testing_support::span("lengths", 2, 20, 0, 5)}));
  const Situation now = at_start(head, 1);
  const auto allowed = [&](size_t z, double most) {
    Span span = head.areas[0].spans[z];
    RangeLimits limits;
    limits.range = tint.id, limits.minutes_max = most;
    span.limits = {limits};
    SearchZone zone;
    zone.span = &span, zone.draws = &now.draws.zones[z];
    std::vector<double> all = times_within(s, zone);
    std::sort(all.begin(), all.end());
    return all;
  };
  EXPECT_EQ(allowed(0, kNoLimit), (std::vector<double>{35, 45}));
  EXPECT_EQ(allowed(1, kNoLimit), (std::vector<double>{25, 35, 45}));
  // A rule that leaves no full time leaves what it can.
  EXPECT_EQ(allowed(0, 30), (std::vector<double>{25, 30}));
}

}  // namespace
}  // namespace strandline
