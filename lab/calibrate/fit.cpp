#include "fit.h"

#include <cmath>

#include "predict.h"

namespace strandline::calibrate {
namespace {

Eigen::MatrixXd jacobian(const Problem& problem, const Eigen::VectorXd& x, const Eigen::VectorXd& r) {
  Eigen::MatrixXd j(r.size(), x.size());
  for (Eigen::Index k = 0; k < x.size(); ++k) {
    const double h = 1e-4 * problem.parameters[static_cast<size_t>(k)].sd;
    Eigen::VectorXd up = x, down = x;
    up[k] += h, down[k] -= h;
    j.col(k) = (residuals(problem, up) - residuals(problem, down)) / (2 * h);
  }
  return j;
}

}  // namespace

double Fit::sd(size_t i) const {
  const auto k = static_cast<Eigen::Index>(i);
  return std::sqrt(covariance(k, k));
}

double Fit::correlation(size_t i, size_t j) const {
  return covariance(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) / (sd(i) * sd(j));
}

Fit fit(const Problem& problem, const Eigen::VectorXd& start) {
  constexpr int kMaxSteps = 100;
  Fit f;
  f.x = start;
  Eigen::VectorXd r = residuals(problem, f.x);
  Eigen::MatrixXd j = jacobian(problem, f.x, r);
  double damping = 1e-3;
  while (f.steps < kMaxSteps && damping < 1e12) {
    const Eigen::MatrixXd normal = j.transpose() * j;
    Eigen::MatrixXd damped = normal;
    damped.diagonal() *= 1 + damping;
    const Eigen::VectorXd step = -damped.ldlt().solve(j.transpose() * r);
    const Eigen::VectorXd next = f.x + step;
    const Eigen::VectorXd left = residuals(problem, next);
    ++f.steps;
    if (!(left.squaredNorm() < r.squaredNorm())) {
      // At the minimum nothing gets better by more than rounding.
      f.converged = (step.array() * normal.diagonal().array().sqrt()).abs().maxCoeff() < 1e-3;
      if (f.converged) break;
      damping *= 8;
      continue;
    }
    f.x = next, r = left;
    damping = std::max(1e-9, damping / 5);
    j = jacobian(problem, f.x, r);
    f.converged = (step.array() * normal.diagonal().array().sqrt()).abs().maxCoeff() < 1e-3;
    if (f.converged) break;
  }
  f.cost = r.squaredNorm() / 2;
  f.covariance = (j.transpose() * j).ldlt().solve(Eigen::MatrixXd::Identity(f.x.size(), f.x.size()));
  return f;
}

}  // namespace strandline::calibrate
