#include "profile.h"

#include <cmath>

#include "predict.h"

namespace strandline::calibrate {
namespace {

// Least cost with parameter k held at x.
double cost_with(const Problem& problem, const Fit& f, size_t k, double x) {
  constexpr double kHeld = 1e-4;  // sd of what holds it
  Problem held = problem;
  Parameter& p = held.parameters[k];
  p.prior = value(p, x), p.sd = kHeld;
  return residuals(problem, fit(held, f.x).x).squaredNorm() / 2;
}

}  // namespace

Fit with_profile_spread(const Problem& problem, Fit f) {
  Eigen::VectorXd scale = Eigen::VectorXd::Ones(f.x.size());
  for (size_t k = 0; k < problem.parameters.size(); ++k) {
    if (problem.parameters[k].file.empty()) continue;
    const auto i = static_cast<Eigen::Index>(k);
    const double sd = f.sd(k);
    const double rise = (cost_with(problem, f, k, f.x[i] - sd) + cost_with(problem, f, k, f.x[i] + sd)) / 2 - f.cost;
    scale[i] = std::sqrt(0.5 / rise);
  }
  f.covariance = scale.asDiagonal() * f.covariance * scale.asDiagonal();
  return f;
}

}  // namespace strandline::calibrate
