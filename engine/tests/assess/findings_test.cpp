#include <gtest/gtest.h>

#include <algorithm>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

// One area whose spans show these levels, from the scalp out; all tinted but the first.
Head along(const std::vector<double>& levels, bool first_tinted = false) {
  std::vector<Span> spans;
  for (size_t i = 0; i < levels.size(); ++i) {
    const double from = i == 0 ? 0 : 2 + 5 * static_cast<double>(i - 1), to = 2 + 5 * static_cast<double>(i);
    spans.push_back(span("span " + std::to_string(i), from, to, 0, levels[i]));
    if (i > 0 || first_tinted) spans.back().populations[0].origin = ColourOrigin::tinted;
  }
  Head h;
  h.areas.push_back(area("crown", AreaKind::crown, 200, spans));
  return h;
}

std::vector<std::string> found(const Head& head) {
  std::vector<std::string> codes;
  for (const Problem& p : assess(head).notes)
    if (p.code.starts_with("finding_")) codes.push_back(p.code + " " + p.params.at("zone"));
  return codes;
}

using Codes = std::vector<std::string>;

TEST(Findings, AnEvenHeadHasNone) { EXPECT_EQ(found(along({5, 5, 5.4, 5})), Codes{}); }

TEST(Findings, ABandDiffersFromBothNeighbours) {
  EXPECT_EQ(found(along({6, 4, 6})), Codes{"finding_dark_band crown/span 1"});
  EXPECT_EQ(found(along({5, 7, 5})), Codes{"finding_light_band crown/span 1"});
  EXPECT_EQ(found(along({6, 5, 4.5})), Codes{}) << "a slope is no band";
}

TEST(Findings, HotRegrowthIsColouredAndLighter) {
  EXPECT_EQ(found(along({7, 5, 5}, true)), Codes{"finding_hot_regrowth crown/span 0"});
  EXPECT_EQ(found(along({7, 5, 5}, false)), Codes{})
      << "natural regrowth that is lighter is a wish to match, not a fault";
}

TEST(Findings, EndsOfTheirOwn) { EXPECT_EQ(found(along({6, 6, 4})), Codes{"finding_uneven_ends crown/span 2"}); }

TEST(Findings, GreenIsSeenWhereverItIs) {
  Head h = along({6, 6});
  h.areas[0].spans[1].populations[0].measured = Lab{45, -4, 14};
  EXPECT_EQ(found(h), Codes{"finding_green crown/span 1"});
}

}  // namespace
}  // namespace strandline
