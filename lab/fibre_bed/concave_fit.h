#pragma once
// The reflectance curve in a form that is concave by construction.
//
// e(tau) = 1/(R(tau) + c) is written e_inf - sum_j alpha_j max(0, 1 - tau/kappa_j)^3 with alpha_j >= 0:
// increasing, concave and twice continuously differentiable for every tau >= 0, whatever the numbers. A blend
// of fibres by a harmonic mean of R + c then stays convex in the dye load. Sums of poles alpha/(tau + kappa)
// have these properties too, but their tails are too slow: light that enters a fibre crosses about one
// diameter at least, so R reaches its floor exponentially.
#include <Eigen/Core>
#include <span>
#include <vector>

namespace strandline::fibre_bed {

// min |A x - b| with x >= 0, by the active-set method of Lawson and Hanson (Solving Least Squares Problems,
// ch. 23).
Eigen::VectorXd non_negative_least_squares(const Eigen::MatrixXd& a, const Eigen::VectorXd& b);

// c of Stearns-Noechel: f(R) = (1-R)/(M(R-0.01)+0.01) is affine in 1/(R + c). Requires 0 < m <= 1.
double stearns_noechel_offset(double m);

struct ConcaveCurve {
  double offset = 0;                 // c
  double e_inf = 0;                  // 1/(R + c) at the floor, reached at the largest kappa
  std::vector<double> kappa, alpha;  // optical depth, ascending; alpha >= 0
  double e(double tau) const;
  double reflectance(double tau) const { return 1 / e(tau) - offset; }
};

struct CurvePoint {
  double tau, reflectance, relative_error;  // relative standard error of R, > 0: the weight of the fit
};

// Best curve with at most `most` terms (>= 2). The kappas come from log-spaced grids whose ends and number
// are searched too; those that the fit does not use are left out.
ConcaveCurve fit_concave(std::span<const CurvePoint> curve, double offset, int most);

}  // namespace strandline::fibre_bed
