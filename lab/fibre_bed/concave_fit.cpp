#include "concave_fit.h"

#include <Eigen/QR>
#include <cmath>
#include <limits>

namespace strandline::fibre_bed {

namespace {

// Least squares over the columns in use; the others stay 0.
Eigen::VectorXd solve_in_use(const Eigen::MatrixXd& a, const Eigen::VectorXd& b, const std::vector<bool>& used) {
  std::vector<int> columns;
  for (int j = 0; j < a.cols(); ++j)
    if (used[j]) columns.push_back(j);
  Eigen::MatrixXd part(a.rows(), columns.size());
  for (size_t j = 0; j < columns.size(); ++j) part.col(j) = a.col(columns[j]);
  const Eigen::VectorXd s = part.colPivHouseholderQr().solve(b);
  Eigen::VectorXd x = Eigen::VectorXd::Zero(a.cols());
  for (size_t j = 0; j < columns.size(); ++j) x[columns[j]] = s[j];
  return x;
}

}  // namespace

Eigen::VectorXd non_negative_least_squares(const Eigen::MatrixXd& a, const Eigen::VectorXd& b) {
  const int n = static_cast<int>(a.cols());
  Eigen::VectorXd x = Eigen::VectorXd::Zero(n);
  std::vector<bool> used(n, false);
  const double tolerance = 1e-11 * (a.transpose() * b).cwiseAbs().maxCoeff();
  for (int round = 0; round < 10 * n; ++round) {
    const Eigen::VectorXd gradient = a.transpose() * (b - a * x);
    int best = -1;
    for (int j = 0; j < n; ++j)
      if (!used[j] && gradient[j] > tolerance && (best < 0 || gradient[j] > gradient[best])) best = j;
    if (best < 0) break;
    used[best] = true;
    Eigen::VectorXd s = solve_in_use(a, b, used);
    if (s[best] <= 0) break;  // the gain is rounding only
    while (true) {
      // Walk from x towards s and stop where the first coefficient would turn negative.
      double step = 1;
      for (int j = 0; j < n; ++j)
        if (used[j] && s[j] <= 0) step = std::min(step, x[j] / (x[j] - s[j]));
      x += step * (s - x);
      if (step == 1) break;
      for (int j = 0; j < n; ++j)
        if (used[j] && x[j] <= 1e-15) used[j] = false, x[j] = 0;
      s = solve_in_use(a, b, used);
    }
  }
  return x.cwiseMax(0);
}

double stearns_noechel_offset(double m) { return 0.01 * (1 - m) / m; }

namespace {

double cube_below(double tau, double kappa) {
  const double left = std::max(0.0, 1 - tau / kappa);
  return left * left * left;
}

// Weighted so that a residual of 1 is one standard error of R: dR = -(R + c)^2 de.
struct System {
  Eigen::MatrixXd a;
  Eigen::VectorXd b;
};

System weighted_system(std::span<const CurvePoint> curve, double offset, const std::vector<double>& kappa) {
  System s{Eigen::MatrixXd(curve.size(), kappa.size() + 1), Eigen::VectorXd(curve.size())};
  for (size_t i = 0; i < curve.size(); ++i) {
    const double d = curve[i].reflectance + offset;
    const double weight = d * d / (curve[i].reflectance * curve[i].relative_error);
    // e = e(0) + sum alpha (1 - (1 - tau/kappa)^3): every coefficient is non-negative in this form.
    s.a(i, 0) = weight;
    for (size_t j = 0; j < kappa.size(); ++j) s.a(i, j + 1) = weight * (1 - cube_below(curve[i].tau, kappa[j]));
    s.b[i] = weight / d;
  }
  return s;
}

std::vector<double> log_spaced(double low, double high, int count) {
  std::vector<double> v;
  for (int j = 0; j < count; ++j) v.push_back(low * std::pow(high / low, j / double(count - 1)));
  return v;
}

}  // namespace

double ConcaveCurve::e(double tau) const {
  double sum = e_inf;
  for (size_t j = 0; j < kappa.size(); ++j) sum -= alpha[j] * cube_below(tau, kappa[j]);
  return sum;
}

namespace {

ConcaveCurve from_solution(const Eigen::VectorXd& x, const std::vector<double>& kappa, double offset) {
  ConcaveCurve fit{offset, x[0], {}, {}};
  for (size_t j = 0; j < kappa.size(); ++j) {
    const double alpha = x[static_cast<int>(j) + 1];
    if (alpha <= 0) continue;
    fit.e_inf += alpha;
    fit.kappa.push_back(kappa[j]);
    fit.alpha.push_back(alpha);
  }
  return fit;
}

}  // namespace

ConcaveCurve fit_concave(std::span<const CurvePoint> curve, double offset, int most) {
  double best = std::numeric_limits<double>::infinity();
  ConcaveCurve best_fit;
  for (int count = std::max(2, most - 2); count <= most + 5; ++count)
    for (double low : log_spaced(5e-4, 0.1, 40))
      for (double high : log_spaced(1, 30, 60)) {
        const auto kappa = log_spaced(low, high, count);
        const System s = weighted_system(curve, offset, kappa);
        const Eigen::VectorXd x = non_negative_least_squares(s.a, s.b);
        const double cost = (s.a * x - s.b).squaredNorm();
        if (cost >= best) continue;
        const ConcaveCurve fit = from_solution(x, kappa, offset);
        if (static_cast<int>(fit.kappa.size()) > most) continue;
        best = cost;
        best_fit = fit;
      }
  return best_fit;
}

}  // namespace strandline::fibre_bed
