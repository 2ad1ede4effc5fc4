#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "engine/tests/formulate/whole_shelf.h"

namespace strandline {
namespace {

using namespace testing_support;

// A crown with three strands in ten taken up: the packets shall be very light, the hair between them darker.
Head woven_crown() {
  Head h;
  h.areas.push_back(area("crown", AreaKind::crown, 200, {span("regrowth", 0, 3, 0.2, 6)}));
  Area packets = area("packets", AreaKind::crown, 200, {span("regrowth", 0.5, 3, 0.2, 6)});
  packets.woven = Weave{"crown", 0.3, 4};
  h.areas.push_back(packets);
  return h;
}

std::set<std::string> codes(const Reasons& why) {
  std::set<std::string> all;
  for (const Problem& p : why) all.insert(p.code);
  return all;
}

TEST(Routes, HairBetweenPacketsIsColouredWhileTheyDevelop) {
  const Head head = woven_crown();
  const Shelf shelf = whole_shelf();
  ZoneAim light, dark;
  light.zone = "packets/regrowth", light.level = 10;
  dark.zone = "crown/regrowth", dark.level = 5;
  const auto targets = aim(head, {light, dark}, shelf);
  const auto direct = formulate(head, *targets, shelf, {});
  ASSERT_TRUE(direct);
  const auto found = routes(head, *targets, shelf, {}, *direct);
  ASSERT_TRUE(found);
  ASSERT_FALSE(found->empty());
  const Route& way = found->front();
  EXPECT_EQ(way.kind, "lighten");
  const RouteStep& first = way.visits[0].steps[0];
  ASSERT_EQ(first.bowls.size(), 2u);
  EXPECT_EQ(first.bowls[0].bowl.zones, std::vector<std::string>{"packets/regrowth"});
  EXPECT_TRUE(codes(first.bowls[0].why).contains("in_packets"));
  EXPECT_EQ(first.bowls[1].bowl.zones, std::vector<std::string>{"crown/regrowth"});
  EXPECT_EQ(first.bowls[1].bowl.step, 1);
  EXPECT_TRUE(codes(first.bowls[1].why).contains(std::string(kBesidePackets)));
  EXPECT_FALSE(codes(first.bowls[1].why).contains("in_packets"));
  // The bowl beside is what it would be by itself.
  const auto alone = std::find_if(direct->bowls.begin(), direct->bowls.end(), [](const PlannedBowl& b) {
    return b.bowl.zones == std::vector<std::string>{"crown/regrowth"};
  });
  ASSERT_NE(alone, direct->bowls.end());
  EXPECT_EQ(alone->recipe.developer_percent, first.bowls[1].recipe.developer_percent);
  // Tables after the check are for bowls of the second step alone.
  for (const auto& table : first.if_check_shows) EXPECT_NE(table.bowl, first.bowls[1].bowl.label);
  if (way.visits[0].steps.size() > 1)
    for (const PlannedBowl& b : way.visits[0].steps[1].bowls)
      EXPECT_EQ(b.bowl.zones, std::vector<std::string>{"packets/regrowth"});
}

TEST(Routes, EachZoneGetsWhatItNeedsSideBySide) {
  // Natural regrowth that a tint cannot lift so far, and lengths whose old colour is in the way.
  Head head;
  Span grown = span("regrowth", 0, 3, 0, 4), coloured = span("lengths", 3, 12, 0, 5);
  coloured.populations[0].origin = ColourOrigin::tinted;
  coloured.populations[0].natural_level = Reading{7.5, 0.2};
  head.areas.push_back(area("crown", AreaKind::crown, 200, {grown, coloured}));
  const Shelf shelf = whole_shelf();
  ZoneAim light, middle;
  light.zone = "crown/regrowth", light.level = 9;
  middle.zone = "crown/lengths", middle.level = 7.5;
  const auto targets = aim(head, {light, middle}, shelf);
  const auto direct = formulate(head, *targets, shelf, {});
  ASSERT_TRUE(direct);
  const auto found = routes(head, *targets, shelf, {}, *direct);
  ASSERT_TRUE(found);
  const Ways w{*direct, *found};
  const Route *both = w.find(std::string(kSeveral)), *lighten = w.find("lighten");
  ASSERT_TRUE(lighten);
  ASSERT_TRUE(both);
  EXPECT_EQ(both->visits[0].steps[0].kind, kSeveral);
  std::set<std::string> ranges;
  for (const PlannedBowl& b : both->visits[0].steps[0].bowls) {
    EXPECT_EQ(b.bowl.zones.size(), 1u);
    ranges.insert(b.recipe.range);
  }
  EXPECT_EQ(ranges, (std::set<std::string>{"lightener-off-scalp", "remover"}));
  EXPECT_TRUE(both->visits[0].steps[0].check_after);
  EXPECT_LT(both->objective, lighten->objective) << "else the lightener would do for both";
}

}  // namespace
}  // namespace strandline
