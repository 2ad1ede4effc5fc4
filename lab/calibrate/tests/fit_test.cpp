#include "fit.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "generated/tables.h"
#include "predict.h"
#include "profile.h"
#include "report.h"

namespace strandline::calibrate {
namespace {

const Problem& problem() {
  static const Problem p = read_problem(STRANDLINE_SOURCE_DIR "/knowledge/calibration");
  return p;
}

const Fit& found() {
  static const Fit f = with_profile_spread(problem(), fit(problem(), prior_point(problem())));
  return f;
}

struct Chain {
  Eigen::VectorXd mean, sd;
};

// Metropolis with a fixed seed and steps of the shape of the posterior.
Chain walk(const Problem& p, const Fit& f) {
  constexpr int kSteps = 40000, kFirst = 2000;
  const Eigen::Index n = f.x.size();
  const Eigen::MatrixXd shape = f.covariance.llt().matrixL();
  std::mt19937_64 bits(7);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> uniform;
  Eigen::VectorXd x = f.x, sum = Eigen::VectorXd::Zero(n), squares = sum;
  double cost = f.cost;
  for (int i = 0; i < kSteps; ++i) {
    Eigen::VectorXd step(n);
    for (double& s : step) s = normal(bits);
    const Eigen::VectorXd next = x + 2.0 / std::sqrt(static_cast<double>(n)) * (shape * step);
    const double there = residuals(p, next).squaredNorm() / 2;
    if (std::log(uniform(bits)) < cost - there) x = next, cost = there;
    if (i >= kFirst) sum += x - f.x, squares += (x - f.x).cwiseAbs2();
  }
  const Eigen::VectorXd shift = sum / (kSteps - kFirst);
  return {f.x + shift, (squares / (kSteps - kFirst) - shift.cwiseAbs2()).cwiseSqrt()};
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

// A route to the posterior that is not the fit's own: a Metropolis chain through the same residuals.
TEST(Calibrate, SpreadIsThatOfThePosterior) {
  const Chain chain = walk(problem(), found());
  for (size_t k = 0; k < problem().parameters.size(); ++k) {
    if (problem().parameters[k].file.empty()) continue;
    const auto i = static_cast<Eigen::Index>(k);
    // The chain is short: its own spread is known to some 15 %.
    EXPECT_NEAR(chain.sd[i] / found().sd(k), 1, 0.3) << problem().parameters[k].key;
    EXPECT_NEAR(chain.mean[i], found().x[i], 0.6 * found().sd(k)) << problem().parameters[k].key;
  }
}

TEST(Calibrate, SpreadFollowsTheProfile) {
  const Fit bottom = fit(problem(), prior_point(problem()));
  const size_t wide = problem().index("lift_exposure_full"), quadratic = problem().index("keratin_flat_tau");
  EXPECT_GT(found().sd(wide), 1.05 * bottom.sd(wide)) << "the valley is wider than its bottom says";
  EXPECT_NEAR(found().sd(quadratic), bottom.sd(quadratic), 0.05 * bottom.sd(quadratic));
  EXPECT_NEAR(found().correlation(wide, quadratic), bottom.correlation(wide, quadratic), 1e-9);
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
