// Levenberg–Marquardt with priors; the posterior by Laplace's approximation.
#pragma once

#include "problem.h"

namespace strandline::calibrate {

struct Fit {
  Eigen::VectorXd x;           // internal coordinates, in order of the parameters
  Eigen::MatrixXd covariance;  // (JᵀJ)⁻¹ at x, data and priors together
  double cost = 0;             // half the sum of squared residuals
  int steps = 0;
  bool converged = false;  // the last step moved no parameter by a thousandth of its posterior sd
  double sd(size_t i) const;
  double correlation(size_t i, size_t j) const;
};

Fit fit(const Problem& problem, const Eigen::VectorXd& start);

}  // namespace strandline::calibrate
