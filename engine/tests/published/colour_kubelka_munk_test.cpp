// Kubelka–Munk both ways against measured pairs.
#include <gtest/gtest.h>

#include "strandline/kubelka_munk.h"

namespace strandline {
namespace {

// Wilmsmann, J. Soc. Cosmet. Chem. 11 (1960) 560–570: white wool dyed with an oxidation dye, and undyed.
// R is printed to three decimals, so K/S is known only as well as R + 0.0005 and R − 0.0005 allow.
TEST(KubelkaMunk, WoolDyeingsOf1960) {
  struct Row {
    double r, ks;
  };
  for (const auto& [r, ks] : {Row{0.181, 1.854}, Row{0.068, 6.389}, Row{0.047, 9.555}, Row{0.743, 0.044}}) {
    EXPECT_LE(ks, k_over_s(r - 0.0005) + 0.0005);
    EXPECT_GE(ks, k_over_s(r + 0.0005) - 0.0005);
    EXPECT_NEAR(r_infinity(ks), r, 0.0025);  // K/S 0.044 ± 0.0005 alone moves R by 0.0015
  }
}

TEST(KubelkaMunk, BothWaysForAnyReflectance) {
  for (double r = 1e-6; r <= 1; r += 1e-3) EXPECT_NEAR(r_infinity(k_over_s(r)), r, 1e-7 * std::sqrt(r));
  EXPECT_EQ(r_infinity(0), 1);
  EXPECT_GT(r_infinity(1e12), 0);
}

}  // namespace
}  // namespace strandline
