#include "fit.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "generated/tables.h"
#include "predict.h"
#include "report.h"

namespace strandline::calibrate {
namespace {

const Problem& problem() {
  static const Problem p = read_problem(std::string(STRANDLINE_SOURCE_DIR) + "/knowledge/calibration");
  return p;
}

const Fit& found() {
  static const Fit f = fit(problem(), prior_point(problem()));
  return f;
}

TEST(Calibrate, ConvergesAndBeatsThePrior) {
  EXPECT_TRUE(found().converged);
  EXPECT_LT(found().cost, residuals(problem(), prior_point(problem())).squaredNorm() / 2);
}

TEST(Calibrate, TheMinimumDoesNotDependOnTheStart) {
  Eigen::VectorXd start = prior_point(problem());
  for (Eigen::Index i = 0; i < start.size(); ++i)
    start[i] += (i % 2 ? 0.4 : -0.4) * std::min(0.3, problem().parameters[static_cast<size_t>(i)].sd);
  const Fit other = fit(problem(), start);
  EXPECT_TRUE(other.converged);
  EXPECT_NEAR(other.cost, found().cost, 1e-3);
  for (Eigen::Index i = 0; i < start.size(); ++i)
    EXPECT_NEAR(other.x[i], found().x[i], 0.05 * found().sd(static_cast<size_t>(i)));
}

// A second route to the posterior spread: the curvature of the cost along one constant with all others refitted.
TEST(Calibrate, SpreadIsTheCurvatureOfTheProfile) {
  const size_t k = problem().index("lift_exposure_full");
  const auto i = static_cast<Eigen::Index>(k);
  // One sd away costs half a unit; the mean of both sides leaves out how lopsided the valley is.
  double rise = 0;
  for (double side : {-1.0, 1.0}) {
    Problem held = problem();
    Parameter& p = held.parameters[k];
    p.prior = value(p, found().x[i] + side * found().sd(k)), p.sd = 1e-4;
    const Eigen::VectorXd r = residuals(problem(), fit(held, found().x).x);
    rise += (r.squaredNorm() / 2 - found().cost) / 2;
  }
  // 0.39 today: the valley is a little flatter than its bottom says, so the stated spread is some 13 % too narrow.
  EXPECT_NEAR(rise, 0.5, 0.15);
}

TEST(Calibrate, NoDatumIsFarOff) {
  const Eigen::VectorXd r = residuals(problem(), found().x);
  EXPECT_LT(r.cwiseAbs().maxCoeff(), 3);
}

TEST(Calibrate, CommittedKnowledgeIsThisFit) {
  const Hair hair = hair_at(problem(), found().x);
  for (int n = 1; n <= kLevels; ++n)
    EXPECT_NEAR(tables::level_anchors[static_cast<size_t>(n - 1)][1], hair.lightness(n), 0.06) << n;
  for (size_t k = 0; k < problem().parameters.size(); ++k) {
    const Parameter& p = problem().parameters[k];
    if (p.file.empty()) continue;
    const double v = value(p, found().x[static_cast<Eigen::Index>(k)]);
    const auto info = std::find_if(constant_infos.begin(), constant_infos.end(),
                                   [&](const ConstantInfo& c) { return p.key == c.key; });
    ASSERT_NE(info, constant_infos.end()) << p.key;
    EXPECT_NEAR(info->value, v, 2e-3 * std::abs(v)) << p.key;
    EXPECT_NEAR(info->sd, found().sd(k), 0.05 * found().sd(k)) << p.key;
  }
}

TEST(Calibrate, LiftGridLiesWithinASchool) {
  const auto grid = lift_grid(hair_at(problem(), found().x));
  ASSERT_EQ(grid.size(), 136u);
  const auto within =
      std::count_if(grid.begin(), grid.end(), [](const GridCell& c) { return c.volume_school || c.average_school; });
  EXPECT_GE(within, 0.9 * 136);
}

TEST(Calibrate, StrongerDeveloperNeverEndsDarker) {
  const auto grid = lift_grid(hair_at(problem(), found().x));
  for (const GridCell& weak : grid)
    for (const GridCell& strong : grid)
      if (weak.natural == strong.natural && weak.shade == strong.shade && weak.percent < strong.percent) {
        EXPECT_LE(weak.result, strong.result);
      }
}

TEST(Calibrate, TellsWhatIsWrong) {
  EXPECT_THROW(read_problem("no/such/folder"), std::runtime_error);
  Problem p = problem();
  p.data[0].what = "nothing";
  EXPECT_THROW(residuals(p, prior_point(p)), std::runtime_error);
}

}  // namespace
}  // namespace strandline::calibrate
