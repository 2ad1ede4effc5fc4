// What the model says for each datum.
#pragma once

#include "hair.h"

namespace strandline::calibrate {

Hair hair_at(const Problem& problem, const Eigen::VectorXd& x);
// As many numbers as the datum has values. Throws std::runtime_error on an unknown kind of datum.
std::vector<double> predicted(const Problem& problem, const Eigen::VectorXd& x, const Hair& hair, const Datum& datum);
// (predicted − value)/sd of every datum in order, then (x − prior)/sd of every parameter.
Eigen::VectorXd residuals(const Problem& problem, const Eigen::VectorXd& x);

}  // namespace strandline::calibrate
