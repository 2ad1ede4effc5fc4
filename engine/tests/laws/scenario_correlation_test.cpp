// Scenarios follow the joint distribution of the fit (M13).
#include <gtest/gtest.h>

#include <cmath>

#include "engine/tests/support.h"
#include "strandline/scenario.h"

namespace strandline {
namespace {

using namespace testing_support;

TEST(Scenarios, CorrelateAsTheFitSays) {
  const int n = 4096;
  const Draws d = draw(two_areas(), n);
  auto standard = [&](double Constants::* member, int s) {
    for (const ConstantInfo& info : constant_infos)
      if (info.member == member) {
        const double v = d.constants[static_cast<size_t>(s)].*member;
        return info.log_spread ? std::log(v / info.value) / info.sd : (v - info.value) / info.sd;
      }
    return std::nan("");
  };
  for (size_t i = 0; i < correlated_constants.size(); ++i)
    for (size_t j = 0; j < i; ++j) {
      double expected = 0, sum = 0;
      for (size_t k = 0; k <= j; ++k) expected += correlation_factor[i][k] * correlation_factor[j][k];
      for (int s = 0; s < n; ++s) sum += standard(correlated_constants[i], s) * standard(correlated_constants[j], s);
      EXPECT_NEAR(sum / n, expected, 0.08) << i << ", " << j;
    }
}

TEST(Scenarios, OneSourceLeavesTheOthersNominal) {
  const Draws d = draw(two_areas(), 32, 1, DoubtSource::white_share);
  const Constants nominal;
  for (const Constants& c : d.constants)
    for (const ConstantInfo& info : constant_infos) EXPECT_EQ(c.*info.member, nominal.*info.member) << info.key;
  double least = 1, most = 0;
  for (const ZoneState& s : d.zones[0].scenarios) {
    EXPECT_EQ(s.fibres[0].eumelanin, d.zones[0].nominal.fibres[0].eumelanin);
    least = std::min(least, s.shares[1]), most = std::max(most, s.shares[1]);
  }
  EXPECT_LT(least, most);
}

}  // namespace
}  // namespace strandline
