#include <gtest/gtest.h>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Shelf, GoodShelfHasNoProblems) { EXPECT_TRUE(check(small_shelf()).empty()); }
TEST(Shelf, EmptyShelf) { EXPECT_EQ(check(Shelf{}).at(0).code, "shelf_is_empty"); }

TEST(Shelf, EveryNumberHasARange) {
  Shelf s = small_shelf();
  s.products[0].stock_g = -1;
  (*s.products[1].swatch)[3] = 1.2;
  s.products[5].peroxide_percent = 30;
  s.products[2].range = "nobody's";
  const Problems p = check(s);
  ASSERT_EQ(p.size(), 4u);
  EXPECT_EQ(p[0].path, "/shelf/products/0/stock_g");
  EXPECT_EQ(p[1].path, "/shelf/products/1/swatch/3");
  EXPECT_EQ(p[2].code, "unknown_range");
  EXPECT_EQ(p[3].path, "/shelf/products/5/peroxide_percent");
}

}  // namespace
}  // namespace strandline
