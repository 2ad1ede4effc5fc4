#include "formulate/settings.h"

#include <gtest/gtest.h>

#include "engine/tests/support.h"

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

}  // namespace
}  // namespace strandline
